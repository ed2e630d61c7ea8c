"""Every length a spec can hold, with its JSON pointer and the bounds it must lie in."""

from collections.abc import Iterator
from dataclasses import dataclass, fields

from lacunar.measure.length import Length
from lacunar.model import limits
from lacunar.model.ceiling_items import ItemSpec, WallFeatureSpec
from lacunar.model.columns import ColumnSpec
from lacunar.model.grid import WallCondition
from lacunar.model.limits import Bounds
from lacunar.model.moulding import CrownSpec, FlatMouldingSpec
from lacunar.model.openings import OpeningsSpec
from lacunar.model.outline import OutlineSpec
from lacunar.model.panel import PanelKind
from lacunar.model.room import WALLS, RunName
from lacunar.model.spec import (
    BoxSpec,
    CeilingSpec,
    FixingSpec,
    JoistsSpec,
    MemberSpec,
    PanelSpec,
    RoomSpec,
    RunSpec,
)
from lacunar.model.stations import LevelingSpec, StationSpec
from lacunar.model.stock import Stock
from lacunar.model.survey import CORNERS, CrookedSpec, DiagonalsSpec, SurveySpec
from lacunar.model.take_off import NailSpacingSpec, TakeOffSpec


@dataclass(frozen=True, slots=True)
class BoundLength:
    """A length at its place in the spec; None where it was not said."""

    pointer: str
    length: Length | None
    bounds: Bounds


def lengths_in(spec: CeilingSpec) -> Iterator[BoundLength]:
    """Every length of a spec, said or not, in the order of the outline."""
    yield from _in_room(spec.room)
    for position, member in enumerate(spec.room.members):
        yield from _in_member(f"/room/members/{position}", member)
    yield from _in_joists(spec.room.joists or JoistsSpec())
    for position, item in enumerate(spec.room.ceiling_items):
        yield from _in_item(f"/room/ceiling_items/{position}", item)
    for position, feature in enumerate(spec.room.wall_features):
        yield from _in_feature(f"/room/wall_features/{position}", feature)
    for position, station in enumerate(spec.room.stations):
        yield from _in_station(f"/room/stations/{position}", station)
    yield from _in_leveling(spec.room.leveling or LevelingSpec())
    yield from _in_box("/beams/crosswise", spec.beams.crosswise or BoxSpec())
    yield from _in_box("/beams/lengthwise", spec.beams.lengthwise or BoxSpec())
    for name in RunName:
        yield from _in_run(f"/grid/{name}", spec.grid.run(name))
    yield from _in_panel(spec.panel or PanelSpec())
    yield from _in_fixing(spec.fixing or FixingSpec())
    yield BoundLength("/stock/kerf", spec.stock.kerf, limits.KERF)
    yield BoundLength("/stock/longest_board", spec.stock.longest_board, limits.STOCK_LENGTH)
    yield BoundLength("/stock/longest_sheet", spec.stock.longest_sheet, limits.STOCK_LENGTH)
    yield from _in_crown(spec.crown or CrownSpec())
    for position, moulding in enumerate(spec.flat_mouldings):
        yield from _in_flat_moulding(f"/flat_mouldings/{position}", moulding)
    yield from _in_openings(spec.measured_openings or OpeningsSpec())
    yield from _in_take_off(spec.take_off or TakeOffSpec())


def _in_room(room: RoomSpec) -> Iterator[BoundLength]:
    yield BoundLength("/room/length", room.length, limits.ROOM_SIDE)
    yield BoundLength("/room/width", room.width, limits.ROOM_SIDE)
    yield BoundLength("/room/height", room.height, limits.ROOM_HEIGHT)
    yield BoundLength("/room/headroom", room.headroom, limits.HEADROOM)
    yield from _in_survey(room.survey or SurveySpec())
    yield from _in_outline(room.outline or OutlineSpec())
    for number, column in enumerate(room.columns):
        yield from _in_column(f"/room/columns/{number}", column)
    crooked = room.crooked or CrookedSpec()
    yield BoundLength("/room/crooked/visible_taper", crooked.visible_taper, limits.TAPER)
    limit = crooked.out_of_square_limit
    yield BoundLength("/room/crooked/out_of_square_limit", limit, limits.OUT_OF_SQUARE)
    if room.wall_finish is None:
        return
    if len(set(room.wall_finish)) == 1:
        yield BoundLength("/room/wall_finish", room.wall_finish[0], limits.WALL_FINISH)
        return
    for wall, finish in zip(WALLS, room.wall_finish, strict=True):
        yield BoundLength(f"/room/wall_finish/{wall}", finish, limits.WALL_FINISH)


