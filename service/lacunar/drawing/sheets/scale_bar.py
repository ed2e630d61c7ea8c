"""The title under a view, and a scale bar that stays true when a print is not."""

from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag, rectangle
from lacunar.drawing.elements import Element, Face, Fill, Group, Polyline, Pt, Text
from lacunar.drawing.paper import Scale
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.measure.length import Length
from lacunar.measure.units import Units

BAR_HEIGHT = 1.4
DIVISIONS = 4
_FEET = (Fraction(1, 6), Fraction(1, 3), Fraction(1, 2), 1, 2, 4, 8, 12, 16, 20, 40, 80)
_METERS = (
    Fraction(1, 50),
    Fraction(1, 20),
    Fraction(1, 10),
    Fraction(1, 5),
    Fraction(2, 5),
    1,
    2,
    4,
    8,
    20,
)


def bar_length(ratio: Fraction, units: Units, longest: float) -> tuple[Length, str]:
    """The longest round length whose bar is at most `longest` [mm], and its words."""
    if units is Units.INCH:
        lengths = [(Length.of_feet(n), _feet_words(n)) for n in _FEET]
    else:
        lengths = [(Length.of_millimeters(n * 1000), _meter_words(n)) for n in _METERS]
    fitting = [one for one in lengths if float(one[0].millimeters / ratio) <= longest]
    return fitting[-1] if fitting else lengths[0]


def _feet_words(feet: Fraction | int) -> str:
    return f"{feet}'" if feet >= 1 else f'{feet * 12}"'


def _meter_words(meters: Fraction | int) -> str:
    return f"{meters} m" if meters >= 1 else f"{meters * 1000} mm"


def scale_bar(view: int, ratio: Fraction, units: Units, longest: float) -> Block:
    """A bar in quarters, alternately filled, with its length at its end."""
    length, words = bar_length(ratio, units, longest)
    width = float(length.millimeters / ratio)
    top = style.TEXT + 1.6
    step = width / DIVISIONS
    filled = tuple(
        Polyline(
            (
                Pt(step * n, top),
                Pt(step * (n + 1), top),
                Pt(step * (n + 1), top + BAR_HEIGHT),
                Pt(step * n, top + BAR_HEIGHT),
            ),
            None,
            closed=True,
            fill=Fill.BLACK,
        )
        for n in range(0, DIVISIONS, 2)
    )
    children: tuple[Element, ...] = (
        rectangle(0, top, width, BAR_HEIGHT),
        *filled,
        Text(Pt(0, style.TEXT), "0", style.TEXT),
        Text(Pt(width, style.TEXT), words, style.TEXT, anchor="middle"),
    )
    data = {"view": f"view-{view}", "length-mm": decimal_mm(length)}
    group = Group("scale-bar", children, id=f"scale-bar-view-{view}", data=data)
    return Block(width + 8.0, top + BAR_HEIGHT + 0.6, (group,))


def view_title(
    number: int, name: str, scale: Scale, notes: tuple[str, ...], typeface: Typeface
) -> Block:
    """The number in a ring, the view's name over a rule, then its scale and notes in lines."""
    ring = Tag("view", str(number), str(number), round=True).drawn(Pt(3.4, 3.4), typeface)
    left = 9.0
    width = typeface.width(name, style.HEADING, Face.SEMIBOLD)
    lines = (f"SCALE {scale.text}", *notes)
    words = [
        Text(Pt(left, 3.4 + 0.2), name, style.HEADING, Face.SEMIBOLD),
        *(
            Text(Pt(left, 8.6 + style.LINE_PITCH * n), line, style.TEXT)
            for n, line in enumerate(lines)
        ),
    ]
    widest = max(width, *(typeface.width(line, style.TEXT) for line in lines))
    rule = Polyline((Pt(left, 4.9), Pt(left + widest, 4.9)), style.RULE)
    group = Group("view-title", (ring, *words, rule), id=f"title-view-{number}")
    return Block(left + widest, 9.6 + style.LINE_PITCH * (len(lines) - 1), (group,))
