"""`lacunar estimate`: what one ceiling or several pooled cost, by a price list."""

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
from lacunar.exchange.estimate_json import PreparedEstimate
from lacunar.exchange.estimate_tables import EstimateTable
from lacunar.exchange.explain_estimate import explain_estimate
from lacunar.exchange.query_schema import BookMedia
from lacunar.model.faults import SpecRefused
from lacunar.workflow.estimate import (
    Document,
    EstimateDocuments,
    estimate_answer,
    estimate_csv,
    estimate_xlsx,
    prepare_estimates,
)

HELP = "estimate one ceiling or several by a price list"
DESCRIPTION = """\
Prices what ceilings are made of and the work they take by your own price list and labor rates, and
prints the lines, what has no price, and the way to the total. Nothing is priced by a default.
Several ceilings are pooled. Alternates are changes to ceilings, stock or prices (RFC 7396).

  lacunar estimate house/*.json --prices prices.json --explain
  lacunar estimate den.json --prices prices.json --alternates frames.json --table differences
  lacunar estimate den.json --prices prices.json --format xlsx --out estimate.xlsx

  prices.json:  {"currency": "USD",
                 "materials": [{"of": "1x8", "per": "foot", "price": 2.10},
                               {"kind": "crown", "per": "piece", "length": "16 ft", "price": 52}],
                 "labor": {"rate": 55, "work": [{"per": "joint", "of": ["cross"], "hours": 0.5}]},
                 "overhead": 0.1, "margin": 0.25}
  frames.json:  [{"name": "Bench frames", "changes": {"crown": {"method": "bench_frame"}}}]
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "estimate",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    add_ceilings(command)
    command.add_argument(
        "--prices", required=True, metavar="LIST.json", help="prices and labor rates"
    )
    command.add_argument("--stock", metavar="STOCK.json", help="what is sold and on hand")
    command.add_argument("--alternates", metavar="FILE.json", help="a list of alternates")
    add_telling(command, EstimateTable, EstimateTable.LINES, "say it in words, with every sum")
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Print the estimate, or write it; the exit code."""
    try:
        prepared = prepare_estimates(
            EstimateDocuments(
                ceilings=tuple((name, spec_bytes(name)) for name in options.specs),
                prices=(options.prices, spec_bytes(options.prices)),
                stock=_document(options.stock),
                alternates=_document(options.alternates),
            )
        )
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        named = (*options.specs, options.prices, options.stock, options.alternates)
        tell_faults(", ".join(name for name in named if name is not None), refused.faults)
        return FAULTS
    send(_content(prepared, options), options.out)
    _tell(prepared)
    return DONE


def _document(name: str | None) -> Document | None:
    return None if name is None else (name, spec_bytes(name))


def _tell(prepared: PreparedEstimate) -> None:
    """What a person should know before the total is believed."""
    base, step = prepared.base, prepared.base.pooled.step
    for assumption in base.price_assumptions:
        tell(f"assumed {assumption_line(assumption, step.units)}")
    for caution in base.estimate.cautions:
        tell(f"  caution: {caution.text}")
    unpriced = base.estimate.unpriced
    if unpriced:
        tell(f"  {len(unpriced)} without a price: {', '.join(each.name for each in unpriced)}")
    if not base.estimate.totals.complete:
        tell("  The total is incomplete: it will be more.")


def _content(prepared: PreparedEstimate, options: argparse.Namespace) -> bytes:
    if options.explain:
        return (explain_estimate(prepared) + "\n").encode()
    if options.format == BookMedia.XLSX:
        return estimate_xlsx(prepared)
    if options.format == BookMedia.CSV or (options.table and not options.format):
        return estimate_csv(prepared, EstimateTable(options.table or EstimateTable.LINES))
    answer = estimate_answer(prepared, trace=options.trace)
    return (json.dumps(answer, indent=1, ensure_ascii=False) + "\n").encode()
