"""All that labor can be paid by, counted: feet, pieces, joints, coffers, settings of a saw."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.layout.crossing_records import EndsAt
from lacunar.layout.records import Layout
from lacunar.measure.figure import NumberFigure, Operand
from lacunar.measure.length import ZERO
from lacunar.takeoff.estimate.estimate_records import LaborCount
from lacunar.takeoff.estimate.set_ups import set_ups
from lacunar.takeoff.estimate.words import LaborPer, Work
from lacunar.takeoff.material_records import MaterialList
from lacunar.takeoff.part_records import EndCut, Part, PartKind
from lacunar.takeoff.quantities.quantity_records import FOOT, QuantityUnit, Terms, in_metric
from lacunar.takeoff.taken_off import TakenOff

# At each corner two mitred ends meet; a coped end meets the face of the piece before.
_CORNERS: Mapping[Work, tuple[PartKind, EndCut, int]] = {
    Work.CROWN_MITER: (PartKind.CROWN, EndCut.MITRED, 2),
    Work.CROWN_COPE: (PartKind.CROWN, EndCut.COPED, 1),
    Work.FLAT_MITER: (PartKind.FLAT_MOULDING, EndCut.MITRED, 2),
}


def labor_counts(
    layouts: Sequence[Layout], taken: TakenOff, materials: MaterialList
) -> tuple[LaborCount, ...]:
    """Turn ceilings, their take-off and what is bought into all that labor can be counted by.

    Feet are net. Settings of a saw are counted once for all ceilings, as parts are made together.
    """
    return (
        *_parts(taken.parts),
        *_edges(taken.parts),
        *_crossings(layouts),
        *_splices(layouts),
        *_joined(materials),
        *_corners(taken.parts),
        *set_ups(taken.parts),
        _coffers(taken),
    )


def _parts(parts: Sequence[Part]) -> Iterator[LaborCount]:
    for kind in PartKind:
        group = [part for part in parts if part.kind is kind]
        if group:
            work, marks = Work(kind.value), _marks(group)
            yield from _both_ways(work, _feet(group), marks)
            yield LaborCount(LaborPer.PIECE, work, _pieces(group), marks)


def _edges(parts: Sequence[Part]) -> Iterator[LaborCount]:
    """Long edges that are mitred along their whole length."""
    group = [part for part in parts if part.mitred_edges]
    if group:
        rows: list[Mapping[str, Operand]] = [
            {"quantity": part.quantity, "edges": part.mitred_edges, "length": part.length.value}
            for part in group
        ]
        total = sum(
            (part.length.value * (part.quantity * part.mitred_edges) for part in group), ZERO
        )
        feet = Terms("quantity * edges * length", rows).figure(
            "feet of edges that are mitred: those of net lengths",
            " / foot",
            total / FOOT,
            approximate=any(part.length.approximate for part in group),
            foot=FOOT,
        )
        yield from _both_ways(Work.MITRED_EDGE, feet, _marks(group))


def _both_ways(work: Work, feet: NumberFigure, marks: tuple[str, ...]) -> Iterator[LaborCount]:
    """Feet, and the same in meters."""
    yield LaborCount(LaborPer.FOOT, work, feet, marks)
    meters = in_metric(QuantityUnit.FOOT, feet)
    if meters is not None:
        yield LaborCount(LaborPer.METER, work, meters, marks)


def _marks(parts: Sequence[Part]) -> tuple[str, ...]:
    return tuple(part.mark for part in parts)


def _feet(group: Sequence[Part]) -> NumberFigure:
    rows: list[Mapping[str, Operand]] = [
        {"quantity": part.quantity, "length": part.length.value} for part in group
    ]
    total = sum((part.length.value * part.quantity for part in group), ZERO)
    return Terms("quantity * length", rows).figure(
        "feet of parts: their net lengths",
        " / foot",
        total / FOOT,
        approximate=any(part.length.approximate for part in group),
        foot=FOOT,
    )


def _pieces(group: Sequence[Part]) -> NumberFigure:
    rows: list[Mapping[str, Operand]] = [{"quantity": part.quantity} for part in group]
    count = Fraction(sum(part.quantity for part in group))
    return Terms("quantity", rows).figure("pieces", "", count)


def _crossings(layouts: Sequence[Layout]) -> Iterator[LaborCount]:
    """Each place where beams meet or end, by what it looks like from below."""
    found: dict[Work, list[tuple[str, int]]] = {}
    for name, layout in zip(_numbers(layouts), layouts, strict=True):
        for crossing in layout.crossings:
            places = len(crossing.places)
            found.setdefault(Work(crossing.kind.value), []).append((name(crossing.id), places))
    for work, each in found.items():
        rows: list[Mapping[str, Operand]] = [{"places": places} for _, places in each]
        count = Fraction(sum(places for _, places in each))
        figure = Terms("places", rows).figure("joints of beams: places of each crossing", "", count)
        yield LaborCount(LaborPer.JOINT, work, figure, tuple(label for label, _ in each))


def _numbers(layouts: Sequence[Layout]) -> Iterator[Callable[[str], str]]:
    """For each ceiling, how its ids are told: with its number where there are several."""
    for number in range(1, len(layouts) + 1):
        before = f"{number}:" if len(layouts) > 1 else ""
        yield f"{before}{{}}".format


def _splices(layouts: Sequence[Layout]) -> Iterator[LaborCount]:
    """Joints within the length of boards; each has an end on either side."""
    rows: list[Mapping[str, Operand]] = []
    beams: dict[str, None] = {}
    for name, layout in zip(_numbers(layouts), layouts, strict=True):
        for cut in layout.pieces:
            ends = [cut.start.ends_at, cut.end.ends_at].count(EndsAt.SPLICE)
            if ends:
                rows.append({"pieces": cut.quantity, "ends": ends})
                beams.update(dict.fromkeys(name(place.beam) for place in cut.places))
    if rows:
        count = sum((_product(row) for row in rows), Fraction(0)) / 2
        figure = Terms("pieces * ends", rows).figure("splices: two ends at each", " / 2", count)
        yield LaborCount(LaborPer.JOINT, Work.SPLICE, figure, tuple(beams))


def _joined(materials: MaterialList) -> Iterator[LaborCount]:
    """Joints in parts that are longer than all stock: one less than pieces in each."""
    parts = [part for line in materials.lines for part in line.parts if part.pieces_each > 1]
    if parts:
        rows: list[Mapping[str, Operand]] = [
            {"quantity": part.quantity, "pieces": part.pieces_each} for part in parts
        ]
        count = Fraction(sum(part.quantity * (part.pieces_each - 1) for part in parts))
        figure = Terms("quantity * (pieces - 1)", rows).figure(
            "joints of parts longer than stock", "", count
        )
        marks = tuple(part.mark for part in parts)
        yield LaborCount(LaborPer.JOINT, Work.JOINED_PART, figure, marks)


def _product(row: Mapping[str, Operand]) -> Fraction:
    result = Fraction(1)
    for operand in row.values():
        assert isinstance(operand, int)
        result *= operand
    return result


def _corners(parts: Sequence[Part]) -> Iterator[LaborCount]:
    """Corners of mouldings in coffers, by how they are cut."""
    for work, (kind, cut, at_each) in _CORNERS.items():
        group = [part for part in parts if part.kind is kind and _ends(part, cut)]
        if group:
            rows: list[Mapping[str, Operand]] = [
                {"quantity": part.quantity, "ends": _ends(part, cut)} for part in group
            ]
            count = sum((_product(row) for row in rows), Fraction(0)) / at_each
            figure = Terms("quantity * ends", rows).figure(
                f"corners of mouldings: ends that are {cut}", f" / {at_each}", count
            )
            yield LaborCount(LaborPer.JOINT, work, figure, _marks(group))


def _ends(part: Part, cut: EndCut) -> int:
    return [part.left.cut, part.right.cut].count(cut)


def _coffers(taken: TakenOff) -> LaborCount:
    rows: list[Mapping[str, Operand]] = [{"coffers": each.coffers} for each in taken.ceilings]
    count = Fraction(sum(ceiling.coffers for ceiling in taken.ceilings))
    figure = Terms("coffers", rows).figure("coffers of all ceilings", "", count)
    numbers = tuple(str(ceiling.number) for ceiling in taken.ceilings)
    return LaborCount(LaborPer.COFFER, None, figure, numbers)
