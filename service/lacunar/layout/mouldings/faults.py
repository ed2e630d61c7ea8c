"""What makes mouldings impossible where they are to go."""

from collections.abc import Iterator, Sequence

from lacunar.layout.moulding_records import CofferTrim, SideCover
from lacunar.layout.mouldings.pieces import CrownInCoffers, flats_at
from lacunar.measure.length import ZERO, Length
from lacunar.model import limits
from lacunar.model.ceiling import Ceiling
from lacunar.model.faults import Fault
from lacunar.model.moulding import FlatMoulding, FlatPlace
from lacunar.model.moulding_rules import angle_out_of_bounds

# Flats that open by more than this show as a gap that no caulk hides (common practice, no source).
MOST_LAND_OPENING = Length.of_inches(1) / 16


def spring_faults(crown: CrownInCoffers) -> Iterator[Fault]:
    """The faults of measured sizes that give no spring, or one too far off the crown's own."""
    spring, opening = crown.section.spring_from_wall.value, crown.section.land_opening
    pointer = "/crown/projection" if crown.asked.drop is None else "/crown/drop"
    if not limits.SPRING.least <= spring <= limits.SPRING.most:
        yield angle_out_of_bounds(pointer, spring, limits.SPRING)
    elif opening is not None and opening.value > MOST_LAND_OPENING:
        milled = crown.asked.spring_from_wall
        yield Fault(
            code="spring_changed_too_far",
            pointer=pointer,
            message="The crown is tipped so far from the spring it is milled to that its flats open"
            " visibly.",
            remedy="Come nearer to the drop and projection it is milled to; leave out"
            " spring_from_wall if it was not measured.",
            figures={
                "milled_to": "" if milled is None else milled.text,
                "stands_at": spring.text,
                "opening": opening.value,
                "most": MOST_LAND_OPENING,
            },
        )


def bearing_faults(crown: CrownInCoffers, flats: tuple[FlatMoulding, ...]) -> Iterator[Fault]:
    """The fault of a crown that comes down past the flat moulding it lies on."""
    behind = flats_at(FlatPlace.CEILING, flats)
    drop = crown.section.drop.value
    if behind and drop > behind[-1].width:
        number = max(n for n, flat in enumerate(flats) if flat is behind[-1])
        yield Fault(
            code="moulding_without_bearing",
            pointer=f"/flat_mouldings/{number}/width",
            message="The crown comes down past the flat moulding it lies on.",
            remedy="Take a wider flat moulding, or a smaller crown.",
            figures={"crown_drop": drop, "bearing": behind[-1].width},
        )


def cover_faults(ceiling: Ceiling, covers: Sequence[SideCover]) -> Iterator[Fault]:
    """The fault of a side that is smaller than the mouldings on it; the worst one is told."""
    if ceiling.crown is None and not ceiling.flat_mouldings:
        return
    worst = min(covers, key=lambda cover: cover.side_left.value, default=None)
    if worst is None or worst.side_left.value >= ZERO:
        return
    operands = dict(worst.side_left.operands)
    sizes = {name: size for name, size in operands.items() if isinstance(size, Length)}
    yield Fault(
        code="mouldings_taller_than_side",
        pointer="/crown" if ceiling.crown is not None else "/flat_mouldings",
        message=f"The mouldings need more of the sides of {worst.profile} than is exposed.",
        remedy="Take smaller mouldings, or deeper beams.",
        figures=sizes,
    )


def room_faults(ceiling: Ceiling, trims: Sequence[CofferTrim]) -> Iterator[Fault]:
    """The faults of coffers that are filled by their mouldings, above or at their mouth."""
    moulded = ceiling.crown is not None or ceiling.flat_mouldings
    if not trims:
        return
    smallest = min(trims, key=lambda trim: min(trim.seen_length.value, trim.seen_width.value))
    seen = min(smallest.seen_length.value, smallest.seen_width.value)
    if moulded and seen <= ZERO:
        yield Fault(
            code="mouldings_fill_coffer",
            pointer="/crown" if ceiling.crown is not None else "/flat_mouldings",
            message="The mouldings leave nothing to be seen of the smallest coffer.",
            remedy="Take smaller mouldings, or ask for fewer coffers.",
            figures={"coffer": smallest.coffers[0], "seen_opening": seen},
        )
    tightest = min(trims, key=lambda trim: min(trim.mouth_length.value, trim.mouth_width.value))
    mouth = min(tightest.mouth_length.value, tightest.mouth_width.value)
    if mouth <= ZERO:
        yield Fault(
            code="mouth_closed",
            pointer="/flat_mouldings" if ceiling.flat_mouldings else "/beams",
            message="What stands out at the lower edges of the beams closes a coffer from below.",
            remedy="Ask for less overhang, thinner mouldings, or fewer coffers.",
            figures={"coffer": tightest.coffers[0], "mouth": mouth},
        )
