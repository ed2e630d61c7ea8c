"""How beams look where they meet: what runs past, what butts, what is mitred, what is spliced."""

from dataclasses import dataclass
from enum import StrEnum


class SideLook(StrEnum):
    """Whether the sides of a beam run past a crossing, or every coffer has four of its own."""

    CONTINUOUS = "continuous"
    PER_COFFER = "per_coffer"


class JointLook(StrEnum):
    """Whether one board ends against the other, or both are cut to meet on a slant."""

    BUTTED = "butted"
    MITRED = "mitred"


class Splices(StrEnum):
    """How a board longer than its stock may be parted.

    `at_crossings`: sides behind a beam that ends at them, bottoms at the face line of one, and
    nowhere else; `scarfed`: there, and with a scarf where that does not reach.
    """

    AT_CROSSINGS = "at_crossings"
    SCARFED = "scarfed"


@dataclass(frozen=True, slots=True)
class Look:
    """How all beams of a ceiling meet.

    `corners` is how sides meet in the corners of coffers, and sides and bottoms of wall beams in
    those of the room; `bottoms` how bottoms meet where two beams cross.
    """

    sides: SideLook
    corners: JointLook
    bottoms: JointLook
    splices: Splices


@dataclass(frozen=True, slots=True)
class LookSpec:
    """What was said of the look; see `Look`."""

    sides: SideLook | None = None
    corners: JointLook | None = None
    bottoms: JointLook | None = None
    splices: Splices | None = None
