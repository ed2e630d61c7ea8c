"""What hangs from the ceiling: beams by the foot, panels, and all of it over the room."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.backing_records import BeamWeight, Weights
from lacunar.layout.records import BeamProfile
from lacunar.layout.set_out_beams import SetOutBeams
from lacunar.measure.figure import LengthFigure, NumberFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.fixing import Fixing, Wood
from lacunar.model.panel import Panel, PanelKind

FOOT = Length.of_feet(1)
# Water weighs 62.4 lb a cubic foot; a pound is 0.45359237 kg and a foot 0.3048 m exactly.
WATER = Fraction(624, 10)
KILOGRAMS = Fraction(45359237, 100000000)
METERS = Fraction(3048, 10000)

DENSITY = Rule(
    "weight of a cubic foot of wood: water's, times gravity, and the moisture on top",
    "water * gravity * (1 + moisture)",
)
PART = Rule(
    "weight of a foot of boards",
    "quantity * thickness * width / (foot * foot) * pounds_per_cubic_foot",
)
NO_PART = Rule("no such board", "0")
PER_FOOT = Rule("weight of a foot of beam", "sides + bottom + backing")
PER_METER = Rule("the same by the meter", "pounds_per_foot * kilograms_in_pound / meters_in_foot")
BEAM_POUNDS = Rule("weight of all beams of a profile", "length / foot * pounds_per_foot")
PANEL_PER_SQUARE_FOOT = Rule(
    "weight of a square foot of panel", "thickness / foot * water * gravity"
)
NO_PANEL = Rule("no panel hangs: the ceiling that is there shows", "0")
OVER_ROOM = Rule("weight over the room's area", "pounds / (length / foot * width / foot)")
OVER_AREA = Rule("weight over the room's area", "pounds / area")
PER_SQUARE_METER = Rule(
    "the same by the square meter",
    "pounds_per_square_foot * kilograms_in_pound / (meters_in_foot * meters_in_foot)",
)


@dataclass(frozen=True, slots=True)
class HungPanel:
    """So many sheet panels or fields of boards of one size."""

    count: int
    length: Length
    width: Length


def wood_density(wood: Wood) -> NumberFigure:
    """Turn a wood into pounds per cubic foot.

    Formula: 62.4 G (1 + MC). Valid for solid wood, give or take ten percent from board to board.

    >>> from lacunar.model.woods import Species
    >>> poplar = Wood(Species.YELLOW_POPLAR, Fraction(42, 100), Fraction(12, 100))
    >>> round(wood_density(poplar).value, 2)
    Fraction(587, 20)
    """
    pounds = WATER * wood.gravity * (1 + wood.moisture)
    return DENSITY.gives(pounds, water=WATER, gravity=wood.gravity, moisture=wood.moisture)


def weights(
    beams: SetOutBeams, fixing: Fixing, panel: Panel, panels: Sequence[HungPanel]
) -> Weights:
    """Weigh every profile, all beams, the panels, and all of it over the room's area.

    A block as high as the inside is weighed as a board as thick as what a fastener passes through
    of it, over the whole length: blocks with gaps between them weigh less than that.
    """
    trim, backing = wood_density(fixing.trim), wood_density(fixing.backing)
    lengths = _lengths(beams)
    weighed = tuple(
        _beam_weight(profile, lengths[profile.id], fixing, (trim.value, backing.value))
        for profile in beams.profiles.values()
        if profile.id in lengths
    )
    sheet = panel_per_square_foot(panel, fixing)
    panels_pounds = _panels_pounds(panels, sheet.value)
    terms = {each.profile: each.pounds.value for each in weighed}
    pounds = _sum("weight of all that hangs", {**terms, "panels": panels_pounds.value})
    per_square_foot = _over_room(beams, pounds.value)
    over_room = per_square_foot.value
    return Weights(
        trim_pounds_per_cubic_foot=trim,
        backing_pounds_per_cubic_foot=backing,
        beams=weighed,
        panel_pounds_per_square_foot=sheet,
        panels_pounds=panels_pounds,
        pounds=pounds,
        pounds_per_square_foot=per_square_foot,
        kilograms_per_square_meter=PER_SQUARE_METER.gives(
            over_room * KILOGRAMS / METERS**2,
            pounds_per_square_foot=over_room,
            kilograms_in_pound=KILOGRAMS,
            meters_in_foot=METERS,
        ),
    )


def _over_room(beams: SetOutBeams, pounds: Fraction) -> NumberFigure:
    if beams.floor is not None:
        area = beams.floor.value
        return OVER_AREA.gives(pounds / area, pounds=pounds, area=area)
    length, width = (run.span.at_start.value for run in beams.runs.values())
    found = pounds / (length / FOOT * (width / FOOT))
    return OVER_ROOM.gives(found, pounds=pounds, length=length, foot=FOOT, width=width)


def panel_per_square_foot(panel: Panel, fixing: Fixing) -> NumberFigure:
    """Turn a panel into pounds per square foot: thickness · 62.4 G; nothing where none hangs."""
    if panel.kind is PanelKind.EXISTING:
        return NO_PANEL.gives(Fraction(0))
    thickness, gravity = panel.thickness, fixing.panel_gravity
    return PANEL_PER_SQUARE_FOOT.gives(
        thickness / FOOT * WATER * gravity,
        thickness=thickness,
        foot=FOOT,
        water=WATER,
        gravity=gravity,
    )


def _lengths(beams: SetOutBeams) -> Mapping[str, LengthFigure]:
    """How long the pieces of each profile are together, equal ones counted."""
    clear: dict[str, list[Length]] = {}
    for beam in beams.backed:
        clear.setdefault(beam.profile, []).extend(piece.length.value for piece in beam.pieces)
    return {
        profile: _times("clear length of all beams of a profile", Counter(lengths))
        for profile, lengths in clear.items()
    }


def _times(name: str, counted: Mapping[Length, int]) -> LengthFigure:
    terms: list[str] = []
    operands: dict[str, Length | int] = {}
    for number, (length, count) in enumerate(counted.items(), start=1):
        terms.append(f"count_{number} * length_{number}")
        operands |= {f"count_{number}": count, f"length_{number}": length}
    total = sum((length * count for length, count in counted.items()), ZERO)
    return Rule(name, " + ".join(terms)).gives(total, **operands)


def _sum(name: str, terms: Mapping[str, Fraction]) -> NumberFigure:
    return Rule(name, " + ".join(terms)).gives(sum(terms.values(), Fraction(0)), **terms)


def _beam_weight(
    profile: BeamProfile, length: LengthFigure, fixing: Fixing, densities: tuple[Fraction, Fraction]
) -> BeamWeight:
    trim, backing = densities
    parts = {
        part.name: _part(
            part.quantity,
            (part.thickness.value, part.width.value),
            backing if part.name == "backing" else trim,
        )
        for part in profile.parts
        if part.stock is not None
    }
    block = next((part for part in profile.parts if part.stock is None), None)
    if block is not None:
        parts["backing"] = _part(1, (fixing.block_through, block.width.value), backing)
    none = NO_PART.gives(Fraction(0))
    sides = parts.get("side", none)
    bottom = parts.get("bottom", none)
    behind = parts.get("backing", parts.get("upper_board", none))
    per_foot = sides.value + bottom.value + behind.value
    return BeamWeight(
        profile=profile.id,
        sides_pounds_per_foot=sides,
        bottom_pounds_per_foot=bottom,
        backing_pounds_per_foot=behind,
        pounds_per_foot=PER_FOOT.gives(
            per_foot, sides=sides.value, bottom=bottom.value, backing=behind.value
        ),
        kilograms_per_meter=PER_METER.gives(
            per_foot * KILOGRAMS / METERS,
            pounds_per_foot=per_foot,
            kilograms_in_pound=KILOGRAMS,
            meters_in_foot=METERS,
        ),
        length=length,
        pounds=BEAM_POUNDS.gives(
            length.value / FOOT * per_foot,
            length=length.value,
            foot=FOOT,
            pounds_per_foot=per_foot,
        ),
    )


def _part(quantity: int, size: tuple[Length, Length], density: Fraction) -> NumberFigure:
    """Boards by the foot: quantity · thickness · width · pounds per cubic foot."""
    thickness, width = size
    return PART.gives(
        quantity * (thickness / FOOT) * (width / FOOT) * density,
        quantity=quantity,
        thickness=thickness,
        width=width,
        foot=FOOT,
        pounds_per_cubic_foot=density,
    )


def _panels_pounds(panels: Iterable[HungPanel], per_square_foot: Fraction) -> NumberFigure:
    terms: list[str] = []
    operands: dict[str, Length | Fraction | int] = {}
    total = Fraction(0)
    for number, panel in enumerate(panels, start=1):
        length, width, count = panel.length, panel.width, panel.count
        terms.append(f"count_{number} * length_{number} / foot * width_{number} / foot")
        operands |= {
            f"count_{number}": count,
            f"length_{number}": length,
            f"width_{number}": width,
        }
        total += count * (length / FOOT) * (width / FOOT)
    if not terms:
        return NO_PANEL.gives(Fraction(0))
    rule = Rule("weight of all panels", f"({' + '.join(terms)}) * pounds_per_square_foot")
    return rule.gives(
        total * per_square_foot, **operands, foot=FOOT, pounds_per_square_foot=per_square_foot
    )
