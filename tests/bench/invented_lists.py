"""Cutting lists like those of coffered rooms, invented from a seed: five priced lengths each."""

import random
from dataclasses import dataclass
from fractions import Fraction

from lacunar.takeoff.cutting.stick_shop import StickShop

# Thirty-seconds of an inch; kerf 1/8, a quarter inch off each end; 8 to 16 ft, prices invented.
TICKS = 32
KERF, TRIM = 4, 8
STOCK = ((96, 1149), (120, 1499), (144, 1749), (168, 2099), (192, 2349))


@dataclass(frozen=True)
class InventedList:
    """A list by name: how many pieces of each length [ticks]."""

    name: str
    pieces: dict[int, int]

    def shop(self, stock=STOCK) -> StickShop:
        """The list as a shop of sticks."""
        sizes = sorted(self.pieces, reverse=True)
        return StickShop(
            tuple(size + KERF for size in sizes),
            tuple(self.pieces[size] for size in sizes),
            tuple(inches * TICKS - 2 * TRIM + KERF for inches, _ in stock),
            tuple(price for _, price in stock),
            (None,) * len(stock),
        )


def _product(chance: random.Random, columns: int, rows: int, length: int, width: int) -> dict:
    """One product of a room: frames, sides, bottoms or boards."""
    kind = chance.choice(("frames", "sides", "bottoms", "mixed"))
    beam = chance.choice((6, 7, 8, 10)) * TICKS
    across = Fraction(length * TICKS - (columns - 1) * beam, columns)
    along = Fraction(width * TICKS - (rows - 1) * beam, rows)
    opening, other = int(across), int(along)
    pieces: dict[int, int] = {}

    def put(size: int, n: int) -> None:
        if 0 < size <= 192 * TICKS - 2 * TRIM and n:
            pieces[size] = pieces.get(size, 0) + n

    coffers = columns * rows
    inset = chance.choice((0, 2, 24, 48))
    if kind in ("frames", "mixed"):
        put(opening - inset, 2 * coffers)
        put(other - inset, 2 * coffers)
    if kind in ("sides", "mixed"):
        put(opening, 2 * (rows - 1) * columns)
        put(other - 2 * chance.randrange(1, 12), 2 * (columns - 1) * rows)
    if kind in ("bottoms", "mixed"):
        put(other + beam - 16, (columns - 1) * rows)
        put(opening - 24, (rows - 1) * columns)
    for _ in range(chance.randrange(2, 14)):  # wall beams, fillers, odd ones
        put(chance.randrange(6 * TICKS, 150 * TICKS), chance.randrange(1, 5))
    return pieces


def room_lists(seed: int, count: int = 40) -> list[InventedList]:
    """Lists of single rooms from a study to a ballroom, a few to some hundred pieces."""
    chance = random.Random(seed)
    lists = []
    while len(lists) < count:
        length, width = chance.randrange(120, 1080), chance.randrange(108, 720)
        columns = max(2, round(length / chance.randrange(30, 75)))
        rows = max(2, round(width / chance.randrange(30, 75)))
        pieces = _product(chance, columns, rows, length, width)
        if len(pieces) >= 4 and sum(pieces.values()) <= 900:
            lists.append(InventedList(f"room {seed}-{len(lists)}", pieces))
    return lists


def pooled_lists(seed: int, count: int = 8) -> list[InventedList]:
    """Jobs of several rooms, one product: many distinct lengths."""
    lists = []
    for number in range(count):
        rooms = room_lists(seed * 1000 + number, 4 + number % 4)
        pieces: dict[int, int] = {}
        for room in rooms:
            for size, n in room.pieces.items():
                pieces[size] = pieces.get(size, 0) + n
        lists.append(InventedList(f"job {seed}-{number}", pieces))
    return lists
