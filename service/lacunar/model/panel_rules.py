"""Rules about boards and about what moves them."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.measure.moisture import equilibrium
from lacunar.measure.writing import decimal_text
from lacunar.model import limits
from lacunar.model.boards import Air, BoardRun, Moisture
from lacunar.model.faults import Fault
from lacunar.model.panel import PanelKind, Seat
from lacunar.model.panel_assumptions import BOARD_FIELDS, SHEET_FIELDS
from lacunar.model.rule_case import RuleCase
from lacunar.model.spec import MovementSpec, PanelSpec

_MOVEMENT = "/panel/movement"


def panel_fields_suit_their_kind(case: RuleCase) -> Iterator[Fault]:
    """A cover says nothing of a sheet, nor grain anything of boards."""
    panel = case.spec.panel or PanelSpec()
    if not case.sound("/panel/kind"):
        return
    of_boards = _described(panel, BOARD_FIELDS)
    of_sheets = _described(panel, SHEET_FIELDS)
    if panel.kind is None and of_boards and of_sheets:
        yield Fault(
            code="panel_kind_unclear",
            pointer="/panel/kind",
            message="Both sheets and boards are described, and nothing says which are meant.",
            remedy="Give the kind, and leave out what belongs to the other.",
            figures={"of_boards": ", ".join(of_boards), "of_sheets": ", ".join(of_sheets)},
        )
    if panel.kind in (PanelKind.EXISTING, PanelKind.SHEET_GOODS):
        yield from _unsuited(panel.kind, of_boards)
    if panel.kind in (PanelKind.EXISTING, PanelKind.BOARDS):
        yield from _unsuited(panel.kind, of_sheets)


def _described(panel: PanelSpec, names: tuple[str, ...]) -> list[str]:
    return [name for name in names if getattr(panel, name) is not None]


def _unsuited(kind: PanelKind, names: list[str]) -> Iterator[Fault]:
    for name in names:
        yield Fault(
            code="panel_field_unsuited",
            pointer=f"/panel/{name}",
            message=f"A panel of the kind {kind} has no {name}.",
            remedy="Leave it out, or ask for another kind.",
            figures={"kind": str(kind)},
        )


def through_boards_lie_above_the_backing(case: RuleCase) -> Iterator[Fault]:
    """Boards that run through from coffer to coffer are up before there are beams."""
    panel = case.spec.panel or PanelSpec()
    if panel.run is not BoardRun.THROUGH or not case.sound("/panel/run", "/panel/seat"):
        return
    if panel.seat not in (None, Seat.ABOVE_BACKING):
        yield Fault(
            code="through_boards_seated_lower",
            pointer="/panel/seat",
            message="Boards that run through lie above the beams, and are to end at each of them.",
            remedy="Leave the seat out, or let each coffer have boards of its own.",
            figures={"seat": str(panel.seat)},
        )


def movement_has_one_coefficient(case: RuleCase) -> Iterator[Fault]:
    """A species has a published coefficient; a wood that is not among them needs its own."""
    movement = _movement(case, "species", "coefficient")
    if movement is None:
        return
    if movement.species is None and movement.coefficient is None:
        yield Fault(
            code="wood_not_said",
            pointer=f"{_MOVEMENT}/species",
            message="How much boards move hangs on their wood, which cannot be assumed.",
            remedy="Give the species, or a coefficient of its own.",
        )
    if movement.species is not None and movement.coefficient is not None:
        yield Fault(
            code="coefficient_given_twice",
            pointer=f"{_MOVEMENT}/coefficient",
            message="The species has a published coefficient, and another is given beside it.",
            remedy="Keep one of them.",
            figures={"species": str(movement.species)},
        )


def movement_is_worked_from_what_can_be(case: RuleCase) -> Iterator[Fault]:
    """Percentages, temperatures and coefficients lie where such things can lie."""
    movement = _movement(case)
    if movement is None:
        return
    found = [("coefficient", movement.coefficient, limits.MOVEMENT_COEFFICIENT)]
    for name in ("now", "driest", "dampest"):
        moisture: Moisture | None = getattr(movement, name)
        if isinstance(moisture, Air):
            celsius = moisture.temperature.celsius
            found.append((f"{name}/humidity", moisture.humidity, limits.HUMIDITY_PERCENT))
            found.append((f"{name}/temperature", celsius, limits.ROOM_CELSIUS))
        else:
            found.append((name, moisture, limits.MOISTURE_PERCENT))
    for name, value, (least, most) in found:
        if value is None or not case.sound(f"{_MOVEMENT}/{name}") or least <= value <= most:
            continue
        yield Fault(
            code="measure_out_of_bounds",
            pointer=f"{_MOVEMENT}/{name}",
            message=f"The {name.rpartition('/')[2]} is out of bounds.",
            remedy="Check the figure. Moisture and humidity are percentages; bounds of a"
            " temperature are in degrees Celsius.",
            figures={
                "given": decimal_text(value),
                "least": decimal_text(least),
                "most": decimal_text(most),
            },
        )


def driest_comes_before_dampest(case: RuleCase) -> Iterator[Fault]:
    """The range of moisture has its lower end at the driest."""
    movement = _movement(case, "driest", "dampest")
    if movement is None or any(movement_is_worked_from_what_can_be(case)):
        return
    if movement.driest is None or movement.dampest is None:
        return
    driest, dampest = percent_of(movement.driest), percent_of(movement.dampest)
    if driest > dampest:
        yield Fault(
            code="moisture_range_reversed",
            pointer=f"{_MOVEMENT}/driest",
            message="The boards would be damper at their driest than at their dampest.",
            remedy="Exchange the two.",
            figures={"driest": decimal_text(driest), "dampest": decimal_text(dampest)},
        )


def percent_of(moisture: Moisture) -> Fraction:
    """The moisture content in percent; that of wood at rest in air where air was given."""
    if isinstance(moisture, Air):
        return equilibrium(moisture.humidity, moisture.temperature).moisture.value
    return moisture


def _movement(case: RuleCase, *names: str) -> MovementSpec | None:
    """What was said of movement, if these names of it can be judged."""
    panel = case.spec.panel
    places = [f"{_MOVEMENT}/{name}" for name in names]
    return panel.movement if panel and case.sound(*places) else None


PANEL_RULES = (
    panel_fields_suit_their_kind,
    through_boards_lie_above_the_backing,
    movement_has_one_coefficient,
    movement_is_worked_from_what_can_be,
    driest_comes_before_dampest,
)
