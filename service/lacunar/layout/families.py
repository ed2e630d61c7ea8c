"""How wide each family's beams come out, before anything is divided."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.layout.fault_gathering import refuse
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.model.beams import Beams, BottomJoint, Box, FamilyBeam, Flat
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
FROM_FACE_BOARD = Rule("flat beam width from its one board", "bottom")
FROM_REVEAL = Rule(
    "flat beam width from its upper board: its own, or what the face board leaves of its reveals",
    "min(upper_board, bottom + 2 * reveal)",
)
FROM_OVERHANG = Rule(
    "flat beam width from its face board: its own, or what the upper board carries of overhangs",
    "min(bottom, upper_board + 2 * overhang)",
)
FROM_BOTTOM_MITRED = Rule("beam width from a mitred bottom: the bottom itself", "bottom")


@dataclass(frozen=True, slots=True)
class Family:
    """One family of beams: the run it divides, its place in the spec, how it is built, its width.

    `box` is for what only boxes have; a flat family has none.
    """

    run: RunName
    pointer: str
    built: FamilyBeam
    width: LengthFigure

    @property
    def flat(self) -> Flat | None:
        """The flat beam it is built as; None for boxes."""
        return self.built if isinstance(self.built, Flat) else None

    @property
    def box(self) -> Box:
        """The box it is built as."""
        if isinstance(self.built, Flat):
            raise TypeError("a flat family has no box")
        return self.built


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


def flat_width(flat: Flat) -> LengthFigure:
    """Turn a flat beam into its finished width, that of its wider board [length].

    The width asked for; else the widest that both boards make with the edges they are to have.

    >>> from lacunar.measure.length import ZERO, Length
    >>> from lacunar.model.stock import read_stock
    >>> flat = Flat(read_stock("1x6"), read_stock("1x8"), Length.of_inches(1), ZERO, None)
    >>> flat_width(flat).value  # 5 1/2 + 2 x 1 is more than the 7 1/4 there is
    Length(29/4 in)
    """
    bottom, upper = flat.bottom.width, flat.upper_board
    if flat.width is not None:
        return given(flat.width)
    if upper is None:
        return FROM_FACE_BOARD.gives(bottom, bottom=bottom)
    if flat.overhang:
        return FROM_OVERHANG.gives(
            min(bottom, upper.width + flat.overhang * 2),
            bottom=bottom,
            upper_board=upper.width,
            overhang=flat.overhang,
        )
    return FROM_REVEAL.gives(
        min(upper.width, bottom + flat.reveal * 2),
        upper_board=upper.width,
        bottom=bottom,
        reveal=flat.reveal,
    )


def beam_families(beams: Beams) -> Mapping[RunName, Family]:
    """Turn what both are built as into families, by the run each of them divides.

    Raises SpecRefused where a box is too narrow to have an inside. Equal families have one place in
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


def _family(run: RunName, pointer: str, built: FamilyBeam) -> Family:
    width = flat_width(built) if isinstance(built, Flat) else box_width(built)
    return Family(run, pointer, built, width)


def _too_narrow(family: Family) -> Iterator[Fault]:
    if family.flat is not None:
        return
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
