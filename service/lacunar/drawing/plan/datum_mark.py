"""The datum on the plan: a ring about the corner that both runs are measured from, and the word."""

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Fill, Group, Pt, Text
from lacunar.drawing.plan.clear_places import Occupied, text_box
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.typeface import Typeface

WORD = "DATUM"
RADIUS = 1.6
PLACES = (
    (1.0, 8.2),
    (-1.0, 8.2),
    (-3.0, 8.2),
    *((across, down) for down in (8.2, 12.4) for across in (15.0, 18.0, 21.0, 24.0, 28.0, 32.0)),
    *((across, down) for down in (12.4, 16.6, 20.8) for across in (-1.0, -3.0)),
)
"""Where the word ends from the corner [mm right, mm down], the best first."""


def datum_mark(
    frame: PlanFrame, about: tuple[Element, ...], typeface: Typeface, *, crowded: bool = False
) -> Group:
    """The ring and the word, which in an odd room meets nothing of what is drawn `about`.

    Nor does it in any room on a plan that is `crowded` at the datum.
    """
    layout = frame.layout
    at = frame.origin if layout.outlined is not None else frame.point(layout.outline[0])
    ring = Circle(at, RADIUS, style.LEADER, Fill.NONE)
    word = _word(at, PLACES[0])
    crooked = layout.crooked is not None and not layout.crooked.square
    if crowded or crooked or layout.outlined is not None:
        busy = Occupied(typeface, (*about, ring))
        words = [_word(at, place) for place in PLACES]
        clear = (
            w for w in words if busy.is_free(text_box(w, typeface).grown(style.TEXT_CLEARANCE))
        )
        word = next(clear, word)
    return Group("datum", (ring, word), id="datum", title="Datum: both runs start here")


def _word(at: Pt, place: tuple[float, float]) -> Text:
    return Text(at.moved(*place), WORD, style.TEXT, anchor="end")
