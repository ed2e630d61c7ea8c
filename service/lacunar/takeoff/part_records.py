"""Parts as they lie on the bench: what each is cut from, how large it is, and where each goes.

`left` and `right` are seen on the face that shows, with the lower edge towards whoever looks; of
the bottom of a wall beam, with the edge at the wall away. `length` is between the long points of
the ends, `short_length` between the short ones.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot


class PartKind(StrEnum):
    """What a part is in the ceiling."""

    SIDE = "side"
    BOTTOM = "bottom"
    UPPER_BOARD = "upper_board"
    BACKING = "backing"
    CLEAT = "cleat"
    BLOCKING = "blocking"
    SEAM_STRIP = "seam_strip"
    CROWN = "crown"
    FLAT_MOULDING = "flat_moulding"
    NAILER = "nailer"
    PANEL = "panel"
    BOARD = "board"


class MaterialKind(StrEnum):
    """What a part is cut from: sold by the length, or as sheets.

    `section` is framing of which the spec tells the size and not the stock.
    """

    LUMBER = "lumber"
    SHEET = "sheet"
    SECTION = "section"
    CROWN = "crown"
    FLAT_MOULDING = "flat_moulding"
    NAILER = "nailer"
    BOARDS = "boards"


@dataclass(frozen=True, slots=True)
class Material:
    """What parts are ripped or cut from.

    `width` is that of the stock: of crown its face, of boards cover and tongue, of a sheet its
    short edge; `length` is a sheet's long edge, None where material is sold by the length.
    `nominal_thickness` and `nominal_width` are what its trade name says, None where it has none;
    `drop` and `projection` are those of crown, or of the triangle of a nailer.
    """

    kind: MaterialKind
    name: str
    thickness: Length | None
    width: Length | None
    length: Length | None = None
    nominal_thickness: Length | None = None
    nominal_width: Length | None = None
    drop: Length | None = None
    projection: Length | None = None

    @property
    def key(self) -> tuple[object, ...]:
        """Equal for equal material, in whatever units its size is a name."""
        by_name = self.nominal_thickness is not None or self.kind is MaterialKind.FLAT_MOULDING
        name = self.name if by_name else ""
        sizes = (self.thickness, self.width, self.length, self.drop, self.projection)
        return self.kind, name, *sizes


class EndCut(StrEnum):
    """How an end of a part is cut.

    As boards and mouldings of the layout: `mitred`, `coped`, `pointed`, `notched`, `scarfed`;
    `angled` is square through the thickness and off square across the face.
    """

    SQUARE = "square"
    MITRED = "mitred"
    COPED = "coped"
    POINTED = "pointed"
    NOTCHED = "notched"
    SCARFED = "scarfed"
    ANGLED = "angled"


@dataclass(frozen=True, slots=True)
class PartEnd:
    """One end: its cut, its angle from a square cut, the corner of a moulding, a notch's size.

    `width` is that of a board that tapers from end to end, at this end.
    """

    cut: EndCut
    angle: Angle | None = None
    corner: Angle | None = None
    notch_along: Length | None = None
    notch_up: Length | None = None
    width: Length | None = None

    @property
    def key(self) -> tuple[object, ...]:
        """What tells two ends apart, in an order in which they can be sorted."""
        told = (self.angle, self.corner, self.notch_along, self.notch_up, self.width)
        return self.cut.value, *((each is not None, 0 if each is None else each) for each in told)


SQUARE_END = PartEnd(EndCut.SQUARE)


class Face(StrEnum):
    """Which way the face of a part looks that shows: down, or out from the beam."""

    DOWN = "down"
    OUT = "out"


class Grain(StrEnum):
    """How the grain lies in a part; where it does not matter, the part may be turned."""

    LENGTHWISE = "lengthwise"
    EITHER = "either"


@dataclass(frozen=True, slots=True)
class PartPlace:
    """Where so many of a part go.

    `ceiling` is its number in the take-off; `of` the ids of the beam, wall beam or coffer, or of
    all coffers that a field of boards runs over; `at` which side, wall or course it is, empty where
    there is but one; `start` and `end` its long points along the run, where it lies on a beam.
    """

    ceiling: int
    of: tuple[str, ...]
    at: str
    start: Length | None
    end: Length | None
    quantity: int


@dataclass(frozen=True, slots=True)
class Shape:
    """All that makes two parts the same.

    `mitred_edges` is how many long edges are mitred along their whole length; `tapered` says that
    the part is no rectangle: it is cut from one of this size to what was measured where it goes, to
    the widths at its ends, its straight edge kept, or to `corners`, from the lower left one of the
    rectangle, as it lies on the plan. The allowances
    are what it is cut longer, and ripped wider, than its net size.
    """

    kind: PartKind
    name: str
    material: Material
    thickness: LengthFigure | None
    width: LengthFigure | None
    length: LengthFigure
    short_length: LengthFigure
    left: PartEnd = SQUARE_END
    right: PartEnd = SQUARE_END
    mitred_edges: int = 0
    face: Face | None = None
    grain: Grain = Grain.LENGTHWISE
    tapered: bool = False
    length_allowance: Length = ZERO
    width_allowance: Length = ZERO
    corners: tuple[Spot, ...] = ()

    @property
    def key(self) -> tuple[object, ...]:
        """Equal for parts that are the same on the bench."""
        sizes = (self.thickness, self.width, self.length, self.short_length)
        return (
            self.kind,
            self.name,
            self.material.key,
            *(None if size is None else size.value for size in sizes),
            self.left.key,
            self.right.key,
            self.mitred_edges,
            self.face,
            self.grain,
            self.tapered,
            self.length_allowance,
            self.width_allowance,
            tuple((spot.x, spot.y) for spot in self.corners),
        )


@dataclass(frozen=True, slots=True)
class Pieces:
    """Pieces of one shape, as a layout tells them: with where they go and without a mark yet."""

    shape: Shape
    places: tuple[PartPlace, ...]


@dataclass(frozen=True, slots=True)
class Part:
    """Parts that are the same on the bench, under one mark.

    Sizes are net. `cut_length` and `cut_width` have the allowances in them that the spec states.
    `corners` are of a part that is no rectangle, as far as these are known.
    """

    mark: str
    kind: PartKind
    name: str
    material: Material
    quantity: int
    thickness: LengthFigure | None
    width: LengthFigure | None
    length: LengthFigure
    short_length: LengthFigure
    cut_length: LengthFigure
    cut_width: LengthFigure | None
    left: PartEnd
    right: PartEnd
    mitred_edges: int
    face: Face | None
    grain: Grain
    tapered: bool
    places: tuple[PartPlace, ...]
    corners: tuple[Spot, ...] = ()
