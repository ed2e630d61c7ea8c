"""Judges a spec by every rule that needs no setting out, and tells all it finds at once.

The rules are independent of each other and of what was left open: a rule that finds nothing said
where it looks has nothing to say, but for the few things that cannot be assumed.
"""

from collections.abc import Iterator

from lacunar.measure.length import Length
from lacunar.model.beam_rules import BEAM_RULES
from lacunar.model.column_rules import COLUMN_RULES
from lacunar.model.drawing_rules import DRAWING_RULES
from lacunar.model.faults import Fault
from lacunar.model.fixing_rules import FIXING_RULES
from lacunar.model.grid_rules import GRID_RULES
from lacunar.model.item_rules import ITEM_RULES
from lacunar.model.limits import Bounds
from lacunar.model.moulding_rules import MOULDING_RULES
from lacunar.model.opening_rules import OPENING_RULES
from lacunar.model.outline_rules import OUTLINE_RULES
from lacunar.model.panel_rules import PANEL_RULES
from lacunar.model.room_rules import ROOM_RULES
from lacunar.model.rule_case import Rule, RuleCase
from lacunar.model.spec import CeilingSpec
from lacunar.model.spec_lengths import lengths_in
from lacunar.model.station_rules import STATION_RULES
from lacunar.model.survey_rules import SURVEY_RULES
from lacunar.model.take_off_rules import TAKE_OFF_RULES


def lengths_lie_within_bounds(case: RuleCase) -> Iterator[Fault]:
    """A length beyond its bounds is a slip of the pen, or more than can be laid out."""
    for found in lengths_in(case.spec):
        if found.length is None or not case.sound(found.pointer):
            continue
        if not found.bounds.least <= found.length <= found.bounds.most:
            yield length_out_of_bounds(found.pointer, found.length, found.bounds)


def length_out_of_bounds(pointer: str, length: Length, bounds: Bounds) -> Fault:
    """The fault for a length that is none of its kind."""
    return Fault(
        code="length_out_of_bounds",
        pointer=pointer,
        message=f"The length is out of bounds: {bounds.reason}.",
        remedy="Check the figure and its unit.",
        figures={"given": length, "least": bounds.least, "most": bounds.most},
    )


RULES: tuple[Rule, ...] = (
    lengths_lie_within_bounds,
    *ROOM_RULES,
    *SURVEY_RULES,
    *OUTLINE_RULES,
    *COLUMN_RULES,
    *STATION_RULES,
    *BEAM_RULES,
    *GRID_RULES,
    *PANEL_RULES,
    *FIXING_RULES,
    *MOULDING_RULES,
    *ITEM_RULES,
    *OPENING_RULES,
    *TAKE_OFF_RULES,
    *DRAWING_RULES,
)


def check(spec: CeilingSpec, unsound: frozenset[str] = frozenset()) -> tuple[Fault, ...]:
    """Every fault the rules find in a spec.

    Parameters: `spec`; `unsound`, the JSON pointers of what could not be read: a rule is silent
    about what lies at, above or below one of these.
    """
    case = RuleCase(spec, unsound)
    return tuple(fault for rule in RULES for fault in rule(case))
