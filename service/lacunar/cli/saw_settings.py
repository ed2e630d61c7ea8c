"""`lacunar saw-settings`: how a saw is set to miter crown at a corner."""

import argparse
import json
from typing import Any

from lacunar.cli.speaking import DONE, FAULTS, tell, tell_query_faults
from lacunar.exchange.assumption_words import assumption_line
from lacunar.exchange.query_reading import read_query
from lacunar.exchange.query_schema import SawQuery
from lacunar.exchange.saw_answer import saw_sheet_lines, saw_sheet_to_json
from lacunar.layout.mouldings.cautions import saw_cautions
from lacunar.model.faults import SpecRefused
from lacunar.workflow.saw_settings import settings_for

HELP = "print how to set a saw for crown at a corner"
DESCRIPTION = """\
Prints miter and bevel for crown (sprung moulding) at a corner of any angle: nested, as it stands in
its corner, and flat on its back; which edge goes to the fence, which way the table turns and which
side is kept, for both ends of a piece. Miters are from a square cut, the bevel from upright.

The spring angle is measured from the WALL: of crown sold as 38/52 it is 38. A corner past 180
degrees is an outside corner.

  lacunar saw-settings --spring 38
  lacunar saw-settings --spring 45 --corner 92 --face "3 1/4"
  lacunar saw-settings --spring 38 --corner 270 --json
  lacunar saw-settings --spring 38 --face "4 5/8" --slope 18.43 --rake climbs
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "saw-settings",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument(
        "--spring",
        dest="spring_from_wall",
        metavar="DEGREES",
        required=True,
        help="between the crown's flat back and the wall",
    )
    command.add_argument(
        "--corner",
        default="90",
        metavar="DEGREES",
        help="between the walls, inside the room (default: 90, a square corner)",
    )
    command.add_argument("--face", metavar="LENGTH", help="across the face, for its sizes too")
    _add_rake_and_fence(command)
    command.add_argument("--most-miter", metavar="DEGREES", help="how far the table turns")
    command.add_argument("--most-bevel", metavar="DEGREES", help="how far the blade tilts")
    command.add_argument("--units", help="of bare lengths and of the answer: in or mm")
    command.add_argument("--mark-to", metavar="STEP", help="what lengths are rounded to in words")
    command.add_argument(
        "--trace", action="store_true", help="with --json: add rule, formula and operands"
    )
    command.add_argument("--json", action="store_true", help="print all figures as JSON")
    command.set_defaults(run=run)


def _add_rake_and_fence(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--slope",
        metavar="DEGREES",
        help="of a raked run that meets a level one here, above level: do their profiles meet?",
    )
    command.add_argument("--rake", help="climbs or falls, away from the corner (default: climbs)")
    command.add_argument(
        "--fence-height", metavar="LENGTH", help="the tallest crown the saw takes nested"
    )


ASKED = (
    *("spring_from_wall", "corner", "face", "slope", "rake", "fence_height"),
    *("most_miter", "most_bevel", "units", "mark_to"),
)


def run(options: argparse.Namespace) -> int:
    """Print the settings; the exit code."""
    asked = {name: getattr(options, name) for name in ASKED}
    try:
        pairs = [(name, value) for name, value in asked.items() if value is not None]
        answer = settings_for(read_query(SawQuery(), pairs))
    except SpecRefused as refused:
        tell_query_faults(refused.faults)
        return FAULTS
    if options.json:
        told = saw_sheet_to_json(
            answer.sheet, answer.assumptions, answer.mark_to, trace=options.trace
        )
        print(json.dumps(told, indent=1, ensure_ascii=False))
        return DONE
    for line in saw_sheet_lines(answer.sheet, answer.mark_to):
        print(line.rstrip())
    for assumption in answer.assumptions:
        tell(f"  assumed {assumption_line(assumption, answer.mark_to.units)}")
    for caution in saw_cautions(answer.sheet):
        tell(f"  caution: {caution.text}")
    return DONE
