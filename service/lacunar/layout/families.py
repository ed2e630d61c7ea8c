"""How wide each family's beams come out, before anything is divided."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.layout.fault_gathering import refuse
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.model.beams import Beams, BottomJoint, Box
from lacunar.model.faults import Fault
from lacunar.model.room import RunName

FROM_BACKING = Rule(
    "beam width from its backing: the backing, its play and both sides",
    "backing + allowance + 2 * side",
)
FROM_BOTTOM_BETWEEN = Rule(
    "beam width from a bottom between the sides: the bottom and both sides", "bottom + 2 * side"
)
FROM_BOTTOM_UNDER = Rule(
    "beam width from a bottom under the sides: the bottom less its overhangs, plus its reveals",
    "bottom - 2 * overhang + 2 * reveal",
)
FROM_BOTTOM_MITRED = Rule("beam width from a mitred bottom: the bottom itself", "bottom")


@dataclass(frozen=True, slots=True)
class Family:
    """One family of beams: the run it divides, its place in the spec, its box and its width."""

    run: RunName
    pointer: str
    box: Box
    width: LengthFigure


def box_width(box: Box) -> LengthFigure:
    """Turn a box into its finished width between side faces [length].

    The width asked for; else from the backing, from the inside out; else as the bottom board gives.

    >>> from lacunar.measure.length import ZERO
    >>> from lacunar.model.stock import read_stock
    >>> box = Box(sides=read_stock("1x6"), bottom=read_stock("1x4"), backing=None,
    ...           bottom_joint=BottomJoint.BETWEEN, reveal=ZERO, overhang=ZERO, allowance=ZERO,
    ...           width=None, drop=None)
    >>> box_width(box).value
    Length(5 in)
    """
    side = box.sides.thickness
    if box.width is not None:
        return given(box.width)
    if box.backing is not None:
        backing, allowance = box.backing.width, box.allowance
        return FROM_BACKING.gives(
            backing + allowance + side * 2, backing=backing, allowance=allowance, side=side
        )
    bottom = box.bottom.width
    if box.bottom_joint is BottomJoint.BETWEEN:
        return FROM_BOTTOM_BETWEEN.gives(bottom + side * 2, bottom=bottom, side=side)
    if box.bottom_joint is BottomJoint.MITRED:
        return FROM_BOTTOM_MITRED.gives(bottom, bottom=bottom)
    return FROM_BOTTOM_UNDER.gives(
        bottom - box.overhang * 2 + box.reveal * 2,
        bottom=bottom,
        overhang=box.overhang,
        reveal=box.reveal,
    )


def beam_families(beams: Beams) -> Mapping[RunName, Family]:
    """Turn both boxes into families, by the run each of them divides.

    Raises SpecRefused where a box is too narrow to have an inside. Equal boxes have one place in
    the spec, the crosswise one.
    """
    same = beams.crosswise == beams.lengthwise
    families = {
        RunName.LENGTH: _family(RunName.LENGTH, "/beams/crosswise", beams.crosswise),
        RunName.WIDTH: _family(
            RunName.WIDTH, "/beams/crosswise" if same else "/beams/lengthwise", beams.lengthwise
        ),
    }
    judged = list(families.values())[: 1 if same else 2]
    refuse([fault for family in judged for fault in _too_narrow(family)])
    return families


def _family(run: RunName, pointer: str, box: Box) -> Family:
    return Family(run, pointer, box, box_width(box))


def _too_narrow(family: Family) -> Iterator[Fault]:
    box = family.box
    if family.width.value > box.sides.thickness * 2:
        return
    place = "width" if box.width is not None else "backing" if box.backing else "bottom"
    yield Fault(
        code="beam_too_narrow",
        pointer=f"{family.pointer}/{place}",
        message="The beam is no wider than its two sides together: it has no inside.",
        remedy="Make the beam wider, or take thinner sides.",
        figures={"beam_width": family.width.value, "more_than": box.sides.thickness * 2},
    )
