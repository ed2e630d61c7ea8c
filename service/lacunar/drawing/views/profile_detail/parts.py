"""What a beam is made of and what meets it: each part once, with its size and what it is of."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lacunar.drawing.elements import Pt
from lacunar.drawing.section.boards import backing_outline, board_outlines
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.hatches import Hatch, Substance, Way
from lacunar.drawing.section.records import SectionOf
from lacunar.layout.records import Beam, CasedMember, Layout, ProfilePart, WallBeam
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint, Box, FamilyProfile
from lacunar.model.room import RunName
from lacunar.model.stock import StockKind

Corners = tuple[Pt, ...]

SIDE_GRAIN = Hatch(Substance.FINISH_WOOD, Way.RISING)
BOTTOM_GRAIN = Hatch(Substance.FINISH_WOOD, Way.FALLING)
FRAMING = Hatch(Substance.FRAMING)
BOARD_WORDS = {
    "side": "SIDE",
    "bottom": "BOTTOM",
    "upper_board": "UPPER BOARD",
}


@dataclass(frozen=True, slots=True)
class DetailOf:
    """What a profile's own view is of: the section, the beam it is cut at, the whole ceiling."""

    of: SectionOf
    at: Beam | WallBeam
    layout: Layout

    @property
    def member(self) -> CasedMember | None:
        """The structural member that is cut through, where there is one."""
        return next((beam.member for beam in self.of.beams if beam.member), None)

    @property
    def box(self) -> Box | None:
        """The box that its family is built as; None of flat beams and soffits."""
        beams = self.layout.ceiling.beams
        family = beams.crosswise if self.at.on is RunName.LENGTH else beams.lengthwise
        return family if isinstance(family, Box) and self.of.profile.parts else None


@dataclass(frozen=True, slots=True)
class NamedPart:
    """A part as it is listed: what is equal here has one number.

    `width` is across the part, None where only a thickness is known, or where it is a gap.
    """

    name: str
    words: str
    thickness: Length | None
    width: Length | None
    substance: str = ""
    remark: str = ""


@dataclass(frozen=True, slots=True)
class ShownPart:
    """A part where it is cut: its outlines on paper, and the place that its leader points at.

    A gap has no outline; `ghosts` are outlines that lie elsewhere along the beam.
    """

    part: NamedPart
    target: Pt
    outlines: tuple[Corners, ...] = ()
    hatch: Hatch | None = None
    ghosts: tuple[Corners, ...] = ()


def within(corners: Corners, across: float, down: float) -> Pt:
    """A place in the box about an outline, by shares of its width and height."""
    xs, ys = [at.x for at in corners], [at.y for at in corners]
    left, top = min(xs), min(ys)
    return Pt(left + (max(xs) - left) * across, top + (max(ys) - top) * down)


def board_parts(detail: DetailOf, cut: Cut) -> Iterator[ShownPart]:
    """Sides, bottom, upper board and backing."""
    for name, outlines in board_outlines(detail.of).items():
        board = detail.of.part(name)
        assert board is not None
        placed = tuple(cut.placed(outline) for outline in outlines)
        hatch = _hatch(board)
        target = within(placed[-1], *((0.5, 0.62) if name == "side" else (0.72, 0.5)))
        yield ShownPart(_board(detail, board), target, placed, hatch)
    backing, outline = detail.of.part("backing"), backing_outline(detail.of)
    if backing is not None and outline is not None and detail.member is None:
        placed_backing = cut.placed(outline)
        words = "BACKING" if backing.stock else "BACKING BLOCK"
        stock = f"from {backing.stock.name}" if backing.stock else "of what is at hand"
        size = backing.thickness.value, backing.width.value
        part = NamedPart("backing", words, *size, Substance.FRAMING.value, stock)
        yield ShownPart(part, within(placed_backing, 0.78, 0.36), (placed_backing,), FRAMING)
    yield from _gaps(detail, cut)


def _board(detail: DetailOf, board: ProfilePart) -> NamedPart:
    words = BOARD_WORDS[board.name]
    if detail.of.profile.profile is FamilyProfile.FLAT and board.name == "bottom":
        words = "FACE BOARD"
    remark = f"from {board.stock.name}" if board.stock else ""
    size = board.thickness.value, board.width.value
    return NamedPart(board.name, words, *size, _substance(board).value, remark)


def _hatch(board: ProfilePart) -> Hatch:
    """Sides one way, the bottom the other."""
    plain = BOTTOM_GRAIN if board.name == "bottom" else SIDE_GRAIN
    return replace(plain, substance=_substance(board))


def _substance(board: ProfilePart) -> Substance:
    sheet = board.stock is not None and board.stock.kind is StockKind.SHEET
    return Substance.SHEET if sheet else Substance.FINISH_WOOD


def _gaps(detail: DetailOf, cut: Cut) -> Iterator[ShownPart]:
    """What is left open: reveal or overhang of the bottom, and play beside the backing."""
    of, profile = detail.of, detail.of.profile
    side, bottom = of.part("side"), of.part("bottom")
    if bottom is None:
        return
    width, drop, sole = profile.finished_width.value, profile.drop.value, bottom.thickness.value
    if profile.bottom_joint is BottomJoint.BETWEEN and side is not None and profile.reveal:
        at = cut.spot(width - side.thickness.value * 3 / 2, drop - profile.reveal / 2)
        yield ShownPart(NamedPart("reveal", "REVEAL", profile.reveal, None), at)
    out = set_out(of)
    if out:
        name = "overhang" if out > ZERO else "reveal"
        at = cut.spot(width + out / 2, drop - sole / 2)
        if profile.profile is FamilyProfile.FLAT and out > ZERO:
            at = cut.spot(width - out / 2, drop - sole - (drop - sole) / 4)
        yield ShownPart(NamedPart(name, name.upper(), abs(out), None), at)
    backing = of.part("backing")
    if detail.box is not None and detail.box.allowance and backing and detail.member is None:
        inner = width - profile_side(of) - detail.box.allowance / (2 * profile.sides)
        at = cut.spot(inner, cut_depth(of, backing) * 3 / 4)
        remark = "both sides together" if profile.sides > 1 else ""
        words = "PLAY BESIDE THE BACKING"
        yield ShownPart(NamedPart("play", words, detail.box.allowance, None, "", remark), at)


def profile_side(of: SectionOf) -> Length:
    """How thick a side is; nothing where there is none."""
    side = of.part("side")
    return ZERO if side is None else side.thickness.value


def cut_depth(of: SectionOf, backing: ProfilePart) -> Length:
    """How far down a backing reaches."""
    outline = backing_outline(of)
    assert outline is not None
    return outline[0][1] + backing.thickness.value


def set_out(of: SectionOf) -> Length:
    """How far a bottom under the sides, or a face board, stands out at each edge; below 0, in."""
    profile, bottom, upper = of.profile, of.part("bottom"), of.part("upper_board")
    if bottom is None:
        return ZERO
    if profile.profile is FamilyProfile.FLAT:
        other = upper.width.value if upper is not None else bottom.width.value
    elif profile.bottom_joint is BottomJoint.UNDER:
        other = profile.finished_width.value
    else:
        return ZERO
    return (bottom.width.value - other) / profile.sides
