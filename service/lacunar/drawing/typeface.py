"""Text measured by numbers alone: advance widths per em of the project's three faces.

The painters derive the faces and hand this record to composition and to the checker, so that both
know how wide a text is without cairo. The faces carry no kerning, so a width is a plain sum.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from lacunar.drawing.elements import Face


@dataclass(frozen=True, slots=True)
class Typeface:
    """Advance widths [em] by face and character; `cap_height` and `descent` [em].

    `family` gives the font family name of each face, `digest` identifies the derived font files.
    """

    family: Mapping[Face, str]
    advances: Mapping[Face, Mapping[str, float]]
    cap_height: float
    descent: float
    digest: str

    def font_size(self, height: float) -> float:
        """The font size [mm] at which capitals are `height` [mm] tall."""
        return height / self.cap_height

    def width(self, text: str, height: float, face: Face = Face.REGULAR) -> float:
        """How far `text` advances [mm] at capital height `height` [mm]; unknown letters: an em."""
        advances = self.advances[face]
        return sum(advances.get(c, 1.0) for c in text) * self.font_size(height)

    def missing(self, text: str) -> tuple[str, ...]:
        """The characters the face cannot draw, in order, each once."""
        known = self.advances[Face.REGULAR]
        return tuple(dict.fromkeys(c for c in text if c not in known))
