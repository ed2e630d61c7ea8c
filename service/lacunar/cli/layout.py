"""`lacunar layout`: a ceiling's numbers, as JSON or in words."""

import argparse
import json
from typing import Any

from lacunar.cli.speaking import DONE, FAULTS, UnreadableSpec, spec_bytes, tell, tell_faults
from lacunar.exchange.explain import explain
from lacunar.model.faults import SpecRefused
from lacunar.workflow.prepare import layout_answer, prepare

HELP = "print a ceiling's layout"
DESCRIPTION = """\
Prints everything set out for a ceiling as JSON: runs, beams, coffers, profiles, running marks,
headroom, cautions, and what was assumed. Every length is given exactly and in decimals.

  lacunar layout examples/ceilings/music_room.json
  lacunar layout examples/ceilings/music_room.json --trace      each figure with rule and operands
  lacunar layout examples/ceilings/music_room.json --explain    the sums in words instead
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "layout",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument("spec", metavar="SPEC.json", help="a ceiling; - reads standard input")
    how = command.add_mutually_exclusive_group()
    how.add_argument(
        "--trace", action="store_true", help="add rule, formula and operands to each figure"
    )
    how.add_argument(
        "--explain", action="store_true", help="say in words how each figure came about"
    )
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the layout; the exit code."""
    try:
        prepared = prepare(spec_bytes(options.spec))
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        tell_faults(options.spec, refused.faults)
        return FAULTS
    if options.explain:
        print(explain(prepared.layout, prepared.layout.ceiling.units))
    else:
        answer = layout_answer(prepared, trace=options.trace)
        print(json.dumps(answer, indent=1, ensure_ascii=False))
    return DONE
