"""Cautions about ceilings that are not flat."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.layout.level_records import Levels
from lacunar.layout.names import first_few
from lacunar.layout.records import Caution, Layout
from lacunar.model.stations import PanelsTo

# More than framing over a finished ceiling may bend under its load (International Residential Code,
# table R301.7, which tells 1/240 for most finishes and 1/360 for plaster: from memory).
_SAG_OF_SPAN = Fraction(1, 240)


def level_cautions(layout: Layout) -> Iterator[Caution]:
    """What to mind where stations show that the ceiling is not flat."""
    levels = layout.levels
    if levels is None or not levels.rise.value:
        return
    yield from _sagging(levels)
    yield from _short_of_shim(layout, levels)
    yield from _uneven(layout, levels)
    yield from _without_sides(layout, levels)
    yield from _not_measured(levels)
    yield from _from_floor(layout, levels)


def _sagging(levels: Levels) -> Iterator[Caution]:
    """A ceiling that hangs down between its ends may tell of framing that is overloaded."""
    found = [
        (level.beam, sag)
        for level in levels.beams
        if (sag := level.sag) and -sag.departure.value > sag.span.value * _SAG_OF_SPAN
    ]
    if found:
        worst = min((sag for _, sag in found), key=lambda sag: sag.departure.value)
        yield Caution(
            code="ceiling_sags",
            text="The ceiling hangs down between its ends by more than finished framing usually"
            " may. Have the framing judged by a licensed engineer before hanging beams from it.",
            figures={
                "beams": ", ".join(beam for beam, _ in found),
                "sag": -worst.departure.value,
                "span": worst.span.value,
            },
            pointer="/room/stations",
        )


def _short_of_shim(layout: Layout, levels: Levels) -> Iterator[Caution]:
    """Packing that was told is less than the highest station needs."""
    fixing = layout.ceiling.fixing
    if fixing is not None and fixing.shim < levels.rise.value:
        yield Caution(
            code="shim_less_than_rise",
            text="The packing in the spec is less than the highest station needs, so that fasteners"
            " reach less deep there than is told.",
            figures={"shim": fixing.shim, "needed": levels.rise.value},
            pointer="/fixing/shim",
        )


def _uneven(layout: Layout, levels: Levels) -> Iterator[Caution]:
    """Sides that are scribed to the ceiling are seen to differ."""
    uneven = [level for level in levels.beams if not level.even]
    if not uneven:
        return
    crown = layout.mouldings.crown is not None
    yield Caution(
        code="reveal_reads_uneven",
        text="Sides that follow the ceiling differ in height along a beam by more than the"
        " threshold in the spec, and the reveal below the panels will read uneven."
        + (" Crown against the ceiling shows the curve still more." if crown else "")
        + " Scribe the sides without moulding, or hang the panels in the plane.",
        figures={
            "beams": ", ".join(level.beam for level in uneven),
            "difference": max(level.variation.value for level in uneven),
            "threshold": levels.uneven,
        },
        pointer="/room/leveling/uneven",
    )


def _without_sides(layout: Layout, levels: Levels) -> Iterator[Caution]:
    """Flat beams have nothing that could go up to a ceiling above the plane."""
    flat = [
        profile
        for profile in layout.profiles
        if profile.kind != "soffit" and all(part.name != "side" for part in profile.parts)
    ]
    if flat and levels.panels is PanelsTo.CEILING:
        yield Caution(
            code="flat_beams_below_rise",
            text="Flat beams have no sides to scribe: leveled, they show a gap beside their boards"
            " where the ceiling rises above the plane. Let the boards follow the ceiling, hang"
            " panels in the plane, or build boxes.",
            figures={
                "profiles": ", ".join(profile.id for profile in flat),
                "rise": levels.rise.value,
            },
            pointer="/beams",
        )


def _not_measured(levels: Levels) -> Iterator[Caution]:
    """Beams on whose line no station lies."""
    if not levels.not_measured:
        return
    follows = levels.panels is PanelsTo.CEILING
    yield Caution(
        code="beams_not_measured",
        text=f"No station lies on {first_few(levels.not_measured, 'beams')}. Read the ceiling's"
        " height along every beam before cutting"
        f" {'sides' if follows else 'shims'}: nothing is guessed across the room.",
        figures={"beams": ", ".join(levels.not_measured)},
        pointer="/room/stations",
    )


def _from_floor(layout: Layout, levels: Levels) -> Iterator[Caution]:
    """Heights from the floor are as level as the floor."""
    stations = layout.ceiling.room.stations
    if all(station.above_line is None for station in stations):
        yield Caution(
            code="heights_follow_floor",
            text="Heights read from the floor are only as level as the floor. Read them from one"
            " level line instead, such as a laser's, before cutting shims and sides.",
            figures={"rise": levels.rise.value},
            pointer="/room/stations",
        )
