"""Crossings and cut pieces in words: what their fields mean, and what is told of each."""

from collections.abc import Callable, Iterator
from typing import Any

from lacunar.exchange.board_answer_words import Words
from lacunar.layout.crossing_records import BoardEnd, BoardPart, Crossing, CrossingKind, CutPiece
from lacunar.measure.figure import Figure
from lacunar.measure.length import Length

_PART = "Which board of the beam it is."

CROSSING_WORDS: Words = {
    "BoardEnd": {
        "cut": "How the end is cut.",
        "ends_at": "What it lies against.",
        "past": "How far its long point reaches past the face of what the beam meets there"
        " [length]; below zero where it stays short of it.",
        "past_short": "The same of its short point [length].",
        "angle": "From a square cut [deg]; null where the cut is square.",
        "notch_along": "The corner taken out, along the board [length]; null where there is none.",
        "notch_up": "The corner taken out, up from the lower edge [length]; null where there is"
        " none.",
    },
    "CrossingPlace": {
        "through": "Id of the beam that runs through, or of the wall or soffit.",
        "stopped": "Id of the beam that ends there.",
    },
    "CrossingEnd": {
        "beam": "Whether it is a board of the beam that runs through or of the one that ends.",
        "part": _PART,
        "end": "How it ends.",
    },
    "Crossing": {
        "id": "K1 and so on.",
        "kind": "What it looks like from below, or what the beam ends at.",
        "through": "Profile of the beam that runs through; null at a wall or soffit.",
        "stopped": "Profile of the beam that ends there.",
        "runs_past": "Boards of the beam that runs through which are not cut there.",
        "ends": "How all other boards end.",
        "places": "Everywhere it occurs.",
    },
    "PiecePlace": {
        "beam": "Id of its beam or wall beam.",
        "side": "The beam's side it is on, seen from the datum; null for a board across it.",
        "start": "Its long point towards the datum, along the beam [length].",
        "end": "Its long point away from the datum, along the beam [length].",
    },
    "CutPiece": {
        "part": _PART,
        "profile": "Id of the profile it belongs to, which has its thickness and width.",
        "quantity": "How many there are [count].",
        "length": "Between its long points [length].",
        "short_length": "Between its short points [length].",
        "start": "How it ends towards the datum.",
        "end": "How it ends away from the datum.",
        "places": "Where each of them goes.",
    },
}

Lines = Iterator[str]

_PARTS: dict[BoardPart, str] = {
    "side": "side",
    "bottom": "bottom",
    "upper_board": "upper board",
}
_MOST_PLACES = 6


def crossing_in_words(
    crossing: Crossing, figure: Callable[[str, Figure[Any]], str], length: Callable[[Length], str]
) -> Lines:
    """Tell one kind of crossing: what meets, where, and how each board ends."""
    places = [f"{place.stopped} at {place.through}" for place in crossing.places]
    shown = _first_of(places)
    kind = crossing.kind.replace("_", " ")
    if crossing.kind in (CrossingKind.END_AT_WALL, CrossingKind.END_AT_SOFFIT):
        what = f"{crossing.stopped}, {kind}"
    else:
        what = f"{kind}, {crossing.through} runs through, {crossing.stopped} ends"
    yield f"{crossing.id}: {what}, {len(places)} times: {shown}."
    for part in crossing.runs_past:
        yield f"{crossing.id}, {_PARTS[part]} of {crossing.through} runs past."
    for each in crossing.ends:
        profile = crossing.through if each.beam == "through" else crossing.stopped
        label = f"{crossing.id}, {_PARTS[each.part]} of {profile}"
        yield from _end_in_words(label, each.end, figure, length)


def piece_in_words(
    piece: CutPiece, figure: Callable[[str, Figure[Any]], str], length: Callable[[Length], str]
) -> Lines:
    """Tell one size of piece: how long, how many, on which beams."""
    beams = list(dict.fromkeys(place.beam for place in piece.places))
    shown = _first_of(beams)
    label = f"{piece.quantity} {_PARTS[piece.part]} of {piece.profile}, for {shown}"
    yield figure(f"{label}, long points", piece.length)
    if piece.short_length.value != piece.length.value or (
        piece.short_length.rule != piece.length.rule
    ):
        yield figure(f"{label}, short points", piece.short_length)
    for name, end in (("start", piece.start), ("end", piece.end)):
        yield from _end_in_words(f"{label}, {name}", end, figure, length)


def _first_of(names: list[str]) -> str:
    return ", ".join(names[:_MOST_PLACES]) + (" …" if len(names) > _MOST_PLACES else "")


def _end_in_words(
    label: str,
    end: BoardEnd,
    figure: Callable[[str, Figure[Any]], str],
    length: Callable[[Length], str],
) -> Lines:
    angle = f" at {end.angle.tenths} from square" if end.angle else ""
    notch = ""
    if end.notch_along is not None and end.notch_up is not None:
        notch = f", {length(end.notch_along)} along and {length(end.notch_up)} up"
    yield f"{label}: {end.cut}{angle}{notch}, at the {end.ends_at.replace('_', ' ')}."
    yield figure(f"{label}, past the face", end.past)
    if end.past_short.rule != end.past.rule or end.past_short.value != end.past.value:
        yield figure(f"{label}, short point past the face", end.past_short)
