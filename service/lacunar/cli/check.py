"""`lacunar check`: is a spec sound, and do its sheets pass a plan checker."""

import argparse
from typing import Any

from lacunar.cli.speaking import (
    DONE,
    FAULTS,
    FINDINGS,
    UnreadableSpec,
    spec_bytes,
    tell,
    tell_cautions,
    tell_faults,
)
from lacunar.exchange.assumption_words import assumption_line
from lacunar.model.faults import SpecRefused
from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import Prepared, prepare

HELP = "check specs and, with --drawings, the sheets drawn from them"
DESCRIPTION = """\
Reads each ceiling and says whether it can be built as asked: all faults at once, each with its
place in the file and the way out. With --drawings its sheets are drawn too and read back as a
plan checker reads them: every string sums, every face is dimensioned from the datum, nothing
overlaps, every line is drawn to scale, all parts are cut from the stock that is bought. One line a
finding; exit code 4 if there is any.

  lacunar check examples/ceilings/*.json --drawings
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "check",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument(
        "specs", nargs="+", metavar="SPEC.json", help="a ceiling; - reads one from standard input"
    )
    command.add_argument("--drawings", action="store_true", help="check the sheets too")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Check each ceiling; the highest exit code."""
    return max(_check_one(name, drawings=options.drawings) for name in options.specs)


def _check_one(name: str, *, drawings: bool) -> int:
    try:
        prepared = prepare(spec_bytes(name))
        _say_sound(name, prepared)
        findings = check_drawings(prepared) if drawings else ()
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        tell_faults(name, refused.faults)
        return FAULTS
    for finding in findings:
        print(f"{name}: {finding.sheet}: point {finding.point}: {finding.where}: {finding.message}")
    if drawings:
        tell(f"{name}: {len(findings)} findings on its sheets.")
    return FINDINGS if findings else DONE


def _say_sound(name: str, prepared: Prepared) -> None:
    """That a spec is sound, what was assumed, and what to be careful about."""
    tell(f"{name}: can be built as asked.")
    for assumption in prepared.assumptions:
        tell(f"  assumed {assumption_line(assumption, prepared.layout.ceiling.units)}")
    tell_cautions(prepared)
