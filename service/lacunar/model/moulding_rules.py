"""Rules about crown and flat mouldings that need no setting out."""

from collections.abc import Iterator

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.model import limits
from lacunar.model.faults import Fault
from lacunar.model.limits import AngleBounds
from lacunar.model.moulding import CrownSpec, FlatPlace
from lacunar.model.rule_case import RuleCase, missing

# A face is measured with a tape across a rounded profile: so much may it differ from what drop and
# projection give (this project's choice).
FACE_MISMATCH = Length.of_inches(1) / 8


def angles_lie_within_bounds(case: RuleCase) -> Iterator[Fault]:
    """A spring angle near upright or level is no spring; a saw turns and tilts less than square."""
    crown = case.spec.crown or CrownSpec()
    for name, bounds in (
        ("spring_from_wall", limits.SPRING),
        ("most_miter", limits.SAW),
        ("most_bevel", limits.SAW),
    ):
        angle: Angle | None = getattr(crown, name)
        pointer = f"/crown/{name}"
        if angle is None or not case.sound(pointer) or bounds.least <= angle <= bounds.most:
            continue
        yield angle_out_of_bounds(pointer, angle, bounds)


def angle_out_of_bounds(pointer: str, angle: Angle, bounds: AngleBounds) -> Fault:
    """The fault for an angle that is none of its kind."""
    return Fault(
        code="angle_out_of_bounds",
        pointer=pointer,
        message=f"The angle is out of bounds: {bounds.reason}.",
        remedy="Check the figure; a spring angle is measured from the wall.",
        figures={"given": angle.text, "least": bounds.least.text, "most": bounds.most.text},
    )


def crown_can_be_sized(case: RuleCase) -> Iterator[Fault]:
    """A drop alone, or a projection alone, says nothing without the width of the face."""
    crown = case.spec.crown
    if crown is None or crown.face is not None:
        return
    if not case.sound("/crown/face", "/crown/drop", "/crown/projection"):
        return
    if (crown.drop is None) is not (crown.projection is None):
        yield missing("/crown/face", "The width of the crown's face")


def crown_is_wider_than_its_legs(case: RuleCase) -> Iterator[Fault]:
    """Crown stands aslant: its face is wider than its drop and than its projection."""
    crown = case.spec.crown
    if crown is None or crown.face is None:
        return
    for name in ("drop", "projection"):
        leg: Length | None = getattr(crown, name)
        if leg is not None and leg >= crown.face and case.sound(f"/crown/{name}", "/crown/face"):
            yield Fault(
                code="crown_face_too_narrow",
                pointer=f"/crown/{name}",
                message=f"The crown's {name} is no less than its face is wide.",
                remedy="Give the face as the width across the moulding, from edge to edge.",
                figures={name: leg, "face": crown.face},
            )


def crown_sizes_agree(case: RuleCase) -> Iterator[Fault]:
    """Face, drop and projection are the sides of a right triangle, as far as a tape can tell."""
    crown = case.spec.crown
    if crown is None or crown.face is None or crown.drop is None or crown.projection is None:
        return
    if not case.sound("/crown/face", "/crown/drop", "/crown/projection"):
        return
    face, drop, projection = (each.inches for each in (crown.face, crown.drop, crown.projection))
    off = FACE_MISMATCH.inches
    across = drop * drop + projection * projection
    if max(face - off, off) ** 2 <= across <= (face + off) ** 2:
        return
    yield Fault(
        code="crown_sizes_contradict",
        pointer="/crown/face",
        message="No moulding of this face has this drop and this projection.",
        remedy="Measure drop and projection again, with the flats on wall and ceiling; or leave"
        " out the face.",
        figures={"face": crown.face, "drop": crown.drop, "projection": crown.projection},
    )


def flat_mouldings_are_sized(case: RuleCase) -> Iterator[Fault]:
    """Thickness and width of a flat moulding cannot be assumed."""
    for number, moulding in enumerate(case.spec.flat_mouldings):
        for name in ("thickness", "width"):
            place = f"/flat_mouldings/{number}/{name}"
            if getattr(moulding, name) is None and case.sound(place):
                yield missing(place, f"The moulding's {name}")


def flat_mouldings_bear_on_each_other(case: RuleCase) -> Iterator[Fault]:
    """A moulding on the face of another is no wider than that one, or it lies on nothing."""
    for place in FlatPlace:
        below: Length | None = None
        for number, moulding in enumerate(case.spec.flat_mouldings):
            pointer = f"/flat_mouldings/{number}/width"
            at = moulding.at or FlatPlace.CEILING
            if at is not place or moulding.width is None or not case.sound("/flat_mouldings"):
                continue
            if below is not None and moulding.width > below:
                yield Fault(
                    code="moulding_without_bearing",
                    pointer=pointer,
                    message="The moulding is wider than the one it lies on.",
                    remedy="List the wider moulding first, or take a narrower one.",
                    figures={"width": moulding.width, "bearing": below},
                )
            below = moulding.width


MOULDING_RULES = (
    angles_lie_within_bounds,
    crown_can_be_sized,
    crown_is_wider_than_its_legs,
    crown_sizes_agree,
    flat_mouldings_are_sized,
    flat_mouldings_bear_on_each_other,
)
