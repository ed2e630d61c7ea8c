"""Strips ripped from whole sheets for beams: each cut takes a kerf, so eight rips lose seven."""

from collections.abc import Iterator, Sequence

from lacunar.layout.board_records import SheetRip
from lacunar.layout.records import BeamProfile, ProfilePart
from lacunar.measure.figure import CountFigure, LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.stock import SHEET_WIDTH, StockKind

STRIPS = Rule(
    "strips from a sheet: each but the last takes a kerf with it",
    "floor((sheet + kerf) / (strip + kerf))",
)
WIDEST_STRIP = Rule(
    "widest strip of which a sheet gives so many: the kerfs between them taken off",
    "(sheet - (strips - 1) * kerf) / strips",
)


def strips_from(sheet: Length, strip: Length, kerf: Length) -> CountFigure:
    """Turn a sheet's width, a strip's width and a kerf [length] into how many strips there are.

    >>> inch = Length.of_inches
    >>> strips_from(inch(48), inch(24), inch(1) / 8).value
    1
    """
    count = (sheet + kerf) // (strip + kerf)
    return STRIPS.gives(count, sheet=sheet, kerf=kerf, strip=strip)


def widest_strip(sheet: Length, strips: int, kerf: Length) -> LengthFigure:
    """Turn a sheet's width, a number of strips and a kerf into the widest strip there can be.

    >>> inch = Length.of_inches
    >>> widest_strip(inch(48), 2, inch(1) / 8).value
    Length(383/16 in)
    """
    widest = (sheet - kerf * (strips - 1)) / strips
    return WIDEST_STRIP.gives(widest, sheet=sheet, strips=strips, kerf=kerf)


def sheet_rips(profiles: Sequence[BeamProfile], kerf: Length) -> tuple[SheetRip, ...]:
    """Turn beam profiles into the rips of their boards that come from sheets named by category.

    Rips of one part, stock and width stand together. A board as wide as the sheet is no rip.
    """
    alike: dict[tuple[str, str, Length], list[tuple[str, ProfilePart]]] = {}
    for profile_id, part in _from_sheets(profiles):
        stock = part.stock.name if part.stock else ""
        alike.setdefault((part.name, stock, part.width.value), []).append((profile_id, part))
    return tuple(_rip(stock, group, kerf) for (_, stock, _), group in alike.items())


def _from_sheets(profiles: Sequence[BeamProfile]) -> Iterator[tuple[str, ProfilePart]]:
    for profile in profiles:
        for part in profile.parts:
            is_sheet = part.stock is not None and part.stock.kind is StockKind.SHEET
            if is_sheet and part.width.value < SHEET_WIDTH:
                yield profile.id, part


def _rip(stock: str, group: Sequence[tuple[str, ProfilePart]], kerf: Length) -> SheetRip:
    part = group[0][1]
    strips = strips_from(SHEET_WIDTH, part.width.value, kerf)
    return SheetRip(
        part=part.name,
        stock=stock,
        profiles=tuple(dict.fromkeys(profile_id for profile_id, _ in group)),
        width=part.width,
        strips=strips,
        one_more=widest_strip(SHEET_WIDTH, strips.value + 1, kerf),
    )
