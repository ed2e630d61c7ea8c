"""Stations and levels: what every field of the answer means, and their figures in sentences."""

from collections.abc import Iterator

from lacunar.exchange.backing_words import TellFigure
from lacunar.exchange.board_answer_words import Words
from lacunar.layout.level_records import BeamLevel, Levels, Sag
from lacunar.measure.length import ZERO
from lacunar.model.stations import PanelsTo

LEVEL_WORDS: Words = {
    "StationLevel": {
        "id": "What the station is called.",
        "x": "Its place along the length run [length].",
        "y": "Its place along the width run [length].",
        "ceiling": "Finished floor to finished ceiling there [length].",
        "rise": "From the reference plane up to the ceiling [length].",
        "beams": "Ids of the beams and wall beams it lies on.",
    },
    "LevelPlace": {
        "at": "Along the beam, from the start of the run it lies along [length].",
        "station": "The station it is; null at walls and crossings without one.",
        "known": "measured at a station, between two on a straight line, or beyond the last, where"
        " that one's rise is taken.",
        "rise": "From the reference plane up to the ceiling [length].",
        "shim": "What goes behind the backing to bring it down to the plane [length].",
        "side": "How high a side is there, from its lower to its upper edge [length].",
        "scribe": "What is cut off the upper edge of the side as ripped [length].",
        "hidden_gap": "What stays open above side and panel where these end at the plane [length].",
    },
    "Sag": {
        "station": "The station that departs most from the chord.",
        "span": "The chord: between the outermost stations of the beam [length].",
        "departure": "How far the ceiling lies above the chord there, negative below [length].",
        "radius": "Radius of a fair arc over the chord [length]; null where all is straight.",
    },
    "BeamLevel": {
        "beam": "Id of the beam or wall beam.",
        "board": "How wide the side is ripped before it is scribed [length].",
        "stock_width": "How wide a side its stock can give [length]; null where none is named.",
        "most_side": "How high a side can be planned at the lowest station for its stock to reach"
        " the ceiling everywhere [length]; null where no stock is named.",
        "variation": "The tallest side less the shortest along the beam [length].",
        "even": "Whether that is within the threshold.",
        "sag": "How it departs from a straight line; null with fewer than three stations.",
        "places": "Stations, crossings and both walls, in order.",
    },
    "Levels": {
        "panels": "Whether panels hang in the plane or follow the ceiling.",
        "plane": "Finished floor to the reference plane, the lowest ceiling [length].",
        "lowest": "Ids of the stations that lie in the plane.",
        "highest": "Ids of the highest stations.",
        "rise": "From the lowest station to the highest [length].",
        "uneven": "By how much sides may differ along a beam before it is cautioned [length].",
        "stations": "All stations, as in the spec.",
        "beams": "What each beam needs on whose line a station lies.",
        "not_measured": "Ids of the beams on whose line none lies.",
    },
}

_KNOWN = {"measured": "", "between": " (between stations)", "beyond": " (beyond the last station)"}


def levels_in_words(levels: Levels, tell: TellFigure) -> Iterator[str]:
    """The plane, the stations, and what each beam needs along its line."""
    yield tell(f"Reference plane above the floor, at {', '.join(levels.lowest)}", levels.plane)
    yield tell(f"Greatest rise, at {', '.join(levels.highest)}", levels.rise)
    follows = levels.panels is PanelsTo.CEILING
    yield f"Panels {'follow the ceiling' if follows else 'hang in the plane'}."
    for station in levels.stations:
        yield tell(f"{station.id}, along the length run", station.x)
        yield tell(f"{station.id}, along the width run", station.y)
        yield tell(f"{station.id}, ceiling above the floor", station.ceiling)
        yield tell(f"{station.id}, rise", station.rise)
    for beam in levels.beams:
        yield from _beam(beam, tell)
    if levels.not_measured:
        yield f"No station lies on {', '.join(levels.not_measured)}."


def _beam(beam: BeamLevel, tell: TellFigure) -> Iterator[str]:
    name = beam.beam
    yield tell(f"{name}, side as ripped", beam.board)
    if beam.most_side is not None:
        yield tell(f"{name}, tallest side that its stock allows", beam.most_side)
    yield tell(f"{name}, variation of its sides", beam.variation)
    if beam.sag is not None:
        yield from _sag(name, beam.sag, tell)
    for number, place in enumerate(beam.places, start=1):
        label = f"{name}, {place.station or f'place {number}'}{_KNOWN[place.known]}"
        yield tell(f"{label}, along the beam", place.at)
        yield tell(f"{label}, rise", place.rise)
        yield tell(f"{label}, shim", place.shim)
        yield tell(f"{label}, side", place.side)
        yield tell(f"{label}, scribe", place.scribe)
        yield tell(f"{label}, open above it", place.hidden_gap)


def _sag(name: str, sag: Sag, tell: TellFigure) -> Iterator[str]:
    yield tell(f"{name}, chord", sag.span)
    where = "below" if sag.departure.value < ZERO else "above"
    yield tell(f"{name}, departure from the chord at {sag.station}, {where} it", sag.departure)
    if sag.radius is not None:
        yield tell(f"{name}, radius of a fair arc", sag.radius)
