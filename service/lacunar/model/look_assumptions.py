"""Decides what a spec leaves open about how beams look where they meet."""

from lacunar.model.assuming import Assuming
from lacunar.model.look import JointLook, Look, LookSpec, SideLook, Splices


def decide_look(look: LookSpec | None, assuming: Assuming) -> Look:
    """Turn what was said of the look into one with nothing open; see `assumptions.resolve`."""
    said, place = look or LookSpec(), "/beams/look"
    return Look(
        sides=assuming.settle(
            said.sides,
            f"{place}/sides",
            SideLook.CONTINUOUS,
            "the sides of the beams that run through run past the others",
        ),
        corners=assuming.settle(
            said.corners,
            f"{place}/corners",
            JointLook.BUTTED,
            "a butt in an inside corner stays shut when wood moves",
        ),
        bottoms=assuming.settle(
            said.bottoms,
            f"{place}/bottoms",
            JointLook.BUTTED,
            "the bottoms of the beams that run through are not cut",
        ),
        splices=assuming.settle(
            said.splices,
            f"{place}/splices",
            Splices.SCARFED,
            "a board longer than its stock with no crossing to hide the joint is scarfed",
        ),
    )
