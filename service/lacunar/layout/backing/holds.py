"""Reference figures of fasteners under a hung beam, for an engineer or the code official to judge.

Source: National Design Specification for Wood Construction, section 12.2 (allowable stress design;
by way of a public cross-check note and a handbook of formulas; pull-through from memory). Valid for
fasteners in side grain, dry framing unless told otherwise, no allowance for impact or vibration.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.backing.weights import FOOT
from lacunar.layout.backing_records import BeamWeight, Hold
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import BeamProfile
from lacunar.measure.figure import LengthFigure, NumberFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.measure.roots import square_root
from lacunar.model.beams import FamilyProfile
from lacunar.model.ceiling import Ceiling
from lacunar.model.fasteners import SIZES, FastenerKind, FastenerSize
from lacunar.model.fixing import Fixing, Service
from lacunar.model.room import Joists

INCH = Length.of_inches(1)
# Load duration for a permanent load, the same standard's table 2.3.2: what hangs, hangs for good.
PERMANENT = Fraction(9, 10)
# Wet service, the same standard's table 11.3.3: screws, and nails whose wood changes its moisture.
WET = {
    FastenerKind.WOOD_SCREW: Fraction(7, 10),
    FastenerKind.LAG_SCREW: Fraction(7, 10),
    FastenerKind.NAIL: Fraction(1, 4),
}
PI = Fraction(314159265359, 100000000000)
# A head can crush no thicker a board than this many of its own diameters.
HEAD_DEPTHS = Fraction(5, 2)

PENETRATION = Rule(
    "how deep a fastener is in the framing: its length less all it passes through",
    "max(0, fastener - shim - backing - finish - panel)",
)
SCREW_WITHDRAWAL = Rule(
    "reference withdrawal of a wood screw by the inch", "2850 * gravity * gravity * diameter / inch"
)
NAIL_WITHDRAWAL = Rule(
    "reference withdrawal of a nail by the inch",
    "1380 * gravity * gravity * root_of_gravity * diameter / inch",
)
LAG_WITHDRAWAL = Rule(
    "reference withdrawal of a lag screw by the inch",
    "1800 * gravity * root_of_gravity * root_of_diameter * root_of_that",
)
ADJUSTED = Rule(
    "withdrawal of one fastener: by the inch, for a permanent load and the service it is in",
    "pounds_per_inch * duration * service * penetration / inch",
)
PULL_THROUGH = Rule(
    "reference pull-through of a head",
    "690 * pi * head / inch * gravity * gravity * min(thickness, 5 / 2 * head) / inch",
)
PULL_THROUGH_ADJUSTED = Rule(
    "pull-through of one head: for a permanent load and the service it is in",
    "pounds * duration * service",
)
LOAD = Rule(
    "what one fastener carries of a beam across the joists",
    "pounds_per_foot * spacing / foot / at_crossing",
)


def withdrawal(kind: FastenerKind, gravity: Fraction, diameter: Length) -> NumberFigure:
    """Turn a fastener and the wood it is in into pounds per inch of its depth in side grain.

    Parameters: `kind`; `gravity` [ratio] of the framing, assigned; `diameter` [length]. Formulas:
    wood screw 2850 G² D, nail 1380 G^2.5 D, lag screw 1800 G^1.5 D^0.75, with D in inches.

    >>> figure = withdrawal(FastenerKind.WOOD_SCREW, Fraction("0.43"), INCH * Fraction("0.164"))
    >>> round(figure.value, 1)
    Fraction(432, 5)
    """
    inches = diameter / INCH
    if kind is FastenerKind.WOOD_SCREW:
        return SCREW_WITHDRAWAL.gives(
            2850 * gravity**2 * inches, gravity=gravity, diameter=diameter, inch=INCH
        )
    root = square_root(gravity)
    if kind is FastenerKind.NAIL:
        return NAIL_WITHDRAWAL.approximates(
            1380 * gravity**2 * root * inches,
            gravity=gravity,
            root_of_gravity=root,
            diameter=diameter,
            inch=INCH,
        )
    of_diameter = square_root(inches)
    of_that = square_root(of_diameter)
    return LAG_WITHDRAWAL.approximates(
        1800 * gravity * root * of_diameter * of_that,
        gravity=gravity,
        root_of_gravity=root,
        root_of_diameter=of_diameter,
        root_of_that=of_that,
    )


def pull_through(head: Length, gravity: Fraction, thickness: Length) -> NumberFigure:
    """Turn a head and the board it holds up into the pounds that pull it through.

    Parameters: diameter of the `head` [length]; `gravity` [ratio] and `thickness` [length] of the
    board. Formula: 690 pi D G² t, with t at most 2.5 D, lengths in inches.

    >>> inches = Length.of_inches
    >>> figure = pull_through(inches(Fraction("0.312")), Fraction("0.42"), inches(Fraction("0.5")))
    >>> round(figure.value, 1)  # about 59.7
    Fraction(597, 10)
    """
    counted = min(thickness, head * HEAD_DEPTHS)
    return PULL_THROUGH.approximates(
        690 * PI * (head / INCH) * gravity**2 * (counted / INCH),
        pi=PI,
        head=head,
        inch=INCH,
        gravity=gravity,
        thickness=thickness,
    )


@dataclass(frozen=True, slots=True)
class HoldTask:
    """What fasteners are judged by: the ceiling's joists and fixing, and what the beams weigh."""

    ceiling: Ceiling
    joists: Joists
    fixing: Fixing
    profiles: Mapping[str, BeamProfile]

    @property
    def service(self) -> Fraction:
        """The factor for what the wood is in."""
        wet = self.fixing.service is Service.WET
        return WET[self.fixing.fastener] if wet else Fraction(1)


