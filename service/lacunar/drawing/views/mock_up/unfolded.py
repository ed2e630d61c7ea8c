"""What is seen of a beam, laid flat: fields from edge to edge, and the lines it is folded by."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise
from typing import Literal

from lacunar.drawing.section.boards import panel_edges
from lacunar.drawing.section.records import Corner, Outline, SectionOf, SectionTrim
from lacunar.drawing.section.room_side import mirrored, room_side
from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import CrownSection
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatMoulding

LineKind = Literal["edge", "fold", "seat"]
TO_CEILING = "THIS EDGE TO CEILING"


@dataclass(frozen=True, slots=True)
class Field:
    """A stretch across a strip: what it shows, how wide, and the line that it ends with.

    Paper is folded at a `fold`; a `seat` is where the lower face of a panel lies.
    """

    words: str
    size: Length
    ends_with: LineKind


@dataclass(frozen=True, slots=True)
class PaperStrip:
    """A strip of paper: whose it is, its fields, and what its first and its last edge go to."""

    identity: str
    of: str
    name: str
    fields: tuple[Field, ...]
    first_edge: str
    last_edge: str
    remark: str = ""

    @property
    def places(self) -> tuple[Length, ...]:
        """Where its lines lie, from edge to edge."""
        return tuple(accumulate((field.size for field in self.fields), initial=ZERO))

    @property
    def kinds(self) -> tuple[LineKind, ...]:
        """What its lines are, from edge to edge."""
        return ("edge", *(field.ends_with for field in self.fields))

    @property
    def length(self) -> Length:
        """From edge to edge."""
        return self.places[-1]


def unfolded(of: SectionOf) -> PaperStrip:
    """The faces of a beam that are seen from the room without mouldings, from ceiling to ceiling.

    Where a panel hangs below the ceiling, the strip starts with what lies beside it.
    """
    right = room_side(replace(of, trim=SectionTrim()))
    fields = _fields((*right[:-1], *mirrored(of, right)[1:]), flat=of.part("side") is None)
    panel = panel_edges(of)[1]
    if panel:
        last = replace(fields[-1], ends_with="seat")
        beside = Field("PANEL", panel, "edge")
        fields = (replace(beside, ends_with="seat"), *fields[:-1], last, beside)
    profile = of.profile.id
    return PaperStrip(
        f"mock-up-{profile}-beam", "beam", f"BEAM {profile}", fields, TO_CEILING, TO_CEILING
    )


def _fields(line: Outline, *, flat: bool) -> tuple[Field, ...]:
    """The stretches of a line of upright and level parts: sides, returns, and the bottom amid."""
    parts = list(pairwise(line))
    names = ["RETURN"] * len(parts)
    names[0] = names[-1] = "EDGE" if flat else "SIDE"
    names[len(parts) // 2] = "FACE" if flat else "BOTTOM"
    fields = [Field(name, _length(part), "fold") for name, part in zip(names, parts, strict=True)]
    return (*fields[:-1], replace(fields[-1], ends_with="edge"))


def _length(part: tuple[Corner, Corner]) -> Length:
    (x1, y1), (x2, y2) = part
    return abs(x2 - x1) + abs(y2 - y1)


def moulding_strips(of: SectionOf, wording: SheetWording) -> Iterator[PaperStrip]:
    """The faces of crown and flat mouldings, the crown's with how far its edges stand off."""
    if of.trim.crown is not None:
        yield _crown(of.trim.crown, wording)
    for number, flat in enumerate(of.trim.flats, start=1):
        yield _flat(flat, number)


def _crown(crown: CrownSection, wording: SheetWording) -> PaperStrip:
    down, out = (wording.detail(each.value) for each in (crown.drop, crown.projection))
    return PaperStrip(
        "mock-up-crown",
        "crown",
        "CROWN",
        (Field("FACE", crown.face.value, "edge"),),
        f"{TO_CEILING}, {out} OUT",
        f"THIS EDGE ON THE SIDE, {down} DOWN",
        f"SPRING {crown.spring_from_wall.value.tenths} FROM THE WALL",
    )


def _flat(flat: FlatMoulding, number: int) -> PaperStrip:
    edge = Field("EDGE", flat.thickness, "fold")
    return PaperStrip(
        f"mock-up-flat-{number}",
        f"flat-{number}",
        flat.name.upper(),
        (edge, Field("FACE", flat.width, "fold"), replace(edge, ends_with="edge")),
        "UPPER EDGE",
        "LOWER EDGE",
    )
