"""Tables and notes of stations: heights, shims, and sides where these go up to the ceiling."""

from lacunar.drawing.annotation import Block
from lacunar.drawing.run_ends import from_walls
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.wording import SheetWording
from lacunar.layout.level_records import Levels
from lacunar.layout.records import Layout
from lacunar.model.room import START_WALL, RunName
from lacunar.model.stations import PanelsTo


def level_tables(layout: Layout, space: TableSpace, wording: SheetWording) -> tuple[Block, ...]:
    """All stations, and each beam's sides at its stations where they go up to the ceiling."""
    levels = layout.levels
    if levels is None:
        return ()
    blocks = list(
        in_blocks(
            "station", "stations", "CEILING STATIONS", _stations(layout, levels, wording), space
        )
    )
    if levels.panels is PanelsTo.CEILING and levels.rise.value:
        rows = _sides(levels, wording)
        if rows[0].cells:
            blocks.extend(in_blocks("station", "station-sides", "SIDES AT STATIONS", rows, space))
    return tuple(blocks)


def _stations(layout: Layout, levels: Levels, wording: SheetWording) -> list[WordColumn]:
    stations = levels.stations
    length, width = (f"FROM {START_WALL[run]}" for run in RunName)
    along, across = (
        tuple(wording.length(from_walls(layout, run, place.value)) for place in places)
        for run, places in (
            (RunName.LENGTH, [each.x for each in stations]),
            (RunName.WIDTH, [each.y for each in stations]),
        )
    )
    return [
        WordColumn("STATION", tuple(each.id for each in stations)),
        WordColumn(length, along),
        WordColumn(width, across),
        WordColumn("CEILING", tuple(wording.detail(each.ceiling.value) for each in stations)),
        WordColumn("SHIM", tuple(wording.detail(each.rise.value) for each in stations)),
    ]


def _sides(levels: Levels, wording: SheetWording) -> list[WordColumn]:
    places = [
        (level.beam, place)
        for level in levels.beams
        for place in level.places
        if place.station is not None
    ]
    return [
        WordColumn("BEAM", tuple(beam for beam, _ in places)),
        WordColumn("STATION", tuple(str(place.station) for _, place in places)),
        WordColumn("SIDE", tuple(wording.detail(place.side.value) for _, place in places)),
        WordColumn("SCRIBE", tuple(wording.detail(place.scribe.value) for _, place in places)),
    ]


def level_notes(levels: Levels | None, wording: SheetWording) -> tuple[str, ...]:
    """What the plane is, and what goes up to it or to the ceiling."""
    if levels is None or not levels.rise.value:
        return ()
    plane = (
        f"Reference plane: level, at the lowest station ({', '.join(levels.lowest)}). Sections are"
        " drawn there. Backing is shimmed down to the plane; the ceiling rises"
        f" {wording.detail(levels.rise.value)} above it."
    )
    if levels.panels is PanelsTo.PLANE:
        return (plane, "Panels hang in the plane, and sides end at it.")
    return (plane, "Panels follow the ceiling; sides go up to it and are scribed from their board.")
