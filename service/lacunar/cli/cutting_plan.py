"""`lacunar cutting-plan`: which piece is cut from which length of stock."""

import argparse
import json
from typing import Any

from lacunar.cli.speaking import DONE, FAULTS, UnreadableSpec, spec_bytes, tell, tell_faults
from lacunar.exchange.assumption_words import assumption_line
from lacunar.exchange.cutting_answer import cutting_in_words, cutting_to_json
from lacunar.model.faults import SpecRefused
from lacunar.workflow.cutting import plan_cuts

HELP = "plan how pieces are cut from stock"
DESCRIPTION = """\
Plans how pieces are cut from the lengths that are sold, or panels from sheets, at least cost, and
prints the plan as JSON, or in words with --explain. Every plan says how far from the best it can
be at most.

  lacunar cutting-plan problem.json --explain

Of a ceiling's spec, or several as {"ceilings": [...], "stock": {...}}, the parts are planned;
material-list tells what stock can say. A problem by itself is a JSON file with "stock" and
"pieces", or with "sheets" and "panels"; bare lengths are in its "units", in or mm:

  {"kerf": "1/8",
   "stock": [{"length": "8 ft", "price": 11.49}, {"length": "12 ft", "price": 17.49}],
   "pieces": [{"id": "A", "length": "48 1/16", "quantity": 12}, {"length": 30, "quantity": 8}]}
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "cutting-plan",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument(
        "problem",
        metavar="PROBLEM.json",
        help="pieces and stock, or ceilings; - reads standard input",
    )
    command.add_argument("--explain", action="store_true", help="tell the plan in words")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the plan; the exit code."""
    try:
        found = plan_cuts(spec_bytes(options.problem))
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        tell_faults(options.problem, refused.faults)
        return FAULTS
    for assumption in found.assumptions:
        tell(f"assumed {assumption_line(assumption, found.mark_to.units)}")
    if options.explain:
        print(cutting_in_words(found))
        return DONE
    print(json.dumps(cutting_to_json(found), indent=1, ensure_ascii=False))
    return DONE
