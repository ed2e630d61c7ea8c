"""Sets everything up on a machine that has only Python, then draws the example ceilings.

python3 examples/draw_examples.py                    every ceiling in examples/ceilings
python3 examples/draw_examples.py my_ceiling.json    your own
python3 examples/draw_examples.py --out /tmp/sheets  into a folder of your choice
"""

import argparse
import glob
import itertools
import os
from typing import Sequence

import fresh_machine

CEILINGS = os.path.join(fresh_machine.ROOT, "examples", "ceilings")
DRAWN = os.path.join(fresh_machine.ROOT, "examples", "drawn")

EPILOG = """\
A ceiling is a JSON file: a room, its beams and its grid. Its sheets bear the file's name. To draw
one of your own, copy an example, change its figures, and name it on the command line.

The first run makes a private environment in .venv, from requirements.lock; later runs use it
again until that file, pyproject.toml or the Python changes. Two system packages are needed,
libcairo2 and python3-venv; where they are missing they are named first and then installed with
apt-get, if you may do that, or the line to run is printed.

After the set-up the command behind this one can be used directly:
  .venv/bin/lacunar draw examples/ceilings/NAME.json --out sheets
Options that this command does not know, and all that follows them, go to `lacunar draw` as they
stand; .venv/bin/lacunar draw --help lists them.

Exit codes: those of `lacunar draw` (0 all drawn, 1 faults in a ceiling, 2 wrong usage); 3 where
the machine lacks something.
"""


def draw(ceilings: Sequence[str], out: str, more: Sequence[str]) -> int:
    """Draw the ceilings, say where the sheets lie, and return the exit code of `lacunar draw`."""
    lacunar = os.path.join(fresh_machine.ENVIRONMENT, "bin", "lacunar")
    code = fresh_machine.run_in_environment([lacunar, "draw", *ceilings, "--out", out, *more])
    if code == 0:
        fresh_machine.say(f"The sheets lie in {out}")
    else:
        fresh_machine.say(f"Not all was drawn; the lines above say why. What was lies in {out}")
    return code


def main(arguments: Sequence[str]) -> int:
    """Set up, draw, and return the exit code."""
    parser = argparse.ArgumentParser(
        prog="python3 examples/draw_examples.py",
        usage="%(prog)s [CEILING.json ...] [--out DIR] [options of lacunar draw]",
        description="Set everything up on a machine that has only Python, then draw ceilings.",
        epilog=EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument(
        "--out", default=DRAWN, metavar="DIR", help="where the sheets go (default: examples/drawn)"
    )
    options, others = parser.parse_known_args(arguments)
    named = list(itertools.takewhile(lambda word: not word.startswith("-"), others))
    ceilings = named or sorted(glob.glob(os.path.join(CEILINGS, "*.json")))
    if not ceilings:
        raise fresh_machine.SetUpError(f"There is no ceiling in {CEILINGS}.")
    fresh_machine.set_up()
    # Commands run from the top of the checkout, whatever folder this one was called from.
    paths = [os.path.abspath(path) for path in ceilings]
    return draw(paths, os.path.abspath(options.out), others[len(named) :])


if __name__ == "__main__":
    fresh_machine.run_script(main)
