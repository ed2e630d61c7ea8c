"""How long searches for options take, against one full layout in the same run.

`python3 -m tests.bench.options` measures CPU seconds of this process, the least of several runs:
other work on the machine makes both figures larger, and their ratio stays.
"""

import json
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.takeoff.taken_off import take_off
from lacunar.workflow.options import begin_options, prepare_options
from lacunar.workflow.prepare import prepare

RUNS = 3
PRICES = Path(__file__).parents[2] / "examples" / "prices" / "invented.json"
ROOMS: dict[str, dict[str, Any]] = {
    "family room": {
        "room": {"length": "16 ft", "width": "12 ft", "height": "9 ft"},
        "crown": {"face": "3 1/4"},
        "panel": {"kind": "sheet_goods"},
    },
    "ballroom": {
        "room": {"length": "100 ft", "width": "60 ft", "height": "16 ft"},
        "crown": {"face": "5 1/4"},
        "panel": {"kind": "sheet_goods"},
    },
}


@dataclass(frozen=True)
class Measured:
    """CPU seconds of a whole search, of its runs alone, and of one layout with its take-off."""

    search: float
    runs: float
    layout: float
    laid_out: int

    @property
    def layouts_worth(self) -> float:
        """How many layouts the search takes as long as."""
        return self.search / self.layout


def measured(ceiling: dict[str, Any]) -> Measured:
    """One ceiling, measured without prices; the layout is that of option 1, as it is sent back."""
    document = json.dumps({"ceiling": ceiling}).encode()
    found = prepare_options(document)
    search = least(lambda: prepare_options(document))
    runs = least(lambda: begin_options(document))
    told = ceiling_to_json(found.options.laid_out[0].resolution.ceiling)
    first = json.dumps(told).encode()
    layout = least(lambda: take_off([prepare(first).layout]))
    return Measured(search, runs, layout, found.options.found.counts.laid_out)


def with_prices(ceiling: dict[str, Any]) -> float:
    """CPU seconds of a whole search with a price list."""
    prices = json.loads(PRICES.read_text("utf-8"))
    document = json.dumps({"ceiling": ceiling, "prices": prices}).encode()
    prepare_options(document)
    return least(lambda: prepare_options(document))


def least(run: Callable[[], object]) -> float:
    """The least CPU time of several runs [s]."""
    times = []
    for _ in range(RUNS):
        start = time.process_time()
        run()
        times.append(time.process_time() - start)
    return min(times)


def main() -> None:
    """Print what was measured."""
    print(
        "room          search s  runs s  layout s  laid out  search / layout  with prices s  each"
    )
    for name, ceiling in ROOMS.items():
        found, priced = measured(ceiling), with_prices(ceiling)
        each = (priced - found.search) / found.laid_out
        print(
            f"{name:12}  {found.search:8.2f}  {found.runs:6.2f}  {found.layout:8.3f}"
            f"  {found.laid_out:8}  {found.layouts_worth:15.1f}  {priced:13.2f}  {each:.3f}"
        )


if __name__ == "__main__":
    main()
