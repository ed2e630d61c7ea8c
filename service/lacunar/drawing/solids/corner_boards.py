"""The boards of a corner's beams, their backing, and the panel, by the stage that puts them up."""

from collections.abc import Iterator

from lacunar.drawing.solids.corner import Corner, Extent
from lacunar.drawing.solids.space import Solid
from lacunar.layout.fitting_records import Stage
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import BeamProfile, ProfilePart
from lacunar.measure.length import Length
from lacunar.model.beams import BottomJoint, FamilyProfile
from lacunar.model.panel import PanelKind, Seat
from lacunar.model.room import RunName

Put = tuple[Stage, Solid]


def mm(length: Length) -> float:
    """A length as millimeters of the room."""
    return float(length.millimeters)


def part_of(profile: BeamProfile, name: str) -> ProfilePart | None:
    """A board of a profile by its name."""
    return next((part for part in profile.parts if part.name == name), None)


def side_heights(corner: Corner, profile: BeamProfile) -> Extent:
    """The lower and the upper edge of a beam's sides [mm]."""
    bottom = part_of(profile, "bottom")
    low = -mm(profile.drop.value)
    if profile.bottom_joint is BottomJoint.UNDER and bottom is not None:
        low += mm(bottom.thickness.value)
    return low, -mm(panel_stack(corner.layout.ceiling.panel).above_sides)


def beam_boards(corner: Corner, run: RunName) -> Iterator[Put]:
    """Backing, sides and bottom of the beam across a run, or the boards of a flat one."""
    profile = corner.profiles[run]
    if profile is None:
        return
    named = corner.ids[run]
    if profile.profile is FamilyProfile.FLAT:
        yield from _flat_boards(corner, run, profile)
        return
    yield from _backing(corner, run, profile)
    folded = profile.bottom_joint is BottomJoint.MITRED
    side = part_of(profile, "side")
    thick = mm(side.thickness.value) if side else 0.0
    width = corner.width(run)
    heights = side_heights(corner, profile)
    for across in ((0.0, thick), (width - thick, width))[: profile.sides] if side else ():
        stage = Stage.FOLDED_BEAMS if folded else Stage.SIDES
        yield stage, corner.box((named, "side"), run, across, heights)
    bottom = part_of(profile, "bottom")
    if bottom is not None:
        low = -mm(profile.drop.value)
        if profile.bottom_joint is BottomJoint.BETWEEN:
            low += mm(profile.reveal)
        near = thick
        if profile.bottom_joint is BottomJoint.UNDER:
            near = mm(profile.reveal - profile.overhang)
        far = width - near if profile.sides > 1 else width
        high = low + mm(bottom.thickness.value)
        stage = Stage.FOLDED_BEAMS if folded else Stage.BOTTOMS
        yield stage, corner.box((named, "bottom"), run, (near, far), (low, high))


def _backing(corner: Corner, run: RunName, profile: BeamProfile) -> Iterator[Put]:
    backing = part_of(profile, "backing")
    if backing is None:
        return
    width, wide = corner.width(run), mm(backing.width.value)
    near = (width - wide) / 2 if profile.sides > 1 else width - wide
    top = -mm(panel_stack(corner.layout.ceiling.panel).above_backing)
    heights = top - mm(backing.thickness.value), top
    named = corner.ids[run], "backing"
    yield Stage.BACKING, corner.box(named, run, (near, near + wide), heights)


def _flat_boards(corner: Corner, run: RunName, profile: BeamProfile) -> Iterator[Put]:
    """The upper board, if there is one, and the face board under it."""
    low = -mm(profile.drop.value)
    width = corner.width(run)
    for name in ("bottom", "upper_board"):
        part = part_of(profile, name)
        if part is not None:
            inset = (width - mm(part.width.value)) / profile.sides
            across = inset, (width - inset if profile.sides > 1 else width)
            high = low + mm(part.thickness.value)
            solid = corner.box((corner.ids[run], name), run, across, (low, high))
            yield Stage.BOTTOMS, solid
            low = high


def panel_bodies(corner: Corner) -> Iterator[Put]:
    """The sheet over the coffer, as far over the beams as its seat lets it; or its boards."""
    panel = corner.layout.ceiling.panel
    if panel.kind is PanelKind.EXISTING:
        return
    x, y = (_panel_end(corner, run) for run in RunName)
    heights = -mm(panel.thickness), 0.0
    start = -corner.reach
    boards = corner.layout.boards
    if boards is None:
        named = corner.coffer.id, "panel"
        yield Stage.PANELS, corner.block(named, RunName.LENGTH, ((start, x), (start, y), heights))
        return
    # Boards that lie along the length run stand side by side along the width run.
    run = boards.parallel_to.other
    end, along = (x, y) if run is RunName.LENGTH else (y, x)
    while end > start:
        near = max(start, end - mm(boards.cover))
        extents = (near, end), (start, along), heights
        yield Stage.BOARDS, corner.block((corner.coffer.id, "board"), run, extents)
        end = near


def _panel_end(corner: Corner, run: RunName) -> float:
    """Where the panel ends across a run [mm]: short of the beam's face, at its backing, or past."""
    panel, profile = corner.layout.ceiling.panel, corner.profiles[run]
    if profile is None or profile.inside_width is None or panel.seat is Seat.BETWEEN_SIDES:
        return -mm(panel.gap)
    width = corner.width(run)
    if panel.seat is Seat.ABOVE_BACKING:
        return width
    backing = part_of(profile, "backing")
    if backing is None:
        return (width - mm(profile.inside_width.value)) / profile.sides
    left = width - mm(backing.width.value)
    return (left / 2 if profile.sides > 1 else left) - mm(panel.gap)
