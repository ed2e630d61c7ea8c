"""A small sheet with one of everything a painter paints."""

from lacunar.drawing import style
from lacunar.drawing.elements import (
    Circle,
    Element,
    Face,
    Fill,
    Group,
    Polyline,
    Pt,
    Segments,
    Sheet,
    Text,
)

LINE = Polyline((Pt(30.0, 40.0), Pt(130.0, 40.0)), style.OBJECT)
"""100 mm long."""

TEXTS = (
    Text(Pt(30.0, 60.0), "6 200 (20\u2032-4 1/8\u2033)", style.TEXT),
    Text(Pt(100.0, 80.0), 'Łukasz & "Ø12" <north>', style.HEADING, Face.MEDIUM, "middle"),
    Text(Pt(180.0, 100.0), "AVATAR", style.TITLE, Face.SEMIBOLD, "end"),
    Text(Pt(20.0, 150.0), "12\u2009000 up the side", style.TEXT, anchor="middle", turned=True),
)

TICKS = Segments(((Pt(29.0, 41.0), Pt(31.0, 39.0)), (Pt(129.0, 41.0), Pt(131.0, 39.0))), style.TICK)

DIMENSION = Group("dimension", (TICKS, *TEXTS))


def sample_sheet(
    sheet_id: str = "Z-101", width: float = 279.4, height: float = 215.9, *more: Element
) -> Sheet:
    """A sheet with a 100 mm line, four texts, ticks, a filled outline and a dashed circle."""
    coffer = Group(
        "coffer",
        (
            Polyline((Pt(30, 90), Pt(80, 90), Pt(80, 140)), style.CUT, closed=True, fill=Fill.TINT),
            Circle(Pt(60.0, 110.0), 4.0, style.CENTER, Fill.WHITE),
        ),
        id="C-01",
        title="Coffer C-01",
        data={"width": "769/16 in", "cut-length": "4'-0 1/16\""},
    )
    return Sheet(
        id=sheet_id,
        title="Reflected ceiling plan",
        description="A coffer, a line and four texts.",
        width=width,
        height=height,
        children=(LINE, DIMENSION, coffer, *more),
        data={"scale": "24"},
    )