def _in_survey(survey: SurveySpec) -> Iterator[BoundLength]:
    place = "/room/survey"
    for wall, side in zip(WALLS, survey.sides or (), strict=False):
        yield BoundLength(f"{place}/sides/{wall}", side, limits.ROOM_SIDE)
    for wall, bow in zip(WALLS, survey.bows or (), strict=False):
        yield BoundLength(f"{place}/bows/{wall}", abs(bow), limits.BOW)
    diagonals = survey.diagonals or DiagonalsSpec()
    yield BoundLength(f"{place}/diagonals/rising", diagonals.rising, limits.ROOM_DIAGONAL)
    yield BoundLength(f"{place}/diagonals/falling", diagonals.falling, limits.ROOM_DIAGONAL)
    for corner, spot in zip(CORNERS, survey.points or (), strict=False):
        yield BoundLength(f"{place}/points/{corner}/x", spot.x, limits.SURVEY_POINT)
        yield BoundLength(f"{place}/points/{corner}/y", spot.y, limits.SURVEY_POINT)
    yield BoundLength(f"{place}/tolerance", survey.tolerance, limits.CLOSING)


def _in_outline(outline: OutlineSpec) -> Iterator[BoundLength]:
    place = "/room/outline"
    for number, side in enumerate(outline.sides or ()):
        yield BoundLength(f"{place}/sides/{number}/length", side.length, limits.OUTLINE_SIDE)
    for number, spot in enumerate(outline.points or ()):
        yield BoundLength(f"{place}/points/{number}/x", spot.x, limits.SURVEY_POINT)
        yield BoundLength(f"{place}/points/{number}/y", spot.y, limits.SURVEY_POINT)
    for number, diagonal in enumerate(outline.diagonals):
        at = f"{place}/diagonals/{number}/length"
        yield BoundLength(at, diagonal.length, limits.ROOM_DIAGONAL)
    yield BoundLength(f"{place}/tolerance", outline.tolerance, limits.CLOSING)
    for number, surface in enumerate(outline.surfaces):
        at = f"{place}/surfaces/{number}"
        yield BoundLength(f"{at}/finish", surface.finish, limits.WALL_FINISH)
        yield BoundLength(f"{at}/bow", abs(surface.bow) if surface.bow else None, limits.BOW)


def _in_column(place: str, column: ColumnSpec) -> Iterator[BoundLength]:
    for name in ("x", "y"):
        yield BoundLength(f"{place}/{name}", getattr(column, name), limits.POSITION)
    for name in ("length", "width"):
        yield BoundLength(f"{place}/{name}", getattr(column, name), limits.COLUMN_SIZE)
    for number, spot in enumerate(column.points or ()):
        yield BoundLength(f"{place}/points/{number}/x", spot.x, limits.POSITION)
        yield BoundLength(f"{place}/points/{number}/y", spot.y, limits.POSITION)


def _in_member(place: str, member: MemberSpec) -> Iterator[BoundLength]:
    yield BoundLength(f"{place}/center", member.center, limits.POSITION)
    yield BoundLength(f"{place}/width", member.width, limits.MEMBER_WIDTH)
    yield BoundLength(f"{place}/drop", member.drop, limits.MEMBER_DROP)
    yield BoundLength(f"{place}/clearance", member.clearance, limits.CLEARANCE)
    yield BoundLength(f"{place}/cased_width", member.cased_width, limits.BEAM_WIDTH)
    yield BoundLength(f"{place}/center_at_end", member.center_at_end, limits.POSITION)
    yield BoundLength(f"{place}/drop_at_end", member.drop_at_end, limits.MEMBER_DROP)
    yield BoundLength(f"{place}/starts_at", member.starts_at, limits.POSITION)
    yield BoundLength(f"{place}/ends_at", member.ends_at, limits.POSITION)
    yield BoundLength(f"{place}/cladding", member.cladding, limits.CLADDING)
    yield BoundLength(f"{place}/cleat", member.cleat, limits.CLEAT)


def _in_station(place: str, station: StationSpec) -> Iterator[BoundLength]:
    yield BoundLength(f"{place}/length", station.length, limits.POSITION)
    yield BoundLength(f"{place}/width", station.width, limits.POSITION)
    yield BoundLength(f"{place}/height", station.height, limits.ROOM_HEIGHT)
    yield BoundLength(f"{place}/above_line", station.above_line, limits.STATION_LINE)


