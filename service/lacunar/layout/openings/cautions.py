"""Cautions about measured openings: what differs, what is out of square, what was not measured."""

from collections.abc import Iterator

from lacunar.layout.names import first_few
from lacunar.layout.opening_records import MeasuredOpening, MeasuredOpenings, Squareness
from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import CrownMethod
from lacunar.model.openings import Openings, OutOfSquare
from lacunar.model.panel import PanelKind, Seat

_PLACE = "/measured_openings"


def opening_cautions(layout: Layout) -> Iterator[Caution]:
    """Everything a careful hand would say about openings as they were measured."""
    found, asked = layout.measured_openings, layout.ceiling.measured_openings
    if found is None or asked is None:
        return
    yield from _far_from_plan(found, asked)
    yield from _out_of_square(layout, found)
    yield from _unknown(found)
    yield from _missing(found)
    yield from _already_up(layout)
    yield from _run_out(found)


def _far_from_plan(found: MeasuredOpenings, asked: Openings) -> Iterator[Caution]:
    """The worst difference of any side, if it is past the limit."""
    worst = max(
        (
            (abs(side.difference.value), opening.coffer, side.toward)
            for opening in found.openings
            for side in opening.sides
            if side.difference is not None
        ),
        default=(ZERO, "", ""),
    )
    difference, coffer, toward = worst
    if difference > asked.difference_limit:
        yield Caution(
            code="opening_far_from_plan",
            text="Openings were measured further from the plan than beams are usually set. Measure"
            f" {coffer} toward {toward} again before anything is cut by it.",
            figures={
                "coffer": coffer,
                "toward": toward,
                "difference": difference,
                "limit": asked.difference_limit,
            },
            pointer=f"{_PLACE}/coffers",
        )


def _out_of_square(layout: Layout, found: MeasuredOpenings) -> Iterator[Caution]:
    crooked = [each for each in found.openings if each.squareness is Squareness.OUT_OF_SQUARE]
    if not crooked:
        return
    worst = max(crooked, key=_off)
    text = f"Out of square by more than a square frame hides: {_listed(crooked)}."
    ways = {each.coffer: each.chosen for each in found.crown}
    crown = layout.ceiling.crown
    if crown is not None and crown.method is CrownMethod.BENCH_FRAME:
        mitred = [each for each in crooked if ways[each.coffer] is OutOfSquare.MITRED_TO_CORNERS]
        coped = [each for each in crooked if each not in mitred]
        if coped:
            text += f" Cope the crown in place: {_listed(coped)}."
        if mitred:
            text += f" Miter each corner at its own setting, and mark the frame: {_listed(mitred)}."
    yield Caution(
        code="openings_out_of_square",
        text=text,
        figures={"coffer": worst.coffer, "out_of_square": _off(worst)},
        pointer=f"{_PLACE}/out_of_square_limit",
    )


def _off(opening: MeasuredOpening) -> Length:
    return ZERO if opening.out_of_square is None else opening.out_of_square.value


def _unknown(found: MeasuredOpenings) -> Iterator[Caution]:
    unknown = [each for each in found.openings if not each.corners]
    if unknown:
        yield Caution(
            code="corners_not_measured",
            text="Without all four sides and a diagonal nobody can tell whether these are square:"
            f" {_listed(unknown)}. Measure one before cutting frames for them.",
            figures={"coffers": len(unknown)},
            pointer=f"{_PLACE}/coffers",
        )


def _missing(found: MeasuredOpenings) -> Iterator[Caution]:
    partly = [each for each in found.openings if any("side" in what for what in each.missing)]
    if found.not_measured or partly:
        yield Caution(
            code="openings_not_measured",
            text="Some sides or coffers were not measured. What goes there is sized by the plan:"
            " measure before cutting it.",
            figures={"coffers": len(found.not_measured), "partly": len(partly)},
            pointer=f"{_PLACE}/coffers",
        )


def _already_up(layout: Layout) -> Iterator[Caution]:
    panel = layout.ceiling.panel
    if panel.kind is not PanelKind.EXISTING and panel.seat is not Seat.BETWEEN_SIDES:
        yield Caution(
            code="panels_before_measuring",
            text="Panels or boards go up before the beams' sides here, so they are sized by the"
            " plan and not by what was measured between the sides.",
            figures={"seat": str(panel.seat)},
            pointer="/panel/seat",
        )


def _run_out(found: MeasuredOpenings) -> Iterator[Caution]:
    for field in found.boards:
        least = min(min(rip.start.value, rip.end.value) for rip in field.edges)
        if least <= ZERO:
            yield Caution(
                code="edge_board_runs_out",
                text=f"An edge board of {field.coffer} tapers to a point before its end. Center on"
                " the other of joint and board, or take another cover.",
                figures={"coffer": field.coffer, "face": least},
                pointer="/panel/centered_on",
            )


def _listed(openings: list[MeasuredOpening]) -> str:
    return first_few([opening.coffer for opening in openings])
