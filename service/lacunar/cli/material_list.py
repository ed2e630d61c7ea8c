"""`lacunar material-list`: what to buy for one ceiling or several pooled."""

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
from lacunar.exchange.assumption_words import assumption_line
from lacunar.exchange.explain_materials import explain_materials
from lacunar.exchange.material_tables import MaterialTable
from lacunar.exchange.query_schema import BookMedia
from lacunar.model.faults import SpecRefused
from lacunar.workflow.material_list import (
    PreparedMaterials,
    materials_answer,
    materials_csv,
    materials_xlsx,
    prepare_stocked,
)

HELP = "list what to buy for one ceiling or several"
DESCRIPTION = """\
Lays all parts of ceilings out in stock and prints what to buy: sticks by length, sheets, boards,
and packs of fasteners, adhesive, insulation, primer and paint, each with what is needed, waste
apart from it, and the part marks it is for. What is sold is told in a JSON file; where it says
nothing of a material, usual lengths are assumed.

  lacunar material-list examples/ceilings/music_room.json --explain
  lacunar material-list house/*.json --stock yard.json --format xlsx --out order.xlsx
  lacunar material-list house/*.json --table cuts    one table, as CSV

  yard.json:  {"end_trim": "1/4", "most_lengths": 2,
               "lengths": [{"material": "1x8", "length": "12 ft", "price": 21.40},
                           {"material": "1x8", "length": "16 ft", "price": 28.90}],
               "packs": [{"of": "paint", "holds": "5 gal"}]}
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "material-list",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_ceilings(command)
    command.add_argument("--stock", metavar="STOCK.json", help="what is sold and on hand")
    add_telling(command, MaterialTable, MaterialTable.ORDER, "say it in words, with every sum")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the material list, or write it; the exit code."""
    try:
        stock = None if options.stock is None else spec_bytes(options.stock)
        documents = [(name, spec_bytes(name)) for name in options.specs]
        prepared = prepare_stocked(documents, stock)
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        named = [*options.specs, *([] if options.stock is None else [options.stock])]
        tell_faults(", ".join(named), refused.faults)
        return FAULTS
    send(_content(prepared, options), options.out)
    for assumption in prepared.listed.assumptions:
        tell(f"assumed {assumption_line(assumption, prepared.pooled.step.units)}")
    for caution in prepared.listed.materials.cautions:
        tell(f"  caution: {caution.text}")
    return DONE


def _content(prepared: PreparedMaterials, options: argparse.Namespace) -> bytes:
    if options.explain:
        return (explain_materials(prepared) + "\n").encode()
    if options.format == BookMedia.XLSX:
        return materials_xlsx(prepared)
    if options.format == BookMedia.CSV or (options.table and not options.format):
        return materials_csv(prepared, MaterialTable(options.table or MaterialTable.ORDER))
    answer = materials_answer(prepared, trace=options.trace)
    return (json.dumps(answer, indent=1, ensure_ascii=False) + "\n").encode()
