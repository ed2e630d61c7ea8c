"""`lacunar boards`: the courses of boards across one opening."""

import argparse
import json
from typing import Any

from lacunar.cli.speaking import DONE, FAULTS, tell, tell_faults
from lacunar.exchange.assumption_words import assumption_line
from lacunar.exchange.boards_answer import boards_alone_in_words, boards_to_json
from lacunar.exchange.boards_query import BoardsQuestion
from lacunar.exchange.query_reading import read_query
from lacunar.model.faults import SpecRefused
from lacunar.workflow.boards import lay_boards

_QUESTION = BoardsQuestion()

HELP = "lay boards across one opening"
DESCRIPTION = """\
Lays boards side by side across one opening so that both edge boards are alike and over half a
cover, and tells how much the wood moves if it is told what wood. JSON, or words with --explain.

  lacunar boards --opening 41 --cover "5 1/8"
  lacunar boards --opening "4' 5" --board 1x6 --length 53 --species yellow_poplar --explain
  lacunar boards --opening 1200 --units mm --species red_oak --now 8 --driest "30 % at 21 C"

What stands in the panel of a ceiling (see examples/ceilings) may stand here.
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "boards",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    for name, field in _QUESTION.fields.items():
        option = "--" + name.replace("_", "-")
        words = str(field.metadata["description"]).replace("%", "%%")
        command.add_argument(option, metavar="VALUE", help=words)
    how = command.add_mutually_exclusive_group()
    how.add_argument(
        "--trace", action="store_true", help="add rule, formula and operands to each figure"
    )
    how.add_argument(
        "--explain", action="store_true", help="say in words how each figure came about"
    )
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the boards; the exit code."""
    given = [(name, getattr(options, name)) for name in _QUESTION.fields]
    try:
        pairs = [(name, value) for name, value in given if value is not None]
        answer = lay_boards(read_query(_QUESTION, pairs))
    except SpecRefused as refused:
        tell_faults("boards", refused.faults)
        return FAULTS
    for assumption in answer.assumptions:
        tell(f"assumed {assumption_line(assumption, answer.mark_to.units)}")
    if options.explain:
        print(boards_alone_in_words(answer.boards, answer.mark_to.units))
        return DONE
    told = boards_to_json(answer.boards, answer.assumptions, answer.mark_to, trace=options.trace)
    print(json.dumps(told, indent=1, ensure_ascii=False))
    return DONE
