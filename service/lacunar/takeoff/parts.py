"""Pieces of one ceiling or of several as parts: alike ones together, under marks common to all."""

from collections.abc import Iterable, Iterator
from itertools import chain

from lacunar.layout.records import Layout
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.takeoff.marks import marked
from lacunar.takeoff.part_records import MaterialKind, Part, PartKind, PartPlace, Pieces, Shape
from lacunar.takeoff.sources.beams import beam_pieces
from lacunar.takeoff.sources.boards import board_pieces
from lacunar.takeoff.sources.cut_coffer_strips import cut_coffer_strip_pieces
from lacunar.takeoff.sources.cut_coffers import angled_beam_pieces, cut_coffer_pieces
from lacunar.takeoff.sources.framing import framing_pieces
from lacunar.takeoff.sources.mouldings import moulding_pieces
from lacunar.takeoff.sources.panels import panel_pieces
from lacunar.takeoff.sources.source import Source

CUT_LENGTH = Rule("length to be cut: net, and the allowance", "net + allowance")
RIP_WIDTH = Rule(
    "width to be ripped: net, and the allowance, as far as the stock goes",
    "max(net, min(net + allowance, stock))",
)
SHEET_CUT = Rule(
    "length to be cut from a sheet: net, and the allowance, as far as the sheet goes",
    "max(net, min(net + allowance, stock))",
)


def pieces_of(layout: Layout, number: int = 1) -> tuple[Pieces, ...]:
    """Turn a layout into all its pieces.

    Parameters: `layout`; `number` of the ceiling, by which each place names it.
    """
    source = Source(number, layout)
    trades = (beam_pieces, framing_pieces, moulding_pieces, panel_pieces, board_pieces)
    odd = (cut_coffer_pieces, cut_coffer_strip_pieces, angled_beam_pieces)
    return tuple(chain.from_iterable(pieces(source) for pieces in (*trades, *odd)))


def parts_from(pieces: Iterable[Pieces]) -> tuple[Part, ...]:
    """Turn pieces, of one ceiling or of several, into parts with marks.

    Pieces are one part where exact size, material, ends and all else of their shapes is equal.
    """
    alike: dict[tuple[object, ...], tuple[Shape, list[PartPlace]]] = {}
    for each in pieces:
        alike.setdefault(each.shape.key, (each.shape, []))[1].extend(each.places)
    shapes = marked(shape for shape, _ in alike.values())
    return tuple(_part(mark, shape, alike[shape.key][1]) for mark, shape in shapes)


def _part(mark: str, shape: Shape, places: list[PartPlace]) -> Part:
    return Part(
        mark=mark,
        kind=shape.kind,
        name=shape.name,
        material=shape.material,
        quantity=sum(place.quantity for place in places),
        thickness=shape.thickness,
        width=shape.width,
        length=shape.length,
        short_length=shape.short_length,
        cut_length=_cut_length(shape),
        cut_width=_cut_width(shape),
        left=shape.left,
        right=shape.right,
        mitred_edges=shape.mitred_edges,
        face=shape.face,
        grain=shape.grain,
        tapered=shape.tapered,
        places=tuple(_together(places)),
        corners=shape.corners,
    )


def _together(places: Iterable[PartPlace]) -> Iterator[PartPlace]:
    """Places that are one, such as two nailers in a coffer, told once with how many they are."""
    counted: dict[tuple[object, ...], list[PartPlace]] = {}
    for place in places:
        key = (place.ceiling, place.of, place.at, place.start, place.end)
        counted.setdefault(key, []).append(place)
    for group in counted.values():
        one = group[0]
        quantity = sum(place.quantity for place in group)
        yield PartPlace(one.ceiling, one.of, one.at, one.start, one.end, quantity)


def _cut_length(shape: Shape) -> LengthFigure:
    net, allowance = shape.length, shape.length_allowance
    sheet = shape.material.length
    if not allowance:
        return net
    if shape.kind is PartKind.PANEL and sheet is not None:
        return _within(SHEET_CUT, net, allowance, sheet)
    gives = CUT_LENGTH.approximates if net.approximate else CUT_LENGTH.gives
    return gives(net.value + allowance, net=net.value, allowance=allowance)


def _cut_width(shape: Shape) -> LengthFigure | None:
    """Wider only where a part is ripped: stock of its own width is what it is."""
    net, stock = shape.width, shape.material.width
    if net is None or stock is None or not shape.width_allowance:
        return net
    if shape.material.kind is MaterialKind.SECTION or net.value >= stock:
        return net
    return _within(RIP_WIDTH, net, shape.width_allowance, stock)


def _within(rule: Rule, net: LengthFigure, allowance: Length, stock: Length) -> LengthFigure:
    gives = rule.approximates if net.approximate else rule.gives
    most = max(net.value, min(net.value + allowance, stock))
    return gives(most, net=net.value, allowance=allowance, stock=stock)