def _in_leveling(leveling: LevelingSpec) -> Iterator[BoundLength]:
    yield BoundLength("/room/leveling/reach", leveling.reach, limits.LEVEL_REACH)
    yield BoundLength("/room/leveling/uneven", leveling.uneven, limits.UNEVEN)


def _in_joists(joists: JoistsSpec) -> Iterator[BoundLength]:
    place = "/room/joists"
    yield BoundLength(f"{place}/spacing", joists.spacing, limits.JOIST_SPACING)
    yield BoundLength(f"{place}/first", joists.first, limits.POSITION)
    yield BoundLength(f"{place}/width", joists.width, limits.JOIST_WIDTH)
    yield BoundLength(f"{place}/existing_finish", joists.existing_finish, limits.EXISTING_FINISH)


_ITEM_BOUNDS = {
    **dict.fromkeys(("x", "y"), limits.POSITION),
    **dict.fromkeys(("diameter", "length", "width"), limits.ITEM_SIZE),
    "clearance": limits.ITEM_CLEARANCE,
    "drop": limits.ITEM_DROP,
    **dict.fromkeys(("length_pitch", "width_pitch"), limits.ITEM_PITCH),
}
_FEATURE_BOUNDS = {
    "center": limits.POSITION,
    "width": limits.FEATURE_WIDTH,
    "head": limits.FEATURE_HEAD,
}


def _in_item(place: str, item: ItemSpec) -> Iterator[BoundLength]:
    for name, bounds in _ITEM_BOUNDS.items():
        yield BoundLength(f"{place}/{name}", getattr(item, name), bounds)


def _in_feature(place: str, feature: WallFeatureSpec) -> Iterator[BoundLength]:
    for name, bounds in _FEATURE_BOUNDS.items():
        yield BoundLength(f"{place}/{name}", getattr(feature, name), bounds)


def _in_fixing(fixing: FixingSpec) -> Iterator[BoundLength]:
    yield BoundLength("/fixing/length", fixing.length, limits.FASTENER_LENGTH)
    yield BoundLength("/fixing/least_penetration", fixing.least_penetration, limits.PENETRATION)
    yield BoundLength("/fixing/shim", fixing.shim, limits.SHIM)
    yield BoundLength("/fixing/block_through", fixing.block_through, limits.BLOCK_THROUGH)
    yield BoundLength("/fixing/block_spacing", fixing.block_spacing, limits.BLOCK_SPACING)
    yield BoundLength("/fixing/end_distance", fixing.end_distance, limits.END_DISTANCE)


def _in_box(place: str, box: BoxSpec) -> Iterator[BoundLength]:
    yield from _in_stock(f"{place}/sides", box.sides)
    yield from _in_stock(f"{place}/bottom", box.bottom)
    yield from _in_stock(f"{place}/backing", box.backing)
    yield from _in_stock(f"{place}/upper_board", box.upper_board)
    yield BoundLength(f"{place}/reveal", box.reveal, limits.SMALL_OFFSET)
    yield BoundLength(f"{place}/overhang", box.overhang, limits.SMALL_OFFSET)
    yield BoundLength(f"{place}/allowance", box.allowance, limits.ALLOWANCE)
    yield BoundLength(f"{place}/width", box.width, limits.BEAM_WIDTH)
    yield BoundLength(f"{place}/drop", box.drop, limits.BEAM_DROP)


def _in_stock(place: str, stock: Stock | None) -> Iterator[BoundLength]:
    if stock is not None:
        yield BoundLength(f"{place}/thickness", stock.thickness, limits.STOCK_THICKNESS)
        yield BoundLength(f"{place}/width", stock.width, limits.STOCK_WIDTH)


def _in_run(place: str, run: RunSpec) -> Iterator[BoundLength]:
    yield BoundLength(f"{place}/largest_opening", run.largest_opening, limits.OPENING)
    yield BoundLength(f"{place}/wished_opening", run.wished_opening, limits.OPENING)
    yield BoundLength(f"{place}/held", run.held, limits.OPENING)
    yield from _at_wall(f"{place}/start", run.start)
    yield from _at_wall(f"{place}/end", run.end)
    for position, beam in enumerate(run.fixed_beams):
        beam_place = f"{place}/fixed_beams/{position}"
        yield BoundLength(f"{beam_place}/center", beam.center, limits.POSITION)
        yield BoundLength(f"{beam_place}/width", beam.width, limits.BEAM_WIDTH)


def _at_wall(place: str, condition: WallCondition | None) -> Iterator[BoundLength]:
    if condition is not None:
        yield BoundLength(f"{place}/soffit", condition.soffit_width, limits.SOFFIT_WIDTH)


