"""Sets everything up on a machine that has only Python, then runs the tests.

python3 tests/run.py               the core tier: everything that needs no server, on all cores
python3 tests/run.py --all         further tiers too
python3 tests/run.py -k division   anything else goes to pytest as it stands
"""

import argparse
import os
import shutil
import sys
from typing import Callable, List, NamedTuple, Sequence, Tuple

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "examples"))

import fresh_machine  # found through the line above

EPILOG = """\
The first run makes a private environment in .venv, from requirements.lock; later runs use it
again until that file, pyproject.toml or the Python changes. Two system packages are needed,
libcairo2 and python3-venv; where they are missing they are named first and then installed with
apt-get, if you may do that, or the line to run is printed.

Everything this command does not know goes to pytest:
  python3 tests/run.py -x                      stop at the first failure
  python3 tests/run.py tests/layout            one folder
  python3 tests/run.py -k "running and marks"  tests with these words in their names

Exit codes: pytest's own (0 all passed, 1 some failed); 3 where the machine lacks something.
"""


class Tier(NamedTuple):
    """Tests that need more than the set-up brings: a server, a browser, a spreadsheet program."""

    name: str
    folder: str  # from the top of the checkout
    lack: Callable[[], str]  # why it cannot run here; empty where it can


BROWSERS = ("chromium", "chromium-browser")


def no_browser() -> str:
    """Return why no sheet can be looked at in a browser; empty where one can."""
    found = any(shutil.which(name) for name in BROWSERS)
    return "" if found else "none of these is installed: " + ", ".join(BROWSERS)


# Each further tier is one line here.
FURTHER_TIERS: Tuple[Tier, ...] = (Tier("sheets in a browser", "tests/browser", no_browser),)


class Plan(NamedTuple):
    """What one call of this script runs."""

    left_out: List[str]  # folders that pytest must not enter
    not_run: List[str]  # a line for each tier that was asked for and cannot run


def plan(tiers: Sequence[Tier], asked: bool) -> Plan:
    """Decide which tiers run: the core always, a further one where asked for and possible."""
    lacks = {tier.name: tier.lack() if asked else "" for tier in tiers}
    return Plan(
        left_out=[tier.folder for tier in tiers if not asked or lacks[tier.name]],
        not_run=[f"NOT RUN: {tier.name}: {lacks[tier.name]}" for tier in tiers if lacks[tier.name]],
    )


def shared_out(for_pytest: Sequence[str]) -> List[str]:
    """Share the whole suite out over the cores; what somebody picked runs in one process.

    A worker that has nothing left takes over tests of another: single tests last minutes.
    """
    return list(for_pytest) or ["--numprocesses=auto", "--dist=worksteal"]


def exit_code(pytest_code: int, not_run: Sequence[str], in_ci: bool) -> int:
    """Return pytest's code, but let a tier that could not run fail an otherwise green CI run."""
    return 1 if pytest_code == 0 and not_run and in_ci else pytest_code


def main(arguments: Sequence[str]) -> int:
    """Set up, run pytest, and return the exit code."""
    parser = argparse.ArgumentParser(
        prog="python3 tests/run.py",
        usage="%(prog)s [--all | --set-up-only] [anything pytest understands]",
        description="Set everything up on a machine that has only Python, then run the tests.",
        epilog=EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument(
        "--all", action="store_true", help="run the tiers that need servers or other programs too"
    )
    parser.add_argument(
        "--set-up-only", action="store_true", help="stop when .venv and system packages are there"
    )
    options, for_pytest = parser.parse_known_args(arguments)
    python = fresh_machine.set_up()
    if options.set_up_only:
        fresh_machine.say("Everything is set up; the environment's Python is " + python)
        return 0
    chosen = plan(FURTHER_TIERS, options.all)
    ignored = ["--ignore=" + folder for folder in chosen.left_out]
    code = fresh_machine.run_in_environment(
        [python, "-m", "pytest", *ignored, *shared_out(for_pytest)]
    )
    for line in chosen.not_run:
        fresh_machine.say(line)
    return exit_code(code, chosen.not_run, os.environ.get("CI") == "true")


if __name__ == "__main__":
    fresh_machine.run_script(main)
