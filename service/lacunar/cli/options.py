"""`lacunar options`: the layouts of a ceiling that are worth considering."""

import argparse
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from lacunar.choosing.search import Progress
from lacunar.cli.draw import write_whole
from lacunar.cli.speaking import DONE, FAULTS, UnreadableSpec, spec_bytes, tell, tell_faults
from lacunar.exchange.option_words import explain_options
from lacunar.exchange.options_json import PreparedOptions
from lacunar.model.faults import SpecRefused
from lacunar.workflow.estimate import Document
from lacunar.workflow.options import BesideIt, begin_options, options_answer, options_pdf

HELP = "find the layouts of a ceiling that are worth considering"
DESCRIPTION = """\
Tries numbers of coffers, wall conditions and widths of beams, and prints the layouts that no other
one beats: each with its figures, what it is best in, and the spec that asks for it.

  lacunar options den.json --explain             in words
  lacunar options den.json --draw options.pdf    small plans on a sheet, for a client to point at
  lacunar options den.json --nudges-of 2         and what small changes of option 2 would save
  lacunar options den.json --prices prices.json  and what each costs, by your own price list

What the ceiling tells is kept; what it leaves open is varied. Limits stand beside the ceiling:

  {"ceiling": {"room": {"length": "16 ft", "width": "12 ft", "height": "9 ft"}},
   "choices": {"length_coffers": {"fewest": 3, "most": 5}, "beam_widths": ["5", "6 1/2"],
               "walls": ["half", "full"], "weights": {"squareness": 2, "cuts": 1}}}

Ctrl-C stops the search, and what it has found by then is told.
"""
# A short search needs no word of how far it is.
_TELL_EACH = 10


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "options",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument(
        "spec", metavar="SPEC.json", help="a ceiling, or one with choices; - reads standard input"
    )
    command.add_argument("--draw", metavar="FILE.pdf", help="draw the options on sheets as well")
    command.add_argument(
        "--nudges-of", type=int, metavar="N", help="try small changes of option N as well"
    )
    command.add_argument(
        "--prices", metavar="LIST.json", help="prices and labor rates, if not the document's own"
    )
    command.add_argument(
        "--stock", metavar="STOCK.json", help="what is sold and on hand; only with prices"
    )
    command.add_argument("--quiet", action="store_true", help="do not tell how far the search is")
    how = command.add_mutually_exclusive_group()
    how.add_argument("--explain", action="store_true", help="tell the options in words instead")
    how.add_argument(
        "--trace", action="store_true", help="add rule, formula and operands to each figure"
    )
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Search, print, and draw where asked to; the exit code."""
    try:
        beside = BesideIt(options.nudges_of, *_documents(options.prices, options.stock))
        search = begin_options(spec_bytes(options.spec), beside)
        _go_through(search.steps(), quiet=options.quiet)
        found = search.found()
        if not found.options.found.options:
            tell("Stopped before anything was laid out.")
            return DONE
        if options.draw is not None:
            tell(str(write_whole(Path(options.draw), options_pdf(found))))
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        named = (options.spec, options.prices, options.stock)
        tell_faults(", ".join(name for name in named if name is not None), refused.faults)
        return FAULTS
    _print(found, options)
    return DONE


def _documents(*names: str | None) -> Iterator[Document | None]:
    return (None if name is None else (name, spec_bytes(name)) for name in names)


def _go_through(steps: Iterator[Progress], *, quiet: bool) -> None:
    """Every step, or as many as there are before whoever waits has had enough."""
    try:
        for step in steps:
            if not quiet and step.done % _TELL_EACH == 0:
                tell(f"{step.done} of {step.in_all} {step.of} laid out")
    except KeyboardInterrupt:
        tell("Stopped; this is what is found so far.")


def _print(found: PreparedOptions, options: argparse.Namespace) -> None:
    if options.explain:
        print(explain_options(found.options.found, found.step))
    else:
        answer = options_answer(found, trace=options.trace)
        print(json.dumps(answer, indent=1, ensure_ascii=False))