def _in_panel(panel: PanelSpec) -> Iterator[BoundLength]:
    if panel.sheet is not None:
        yield BoundLength("/panel/sheet/width", panel.sheet.width, limits.SHEET_EDGE)
        yield BoundLength("/panel/sheet/length", panel.sheet.length, limits.SHEET_EDGE)
    of_boards = panel.kind is PanelKind.BOARDS
    yield BoundLength(
        "/panel/thickness",
        panel.thickness,
        limits.BOARD_THICKNESS if of_boards else limits.SHEET_THICKNESS,
    )
    yield BoundLength("/panel/gap", panel.gap, limits.GAP)
    yield BoundLength("/panel/cover", panel.cover, limits.BOARD_COVER)
    yield BoundLength("/panel/tongue", panel.tongue, limits.BOARD_TONGUE)
    trim_cover = panel.movement.trim_cover if panel.movement else None
    yield BoundLength("/panel/movement/trim_cover", trim_cover, limits.TRIM_COVER)


def _in_crown(crown: CrownSpec) -> Iterator[BoundLength]:
    yield BoundLength("/crown/face", crown.face, limits.CROWN_FACE)
    yield BoundLength("/crown/drop", crown.drop, limits.CROWN_LEG)
    yield BoundLength("/crown/projection", crown.projection, limits.CROWN_LEG)
    yield BoundLength("/crown/thickness", crown.thickness, limits.MOULDING_THICKNESS)
    yield BoundLength("/crown/land", crown.land, limits.LAND)
    yield BoundLength("/crown/fit_total", crown.fit_total, limits.FIT)
    yield BoundLength("/crown/sprung_allowance", crown.sprung_allowance, limits.FIT)
    yield BoundLength("/crown/shortest_piece", crown.shortest_piece, limits.SHORTEST_PIECE)
    yield BoundLength("/crown/nailer_clearance", crown.nailer_clearance, limits.FIT)


def _in_flat_moulding(place: str, moulding: FlatMouldingSpec) -> Iterator[BoundLength]:
    yield BoundLength(f"{place}/thickness", moulding.thickness, limits.MOULDING_THICKNESS)
    yield BoundLength(f"{place}/width", moulding.width, limits.MOULDING_WIDTH)


def _in_openings(openings: OpeningsSpec) -> Iterator[BoundLength]:
    place = "/measured_openings"
    for number, measured in enumerate(openings.coffers or ()):
        at = f"{place}/coffers/{number}"
        for wall, side in zip(WALLS, measured.sides, strict=True):
            yield BoundLength(f"{at}/sides/{wall}", side, limits.OPENING)
        yield BoundLength(f"{at}/diagonals/rising", measured.rising, limits.DIAGONAL)
        yield BoundLength(f"{at}/diagonals/falling", measured.falling, limits.DIAGONAL)
        for place_in, taken in enumerate(measured.cut_sides):
            yield BoundLength(f"{at}/cut_sides/{place_in}/length", taken.length, limits.CUT_SIDE)
        for place_in, across in enumerate(measured.cut_diagonals):
            pointer = f"{at}/cut_diagonals/{place_in}/length"
            yield BoundLength(pointer, across.length, limits.DIAGONAL)
    yield BoundLength(
        f"{place}/out_of_square_limit", openings.out_of_square_limit, limits.OUT_OF_SQUARE
    )
    yield BoundLength(f"{place}/closing_limit", openings.closing_limit, limits.CLOSING)
    yield BoundLength(f"{place}/difference_limit", openings.difference_limit, limits.DIFFERENCE)


def _in_take_off(take_off: TakeOffSpec) -> Iterator[BoundLength]:
    place = "/take_off"
    for name in ("length_allowance", "width_allowance"):
        yield BoundLength(f"{place}/{name}", getattr(take_off, name), limits.PART_ALLOWANCE)
    yield BoundLength(f"{place}/cleat_width", take_off.cleat_width, limits.CLEAT_WIDTH)
    yield from _in_stock(f"{place}/blocking", take_off.blocking)
    for each in fields(NailSpacingSpec):
        spacing = getattr(take_off.nail_spacing, each.name)
        yield BoundLength(f"{place}/nail_spacing/{each.name}", spacing, limits.NAIL_SPACING)
    adhesive = take_off.adhesive
    yield BoundLength(
        f"{place}/adhesive/bead_per_cartridge", adhesive.bead_per_cartridge, limits.BEAD
    )
    yield BoundLength(f"{place}/adhesive/bead_spacing", adhesive.bead_spacing, limits.BEAD_SPACING)
