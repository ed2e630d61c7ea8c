"""Decides what a spec leaves open about sheet panels and boards."""

from dataclasses import fields
from fractions import Fraction

from lacunar.measure.length import ZERO, Length
from lacunar.model.assuming import Assuming
from lacunar.model.board_tables import PUBLISHED_BOARDS
from lacunar.model.boards import BoardName, BoardRun, Boards, Cut, Fastening, Moisture, Movement
from lacunar.model.defaults import Defaults
from lacunar.model.limits import BOARD_TONGUE
from lacunar.model.panel import Panel, PanelKind, SeamPlaces, Seat, SheetSize
from lacunar.model.room import RunName
from lacunar.model.spec import MovementSpec, PanelSpec

BOARD_FIELDS = ("board", "cover", "tongue", "parallel_to", "run", "centered_on", "movement")
SHEET_FIELDS = ("grain", "seams")

# Interior woodwork in most of the United States: 8 percent on average, single pieces from 6 to 10
# (Wood Handbook, FPL-GTR-190, chapter 13, recommended moisture content; from memory).
_NOW, _DRIEST, _DAMPEST = Fraction(8), Fraction(6), Fraction(10)


def decide_panel(
    panel: PanelSpec | None, longer: RunName, usual: Defaults, assuming: Assuming
) -> Panel:
    """Turn what was said of the panel into one with nothing open; see `assumptions.resolve`.

    `longer` is the longer run of the room, along which boards usually lie.
    """
    said = panel or PanelSpec()
    kind = _kind(said, assuming)
    if kind is PanelKind.BOARDS:
        return _boarded(said, longer, usual, assuming)
    # What a sheet would be like matters to nothing where there is none, so nothing is assumed.
    noted = assuming if kind is PanelKind.SHEET_GOODS else Assuming()
    return Panel(
        kind=kind,
        sheet=said.sheet or _sheet(usual, noted),
        thickness=noted.settle(
            said.thickness, "/panel/thickness", usual.sheet_thickness, "a usual thickness"
        ),
        seat=noted.settle(
            said.seat, "/panel/seat", Seat.BETWEEN_SIDES, "panels go up after the sides"
        ),
        gap=noted.settle(said.gap, "/panel/gap", usual.gap, "room to get the panel in"),
        grain=said.grain,
        seams=noted.settle(
            said.seams, "/panel/seams", SeamPlaces.EQUAL, "seams in equal parts are no eyesore"
        ),
    )


def _kind(said: PanelSpec, assuming: Assuming) -> PanelKind:
    """What fills the coffers: as said, else what is described, else the ceiling that is there."""
    described = {field.name for field in fields(said) if getattr(said, field.name) is not None}
    if said.kind is not None:
        return said.kind
    if not described.isdisjoint(BOARD_FIELDS):
        kind, reason = PanelKind.BOARDS, "boards are described"
    elif described:
        kind, reason = PanelKind.SHEET_GOODS, "a sheet is described"
    else:
        kind, reason = PanelKind.EXISTING, "the ceiling that is there shows"
    return assuming.settle(None, "/panel/kind", kind, reason)


def _sheet(usual: Defaults, assuming: Assuming) -> SheetSize:
    assuming.note("/panel/sheet/width", usual.sheet.width, "a usual sheet")
    assuming.note("/panel/sheet/length", usual.sheet.length, "a usual sheet")
    return usual.sheet


def _boarded(said: PanelSpec, longer: RunName, usual: Defaults, assuming: Assuming) -> Panel:
    nominal, cover = _cover(said, usual, assuming)
    run = assuming.settle(
        said.run, "/panel/run", BoardRun.PER_COFFER, "boards go up in finished coffers"
    )
    boards = Boards(
        nominal=nominal,
        cover=cover,
        tongue=_tongue(said, nominal, cover, usual, assuming),
        parallel_to=assuming.settle(
            said.parallel_to, "/panel/parallel_to", longer, "boards run the long way of the room"
        ),
        run=run,
        centered_on=said.centered_on,
        movement=None if said.movement is None else _movement(said.movement, assuming),
    )
    seat, reason = Seat.BETWEEN_SIDES, "boards go up after the sides"
    if run is BoardRun.THROUGH:
        seat, reason = Seat.ABOVE_BACKING, "boards that run through go up before the backing"
    return Panel(
        kind=PanelKind.BOARDS,
        sheet=said.sheet or usual.sheet,
        thickness=assuming.settle(
            said.thickness, "/panel/thickness", usual.board_thickness, "a usual board"
        ),
        seat=assuming.settle(said.seat, "/panel/seat", seat, reason),
        gap=assuming.settle(said.gap, "/panel/gap", usual.board_gap, "room for boards to move"),
        boards=boards,
    )


def _cover(said: PanelSpec, usual: Defaults, assuming: Assuming) -> tuple[BoardName | None, Length]:
    """The board by name, if it has one, and the face it covers."""
    nominal = said.board
    if said.cover is not None:
        return nominal, said.cover
    if nominal is None and usual.board is not None:
        nominal = assuming.settle(None, "/panel/board", usual.board, "a usual board")
    if nominal is None:
        return None, assuming.settle(None, "/panel/cover", usual.board_cover, "a usual board")
    reason = "the published face of the board; makers differ, so measure it"
    published = PUBLISHED_BOARDS[nominal].cover
    return nominal, assuming.settle(None, "/panel/cover", published, reason)


def _tongue(
    said: PanelSpec,
    nominal: BoardName | None,
    cover: Length,
    usual: Defaults,
    assuming: Assuming,
) -> Length:
    """What a board is wider than it covers: published for a named one."""
    tongue, reason = usual.board_tongue, "a usual tongue"
    if nominal is not None:
        left_over = max(PUBLISHED_BOARDS[nominal].overall - cover, ZERO)
        # A cover far below the published one is that of a board ripped narrower, tongue and all.
        if left_over <= BOARD_TONGUE.most:
            tongue, reason = left_over, "what is left of the published width beside the cover"
    return assuming.settle(said.tongue, "/panel/tongue", tongue, reason)


def _movement(said: MovementSpec, assuming: Assuming) -> Movement:
    """Turn what was said of the boards' movement into what it is worked out from."""
    place = "/panel/movement"
    return Movement(
        species=said.species,
        cut=assuming.settle(
            said.cut, f"{place}/cut", Cut.FLATSAWN, "the cut that moves more and is sold more"
        ),
        coefficient=said.coefficient,
        fastening=assuming.settle(
            said.fastening, f"{place}/fastening", Fastening.NAILED, "each board is nailed"
        ),
        now=_moisture(said.now, f"{place}/now", _NOW, assuming),
        driest=_moisture(said.driest, f"{place}/driest", _DRIEST, assuming),
        dampest=_moisture(said.dampest, f"{place}/dampest", _DAMPEST, assuming),
        trim_cover=said.trim_cover,
    )


def _moisture(
    said: Moisture | None, pointer: str, percent: Fraction, assuming: Assuming
) -> Moisture:
    if said is not None:
        return said
    assuming.note(pointer, f"{percent} percent", "usual for woodwork indoors; measure the boards")
    return percent
