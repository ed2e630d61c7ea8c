"""A beam's cross-section in layers, from the panel down: what its boards look like from below."""

from dataclasses import dataclass

from lacunar.layout.records import BeamProfile
from lacunar.measure.length import Length
from lacunar.model.beams import BottomJoint, FamilyProfile


@dataclass(frozen=True, slots=True)
class Layer:
    """A part of a beam's height: how far it is set in from the finished face, and its heights.

    All are millimeters of the room; heights are below zero, `inset` is so where it stands out.
    """

    inset: float
    low: float
    high: float


def layers(profile: BeamProfile, top: float, least: float) -> tuple[Layer, ...]:
    """Turn a profile into its layers from a height down; steps less than `least` are left out.

    A box is one layer, or with its bottom under the sides two; a flat beam one for each board.
    """
    low = -_mm(profile.drop.value)
    bottom = next((part for part in profile.parts if part.name == "bottom"), None)
    if bottom is None:
        return (Layer(0.0, low, top),)
    middle = low + _mm(bottom.thickness.value)
    if profile.profile is FamilyProfile.FLAT:
        upper = next((part for part in profile.parts if part.name == "upper_board"), None)
        insets = tuple(
            _mm(profile.finished_width.value - part.width.value) / profile.sides
            for part in (upper or bottom, bottom)
        )
    elif profile.bottom_joint is BottomJoint.UNDER:
        insets = (0.0, _mm(profile.reveal - profile.overhang))
    else:
        insets = (0.0, 0.0)
    if abs(insets[0] - insets[1]) < least or middle >= top:
        return (Layer(insets[1] if middle >= top else 0.0, low, top),)
    return (Layer(insets[0], middle, top), Layer(insets[1], low, middle))


def inset_at(found: tuple[Layer, ...], layer: Layer) -> float:
    """How far a beam is set in at the height of another beam's layer."""
    level = (layer.low + layer.high) / 2
    return next((each.inset for each in found if each.low <= level <= each.high), 0.0)


def _mm(length: Length) -> float:
    return float(length.millimeters)
