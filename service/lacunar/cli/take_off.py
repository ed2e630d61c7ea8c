"""`lacunar take-off`: what one ceiling or several pooled are made of."""

import argparse
import json
from typing import Any

from lacunar.cli.book import add_ceilings, add_telling, send
from lacunar.cli.speaking import (
    DONE,
    FAULTS,
    UnreadableSpec,
    spec_bytes,
    tell,
    tell_faults,
)
from lacunar.exchange.explain_take_off import explain_take_off
from lacunar.exchange.query_schema import BookMedia
from lacunar.exchange.take_off_json import PooledTakeOff
from lacunar.exchange.take_off_tables import TakeOffTable
from lacunar.model.faults import SpecRefused
from lacunar.workflow.take_off import (
    prepare_take_offs,
    take_off_answer,
    take_off_csv,
    take_off_xlsx,
)

HELP = "take off the parts of one ceiling or several"
DESCRIPTION = """\
Prints every part that ceilings are made of (mark, material, size, ends, how many there are, where
each goes) and how much is needed of everything. Several ceilings are pooled: parts that are alike
share a mark, and every place names its ceiling.

  lacunar take-off examples/ceilings/music_room.json
  lacunar take-off house/*.json --format xlsx --out house.xlsx
  lacunar take-off house/*.json --table places      one table, as CSV
  lacunar take-off house/*.json --explain           quantities with their sums, in words
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "take-off",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_ceilings(command)
    add_telling(
        command, TakeOffTable, TakeOffTable.PARTS, "say in words how each quantity came about"
    )
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the take-off, or write it; the exit code."""
    try:
        prepared = prepare_take_offs([(name, spec_bytes(name)) for name in options.specs])
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        tell_faults(", ".join(options.specs), refused.faults)
        return FAULTS
    send(_content(prepared, options), options.out)
    for caution in prepared.taken.cautions:
        tell(f"  caution: {caution.text}")
    return DONE


def _content(prepared: PooledTakeOff, options: argparse.Namespace) -> bytes:
    if options.explain:
        return (explain_take_off(prepared) + "\n").encode()
    if options.format == BookMedia.XLSX:
        return take_off_xlsx(prepared)
    if options.format == BookMedia.CSV or (options.table and not options.format):
        return take_off_csv(prepared, TakeOffTable(options.table or TakeOffTable.PARTS))
    answer = take_off_answer(prepared, trace=options.trace)
    return (json.dumps(answer, indent=1, ensure_ascii=False) + "\n").encode()
