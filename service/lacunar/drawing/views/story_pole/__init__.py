"""A story pole at full size: a strip of paper that carries the marks of a run to walls and ceiling.

It is read with the start wall on the left. Both faces of everything stand across the strip, each
with its running distance from the start wall; what is beam is hatched.
"""

from lacunar.drawing.views.story_pole.poles import Pole, poles
from lacunar.drawing.views.story_pole.strip import strip

__all__ = ["Pole", "poles", "strip"]
