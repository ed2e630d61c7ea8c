"""Decides what a spec leaves open about joists, fasteners and the weight of what hangs."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import ZERO, Length
from lacunar.model.assuming import Assuming
from lacunar.model.beams import Beams, Box, FamilyBeam, Flat
from lacunar.model.defaults import FixingDefaults
from lacunar.model.fasteners import USUAL_SIZE, FastenerKind
from lacunar.model.fixing import BetweenJoists, Fixing, Service, Wood
from lacunar.model.panel import Panel, PanelKind, Seat
from lacunar.model.room import CeilingState, JoistKind, Joists
from lacunar.model.spec import FixingSpec, JoistsSpec, WoodSpec
from lacunar.model.woods import Species, fastening_gravity, weight_gravity

# Trim kept indoors settles near this share of water, framing and boards alike (common practice, no
# source).
_MOISTURE = Fraction(12, 100)
# Softwood plywood at about 3 lb a square foot for each inch of thickness, over water's 5.2 lb (a
# trade association's figure, as quoted on weight tables).
_PANEL_GRAVITY = Fraction(58, 100)
_AT_CROSSING = 2
_PLACE = "/room/joists"


@dataclass(frozen=True, slots=True)
class FixingSurroundings:
    """The decided parts of the ceiling that its fixing must suit, and how far it rises."""

    joists: Joists | None
    beams: Beams
    panel: Panel
    rise: Length = ZERO


def decide_joists(
    said: JoistsSpec | None, fixing: FixingSpec | None, usual: FixingDefaults, assuming: Assuming
) -> Joists | None:
    """The joists with nothing open; None where none were told of."""
    if said is None:
        return None
    if said.parallel_to is None or said.first is None:
        raise ValueError(f"{_PLACE} is open: the spec has not passed the rules")
    ceiling = _ceiling_state(said, fixing or FixingSpec(), assuming)
    closed = ceiling is CeilingState.CLOSED
    species, gravity = _joist_wood(said, assuming)
    return Joists(
        parallel_to=said.parallel_to,
        spacing=assuming.settle(
            said.spacing, f"{_PLACE}/spacing", usual.joist_spacing, "the usual spacing; verify it"
        ),
        first=said.first,
        width=assuming.settle(
            said.width, f"{_PLACE}/width", usual.joist_width, "sawn lumber of nominal 2 in"
        ),
        kind=assuming.settle(
            said.kind, f"{_PLACE}/kind", JoistKind.LUMBER, "sawn lumber; see whether it is trusses"
        ),
        ceiling=ceiling,
        existing_finish=assuming.settle(
            said.existing_finish,
            f"{_PLACE}/existing_finish",
            usual.existing_finish if closed else ZERO,
            "a usual wallboard" if closed else "nothing is on an open ceiling yet",
        ),
        species=species,
        gravity=gravity,
    )


def _ceiling_state(said: JoistsSpec, fixing: FixingSpec, assuming: Assuming) -> CeilingState:
    place = f"{_PLACE}/ceiling"
    if fixing.between_joists is BetweenJoists.BLOCKING:
        return assuming.settle(
            said.ceiling, place, CeilingState.OPEN, "blocking is asked for, which needs it open"
        )
    return assuming.settle(
        said.ceiling, place, CeilingState.CLOSED, "a ceiling that is up hides its joists"
    )


def _joist_wood(said: JoistsSpec, assuming: Assuming) -> tuple[Species | None, Fraction]:
    if said.gravity is not None:
        return said.species, said.gravity
    species = assuming.settle(
        said.species,
        f"{_PLACE}/species",
        Species.SPRUCE_PINE_FIR,
        "among the lighter of common framing; read the grade stamp",
    )
    gravity = fastening_gravity(species)
    assuming.note(f"{_PLACE}/gravity", str(gravity), "as published for fastening in this species")
    return species, gravity


def decide_fixing(
    said: FixingSpec | None,
    around: FixingSurroundings,
    usual: FixingDefaults,
    assuming: Assuming,
) -> Fixing | None:
    """How backing is fixed with nothing open; None where neither it nor the joists were told of.

    What matters only where the joists are known is decided but not noted where they are not.
    """
    if said is None and around.joists is None:
        return None
    said = said or FixingSpec()
    through = _block_through(said, around.beams, usual, assuming)
    fasteners = _fasteners(said, around, usual, Assuming() if around.joists is None else assuming)
    length = said.length
    if length is None:
        needed = fasteners.least + fasteners.shim + _passed_through(around, through)
        length = next((each for each in usual.fastener_lengths if each >= needed), needed)
        reason = "the shortest usual length that reaches deep enough"
        fasteners.noted.note("/fixing/length", length, reason)
    return Fixing(
        between_joists=fasteners.between,
        fastener=fasteners.kind,
        size=fasteners.size,
        length=length,
        at_crossing=fasteners.at_crossing,
        least_penetration=fasteners.least,
        shim=fasteners.shim,
        block_through=through,
        block_spacing=assuming.settle(
            said.block_spacing,
            "/fixing/block_spacing",
            usual.block_spacing,
            "what carries a beam stands about this far apart",
        ),
        end_distance=assuming.settle(
            said.end_distance, "/fixing/end_distance", usual.end_distance, "clear of the end grain"
        ),
        service=fasteners.service,
        trim=_wood(said.trim, "/fixing/trim", Species.YELLOW_POPLAR, assuming),
        backing=_wood(said.backing, "/fixing/backing", Species.DOUGLAS_FIR_LARCH, assuming),
        panel_gravity=_panel_gravity(said, around.panel, assuming),
    )


@dataclass(frozen=True, slots=True)
class _Fasteners:
    """What goes into the joists; `noted` takes what is assumed of it."""

    kind: FastenerKind
    size: str
    at_crossing: int
    least: Length
    shim: Length
    between: BetweenJoists
    service: Service
    noted: Assuming


def _fasteners(
    said: FixingSpec, around: FixingSurroundings, usual: FixingDefaults, noted: Assuming
) -> _Fasteners:
    kind = noted.settle(
        said.fastener, "/fixing/fastener", FastenerKind.WOOD_SCREW, "screws hold a hung load"
    )
    return _Fasteners(
        kind=kind,
        size=noted.settle(said.size, "/fixing/size", USUAL_SIZE[kind], "a usual size"),
        at_crossing=noted.settle(
            said.at_crossing,
            "/fixing/at_crossing",
            _AT_CROSSING,
            "two keep the backing from turning",
        ),
        least=noted.settle(
            said.least_penetration,
            "/fixing/least_penetration",
            usual.least_penetration,
            "a usual depth into framing",
        ),
        shim=noted.settle(
            said.shim,
            "/fixing/shim",
            around.rise,
            "as much as the highest station needs"
            if around.rise
            else "the ceiling is taken to be flat",
        ),
        between=_between(said, around.joists, noted),
        service=noted.settle(
            said.service, "/fixing/service", Service.DRY, "a heated room keeps the wood dry"
        ),
        noted=noted,
    )


def _block_through(
    said: FixingSpec, beams: Beams, usual: FixingDefaults, assuming: Assuming
) -> Length:
    """What is passed through of a block; noted where a family has no backing of a named stock."""
    blocks = any(
        isinstance(built, Box) and built.backing is None
        for built in (beams.crosswise, beams.lengthwise)
    )
    return (assuming if blocks else Assuming()).settle(
        said.block_through,
        "/fixing/block_through",
        usual.block_through,
        "a block is counterbored, or built up on a cleat of nominal 2 in",
    )


def _passed_through(around: FixingSurroundings, block_through: Length) -> Length:
    """The most a fastener passes through before it reaches the framing, but for shims."""
    built = (around.beams.crosswise, around.beams.lengthwise)
    backing = max(_through_beam(each, block_through) for each in built)
    finish = around.joists.existing_finish if around.joists else ZERO
    panel = around.panel
    above = panel.kind is not PanelKind.EXISTING and panel.seat is Seat.ABOVE_BACKING
    return backing + finish + (panel.thickness if above else ZERO)


def _through_beam(built: FamilyBeam, block_through: Length) -> Length:
    if isinstance(built, Flat):
        return built.thickness
    return built.backing.thickness if built.backing else block_through


def _between(said: FixingSpec, joists: Joists | None, noted: Assuming) -> BetweenJoists:
    if joists is not None and joists.ceiling is CeilingState.OPEN:
        return noted.settle(
            said.between_joists,
            "/fixing/between_joists",
            BetweenJoists.BLOCKING,
            "while the ceiling is open, blocking is let in between the joists",
        )
    return noted.settle(
        said.between_joists,
        "/fixing/between_joists",
        BetweenJoists.SKIN,
        "blocking needs a closed ceiling opened up; a plywood skin screwed to the joists does not,"
        " nor do anchors made for hollow ceilings",
    )


def _wood(said: WoodSpec, place: str, usual: Species, assuming: Assuming) -> Wood:
    species, gravity = said.species, said.gravity
    if gravity is None:
        species = assuming.settle(species, f"{place}/species", usual, "a usual wood")
        gravity = weight_gravity(species)
        assuming.note(f"{place}/gravity", str(gravity), "as published for this species")
    moisture = said.moisture
    if moisture is None:
        moisture = _MOISTURE
        assuming.note(f"{place}/moisture", str(moisture), "as wood settles indoors")
    return Wood(species, gravity, moisture)


def _panel_gravity(said: FixingSpec, panel: Panel, assuming: Assuming) -> Fraction:
    if said.panel_gravity is not None:
        return said.panel_gravity
    if panel.kind is not PanelKind.EXISTING:
        assuming.note("/fixing/panel_gravity", str(_PANEL_GRAVITY), "as softwood plywood")
    return _PANEL_GRAVITY