def holds(task: HoldTask, weighed: Sequence[BeamWeight]) -> Iterator[Hold]:
    """Reference figures for each profile that was weighed."""
    for beam in weighed:
        yield _hold(task, task.profiles[beam.profile], beam)


def _hold(task: HoldTask, profile: BeamProfile, weight: BeamWeight) -> Hold:
    fixing, joists = task.fixing, task.joists
    size = SIZES[fixing.fastener][fixing.size]
    through = passed_through(profile, fixing)
    depth = _penetration(task, through)
    reference = withdrawal(fixing.fastener, joists.gravity, size.diameter)
    carried = weight.pounds_per_foot.value * (joists.spacing / FOOT) / fixing.at_crossing
    give = ADJUSTED.approximates if reference.approximate else ADJUSTED.gives
    return Hold(
        profile=profile.id,
        penetration=depth,
        deep_enough=depth.value >= fixing.least_penetration,
        spacing=given(joists.spacing),
        load_pounds=LOAD.gives(
            carried,
            pounds_per_foot=weight.pounds_per_foot.value,
            spacing=joists.spacing,
            foot=FOOT,
            at_crossing=fixing.at_crossing,
        ),
        withdrawal_pounds_per_inch=reference,
        withdrawal_pounds=give(
            reference.value * PERMANENT * task.service * (depth.value / INCH),
            pounds_per_inch=reference.value,
            duration=PERMANENT,
            service=task.service,
            penetration=depth.value,
            inch=INCH,
        ),
        pull_through_pounds=_pull_through(task, size, through),
    )


def _pull_through(task: HoldTask, size: FastenerSize, through: Length) -> NumberFigure | None:
    if size.head is None:
        return None
    reference = pull_through(size.head, task.fixing.backing.gravity, through).value
    return PULL_THROUGH_ADJUSTED.approximates(
        reference * PERMANENT * task.service,
        pounds=reference,
        duration=PERMANENT,
        service=task.service,
    )


def passed_through(profile: BeamProfile, fixing: Fixing) -> Length:
    """How much of a profile's backing a fastener passes through [length].

    The backing's thickness where it is of a named stock; what is told for blocks and cleats else;
    all boards of a flat beam, which is fixed straight through.
    """
    if profile.profile is FamilyProfile.FLAT:
        return sum((part.thickness.value for part in profile.parts), ZERO)
    backing = next((part for part in profile.parts if part.name == "backing"), None)
    if backing is None or backing.stock is None:
        return fixing.block_through
    return backing.thickness.value


def _penetration(task: HoldTask, through: Length) -> LengthFigure:
    fixing, finish = task.fixing, task.joists.existing_finish
    panel = panel_stack(task.ceiling.panel).above_backing
    depth = fixing.length - fixing.shim - through - finish - panel
    return PENETRATION.gives(
        max(ZERO, depth),
        fastener=fixing.length,
        shim=fixing.shim,
        backing=through,
        finish=finish,
        panel=panel,
    )
