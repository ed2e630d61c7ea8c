"""The published instances beside this file, each with its source and its optimum in its header."""

import re
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(__file__).parent / "instances"


@dataclass(frozen=True)
class BinPacking:
    """A one-dimensional instance: how many pieces of each size, and the least number of bins."""

    name: str
    capacity: int
    demand: dict[int, int]
    optimum: int


@dataclass(frozen=True)
class OneSheet:
    """A sheet and kinds of pieces with values; the greatest values of one sheet."""

    name: str
    size: tuple[int, int]
    pieces: tuple[tuple[int, int, int], ...]
    fixed: int
    turned: int


def _lines(path):
    return [line for line in path.read_text(encoding="ascii").splitlines() if line.strip()]


def bin_packing() -> list[BinPacking]:
    """Every one-dimensional instance."""
    found = []
    for path in sorted(FOLDER.glob("*.txt")):
        lines = _lines(path)
        optimum = [re.match(r"# optimum bins: (\d+)", line) for line in lines]
        told = [int(match[1]) for match in optimum if match]
        if not told:
            continue
        rows = [line.split() for line in lines if not line.startswith("#")]
        demand: dict[int, int] = {}
        for size, n in rows[1:]:
            demand[int(size)] = demand.get(int(size), 0) + int(n)
        found.append(BinPacking(path.stem, int(rows[0][1]), demand, told[0]))
    return found


def one_sheet() -> list[OneSheet]:
    """Every two-dimensional instance."""
    found = []
    for path in sorted(FOLDER.glob("gcut*.txt")):
        lines = _lines(path)
        (optima,) = (line for line in lines if "optimum value" in line)
        fixed, turned = (int(n) for n in re.findall(r": (\d+)", optima))
        rows = [line.split() for line in lines if not line.startswith("#")]
        size = (int(rows[0][1]), int(rows[0][2]))
        pieces = tuple((int(a), int(b), int(value)) for a, b, value in rows[1:])
        found.append(OneSheet(path.stem, size, pieces, fixed, turned))
    return found
