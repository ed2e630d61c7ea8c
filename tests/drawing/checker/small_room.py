"""A room of 10 by 8 feet, laid out and drawn by hand: the sheet the checker's tests spoil.

Along the length two beams of 5 1/2" between bare walls, (120 - 2 * 5 1/2) / 3 = 36 1/3" clear; XB-1
cases a member of 3 1/2". Along the width a half beam of 2 3/4" at W4 and one beam,
(96 - 2 3/4 - 5 1/2) / 2 = 43 7/8" clear. Marks are to 1/16": 36 1/3 goes to 36 5/16, 41 5/6 to
41 13/16, 78 1/6 to 78 3/16, 83 2/3 to 83 11/16, the centers 39 1/12 to 39 1/16 and 80 11/12 to
80 15/16.
Crosswise beams run through. Crown of 2" projection in frames 1/16" smaller than their openings
leaves 36 1/3 - 1/16 - 2 * 2 = 32 13/48 by 43 7/8 - 4 1/16 = 39 13/16 to be seen. Drawn at
1/2" = 1'-0" on tabloid.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.elements import (
    Circle,
    Element,
    Face,
    Fill,
    Group,
    Pen,
    Polyline,
    Pt,
    Segments,
    Sheet,
    Text,
)

SCALE = 24
DATUM = Pt(90.0, 200.0)
PAGE = (431.8, 279.4)
FRAME = (12.7, 12.7, 419.1, 266.7)
TITLE_BLOCK = (335.1, 226.7, 419.1, 266.7)
ZERO, LENGTH, WIDTH = Fraction(0), Fraction(120), Fraction(96)
# How far lines across each run are from the datum, in inches.
CROSSWISE = {
    "XB-1": (Fraction(109, 3), Fraction(251, 6)),
    "XB-2": (Fraction(469, 6), Fraction(251, 3)),
}
LENGTHWISE = {"LB-1": (Fraction("46.625"), Fraction("52.125"))}
WALL_BEAM = (ZERO, Fraction("2.75"))
MEMBER = (Fraction(451, 12), Fraction(487, 12))
COLUMNS = (
    (ZERO, CROSSWISE["XB-1"][0]),
    (CROSSWISE["XB-1"][1], CROSSWISE["XB-2"][0]),
    (CROSSWISE["XB-2"][1], LENGTH),
)
# What a frame's fit and crown on both sides take of an opening: 1/16 + 2 * 2.
CROWN = Fraction(65, 16)
ROWS = ((WALL_BEAM[1], LENGTHWISE["LB-1"][0]), (LENGTHWISE["LB-1"][1], WIDTH))


@dataclass(frozen=True)
class Mark:
    """A mark of a run: the stop's name, its exact place and rounded place in inches, as printed."""

    stop: str
    exact: Fraction
    mark: Fraction
    printed: str


def _mark(stop: str, exact: Fraction, mark: str, printed: str) -> Mark:
    whole, _, part = mark.partition(" ")
    return Mark(stop, exact, Fraction(whole) + Fraction(part or 0), printed)


FACES = {
    "length": (
        _mark("W1", ZERO, "0", '0"'),
        _mark("XB-1:near", CROSSWISE["XB-1"][0], "36 5/16", "3'-0 5/16\""),
        _mark("XB-1:far", CROSSWISE["XB-1"][1], "41 13/16", "3'-5 13/16\""),
        _mark("XB-2:near", CROSSWISE["XB-2"][0], "78 3/16", "6'-6 3/16\""),
        _mark("XB-2:far", CROSSWISE["XB-2"][1], "83 11/16", "6'-11 11/16\""),
        _mark("W3", LENGTH, "120", "10'-0\""),
    ),
    "width": (
        _mark("W4", ZERO, "0", '0"'),
        _mark("WB-1:far", WALL_BEAM[1], "2 3/4", '2 3/4"'),
        _mark("LB-1:near", LENGTHWISE["LB-1"][0], "46 5/8", "3'-10 5/8\""),
        _mark("LB-1:far", LENGTHWISE["LB-1"][1], "52 1/8", "4'-4 1/8\""),
        _mark("W2", WIDTH, "96", "8'-0\""),
    ),
}
CENTERS = {
    "length": (
        FACES["length"][0],
        _mark("XB-1:center", Fraction(469, 12), "39 1/16", "3'-3 1/16\""),
        _mark("XB-2:center", Fraction(971, 12), "80 15/16", "6'-8 15/16\""),
        FACES["length"][-1],
    ),
    "width": (
        FACES["width"][0],
        _mark("LB-1:center", Fraction("49.375"), "49 3/8", "4'-1 3/8\""),
        FACES["width"][-1],
    ),
}
# The segments as printed, each the difference of its two marks: 36 5/16 - 0, 41 13/16 - 36 5/16, …
SEGMENTS = {
    ("length", "openings"): ("3'-0 5/16\"", '5 1/2"', "3'-0 3/8\"", '5 1/2"', "3'-0 5/16\""),
    ("length", "centers"): ("3'-3 1/16\"", "3'-5 7/8\"", "3'-3 1/16\""),
    ("length", "overall"): ("10'-0\"",),
    ("width", "openings"): ('2 3/4"', "3'-7 7/8\"", '5 1/2"', "3'-7 7/8\""),
    ("width", "centers"): ("4'-1 3/8\"", "3'-10 5/8\""),
    ("width", "overall"): ("8'-0\"",),
}
# How far out each string stands [mm], and which figures are led out.
OFFSETS = {"openings": 13.0, "centers": 25.0, "overall": 33.0}
LED_OUT = ('5 1/2"', '2 3/4"')


def paper(inches: Fraction) -> float:
    """A length of the room in millimeters of paper."""
    return float(inches * Fraction("25.4") / SCALE)


def at(x: Fraction, y: Fraction) -> Pt:
    """A place on the ceiling on paper."""
    return DATUM.moved(paper(x), -paper(y))


def along(run: str, place: float, out: float) -> Pt:
    """A place along a run's strings, so far out of the room [mm of paper]."""
    if run == "length":
        return Pt(DATUM.x + place, DATUM.y - paper(WIDTH) - out)
    return Pt(DATUM.x - out, DATUM.y - place)


def _rectangle(box: tuple[float, float, float, float], pen: Pen) -> Polyline:
    left, top, right, bottom = box
    corners = (Pt(left, top), Pt(right, top), Pt(right, bottom), Pt(left, bottom))
    return Polyline(corners, pen, closed=True)


def _tag(kind: str, of: str, center: Pt, leader: tuple[Pt, Pt] | None = None) -> Group:
    outline = _rectangle((center.x - 5, center.y - 2.6, center.x + 5, center.y + 2.6), style.FINE)
    label = Text(center.moved(0, 1.25), of, style.TEXT, Face.SEMIBOLD, "middle")
    lines = (Polyline(leader, style.LEADER),) if leader else ()
    return Group("tag", (*lines, outline, label), f"tag-{kind}-{of}", data={"kind": kind, "of": of})


def _tags() -> tuple[Group, ...]:
    """Beams below and right of the plan, the member under its beam, walls just inside."""
    tags = []
    for name, faces in CROSSWISE.items():
        foot = at(sum(faces, ZERO) / 2, ZERO)
        tags.append(_tag("beam", name, foot.moved(0, 10), (foot, foot.moved(0, 7.4))))
    foot = at(sum(MEMBER, ZERO) / 2, ZERO)
    tags.append(_tag("member", "S1", foot.moved(0, 18)))
    for name, faces in (*LENGTHWISE.items(), ("WB-1", WALL_BEAM)):
        foot = at(LENGTH, sum(faces, ZERO) / 2)
        tags.append(_tag("beam", name, foot.moved(12, 0), (foot, foot.moved(7, 0))))
    low, left = at(COLUMNS[0][1] / 2, ROWS[0][0]), at(ZERO, sum(ROWS[0], ZERO) / 4)
    high, right = at(COLUMNS[0][1] / 2, WIDTH), at(LENGTH, sum(ROWS[0], ZERO) / 4)
    walls = {
        "W1": left.moved(6, 0),
        "W2": high.moved(0, 4),
        "W3": right.moved(-6, 0),
        "W4": low.moved(0, -4),
    }
    tags.extend(_tag("wall", wall, center) for wall, center in walls.items())
    return tuple(tags)


def _walls() -> tuple[Group, ...]:
    corners = [
        at(x, y)
        for x, y in ((ZERO, ZERO), (ZERO, WIDTH), (LENGTH, WIDTH), (LENGTH, ZERO), (ZERO, ZERO))
    ]
    names = ("W1", "W2", "W3", "W4")
    return tuple(
        Group("wall", (Polyline(ends, style.WALL),), id=f"wall-{name}", data={"wall": name})
        for name, ends in zip(names, pairwise(corners), strict=True)
    )


def _coffers() -> tuple[Group, ...]:
    coffers = []
    for row, (low, high) in enumerate(ROWS, start=1):
        for column, (left, right) in enumerate(COLUMNS, start=1):
            name = f"{' AB'[row]}{column}"
            corners = (at(left, low), at(right, low), at(right, high), at(left, high))
            outline = Polyline(corners, None, closed=True, fill=Fill.WHITE)
            tag = _tag("coffer", name, at((left + right) / 2, (low + high) / 2))
            sizes = {"length-mm": _mm(right - left), "width-mm": _mm(high - low)}
            data = {"id": name, "row": str(row), "column": str(column), **sizes}
            group = Group("coffer", (outline, tag), f"coffer-{name}", f"Coffer {name}", data)
            coffers.append(group)
    return tuple(coffers)


def _mm(inches: Fraction) -> str:
    return f"{float(inches * Fraction('25.4')):.6f}"


def _crown() -> tuple[Group, ...]:
    """The seen opening in each coffer, with a line from each of its corners to the coffer's."""
    drawn = []
    inset = CROWN / 2
    for row, (low, high) in enumerate(ROWS, start=1):
        for column, (left, right) in enumerate(COLUMNS, start=1):
            corners = [(left, low), (right, low), (right, high), (left, high)]
            seen = [
                at(x + (inset if x == left else -inset), y + (inset if y == low else -inset))
                for x, y in corners
            ]
            miters = tuple(zip((at(x, y) for x, y in corners), seen, strict=True))
            lines = (Polyline(tuple(seen), style.FINE, closed=True), Segments(miters, style.FINE))
            name = f"{' AB'[row]}{column}"
            drawn.append(Group("crown", lines, f"crown-{name}", data={"id": name}))
    return tuple(drawn)


def _stated(faces: tuple[Fraction, Fraction]) -> dict[str, str]:
    near, far = (_mm(face) for face in faces)
    return {"near-mm": near, "far-mm": far}


def _beams() -> tuple[Group, ...]:
    beams = []
    for name, faces in CROSSWISE.items():
        edges = [Polyline((at(x, WALL_BEAM[1]), at(x, WIDTH)), style.OBJECT) for x in faces]
        data = {"id": name, "on": "length", **_stated(faces)}
        beams.append(Group("beam", tuple(edges), f"beam-{name}", f"Beam {name}", data))
    for name, faces in LENGTHWISE.items():
        edges = [
            Polyline((at(left, y), at(right, y)), style.OBJECT)
            for left, right in COLUMNS
            for y in faces
        ]
        data = {"id": name, "on": "width", **_stated(faces)}
        beams.append(Group("beam", tuple(edges), f"beam-{name}", f"Beam {name}", data))
    face = Polyline((at(ZERO, WALL_BEAM[1]), at(LENGTH, WALL_BEAM[1])), style.OBJECT)
    data = {"id": "WB-1", "wall": "W4", **_stated(WALL_BEAM)}
    beams.append(Group("wall-beam", (face,), "wall-beam-WB-1", "Wall beam WB-1", data))
    hidden = [Polyline((at(x, ZERO), at(x, WIDTH)), style.HIDDEN) for x in MEMBER]
    beams.append(Group("member", tuple(hidden), "member-S1", "Member S1", {"id": "S1"}))
    return tuple(beams)


def _string(run: str, name: str, marks: Sequence[Mark]) -> Group:
    texts, out = SEGMENTS[run, name], OFFSETS[name]
    places = [paper(mark.exact) for mark in marks]
    dimensions = [
        _dimension(run, name, number, ends, text)
        for number, (ends, text) in enumerate(zip(pairwise(marks), texts, strict=True), start=1)
    ]
    ticks = tuple(
        (along(run, place, out).moved(-1.15, 1.15), along(run, place, out).moved(1.15, -1.15))
        for place in places
    )
    reach = 2.0 if name == "openings" else out - 1.8
    extensions = tuple((along(run, at, reach), along(run, at, out + 1.8)) for at in places)
    children = (
        Group("extension-lines", (Segments(extensions, style.DIMENSION),)),
        *dimensions,
        Group("ticks", (Segments(ticks, style.TICK),)),
    )
    axis = "x" if run == "length" else "y"
    data = {"run": run, "string": name, "axis": axis}
    return Group("dimension-string", children, f"string-{run}-{name}", data=data)


def _dimension(run: str, name: str, number: int, ends: tuple[Mark, Mark], text: str) -> Group:
    start, end = ends
    out, turned = OFFSETS[name], run == "width"
    near, far = paper(start.exact), paper(end.exact)
    middle = (near + far) / 2
    children: list[Element] = [
        Polyline((along(run, near, out), along(run, far, out)), style.DIMENSION)
    ]
    lifted = 3.6 if text in LED_OUT else 0.0
    if lifted:
        children.append(
            Polyline((along(run, middle, out), along(run, middle, out + 3.5)), style.LEADER)
        )
    place = along(run, middle, out + 1.0 + lifted)
    children.append(Text(place, text, style.TEXT, Face.MEDIUM, "middle", turned))
    data = {
        "from": start.stop,
        "to": end.stop,
        "value": f"{end.mark - start.mark} in",
        "exact-mm": _mm(end.exact - start.exact),
        "led-out": "yes" if lifted else "no",
    }
    return Group("dimension", tuple(children), f"dim-{run}-{name}-{number}", text, data)


def _view() -> Group:
    strings = [
        _string(run, name, marks)
        for run in ("length", "width")
        for name, marks in (
            ("openings", FACES[run]),
            ("centers", CENTERS[run]),
            ("overall", (FACES[run][0], FACES[run][-1])),
        )
    ]
    room = (at(ZERO, ZERO), at(LENGTH, ZERO), at(LENGTH, WIDTH), at(ZERO, WIDTH))
    field = Polyline(room, None, closed=True, fill=Fill.TINT)
    ceiling = Group(
        "object", (field, *_coffers(), *_crown(), *_beams(), *_walls()), id="object-view-1"
    )
    datum = Group("datum", (Circle(DATUM, 1.6, style.LEADER),), id="datum")
    data = {"view": "reflected-ceiling-plan", "scale": "24", "scale-text": '1/2" = 1\'-0"'}
    return Group("view", (ceiling, datum, *_tags(), *strings), "view-1", "Plan", data)


def _scale_bar() -> Group:
    # 4 feet of 304.8 mm at 1:24 are 50.8 mm.
    outline = _rectangle((90.0, 230.0, 140.8, 231.4), style.FINE)
    filled = (Pt(90.0, 230.0), Pt(102.7, 230.0), Pt(102.7, 231.4), Pt(90.0, 231.4))
    words = (
        Text(Pt(90.0, 228.4), "0", style.TEXT),
        Text(Pt(140.8, 228.4), "4'", style.TEXT, anchor="middle"),
    )
    children = (outline, Polyline(filled, None, closed=True, fill=Fill.BLACK), *words)
    data = {"view": "view-1", "length-mm": "1219.2"}
    return Group("scale-bar", children, "scale-bar-view-1", data=data)


def _marks_table(run: str, top: float) -> Group:
    listed = sorted((*FACES[run][1:-1], *CENTERS[run][1:-1]), key=lambda mark: mark.exact)
    rows: dict[str, list[Mark]] = {}
    for mark in listed:
        rows.setdefault(mark.stop.partition(":")[0], []).append(mark)
    groups = []
    for number, (of, marks) in enumerate(rows.items()):
        y = top + 5.0 * number
        cells: list[Element] = [Text(Pt(270.0, y), of, style.TEXT, Face.SEMIBOLD)]
        for mark in marks:
            stop = mark.stop.partition(":")[2]
            kind, side = ("center", "at") if stop == "center" else ("face", stop)
            x = {"near": 310.0, "at": 340.0, "far": 370.0}[side]
            text = Text(Pt(x, y), mark.printed, style.TEXT, anchor="end")
            data = {"kind": kind, "side": side, "value": f"{mark.mark} in"}
            cells.append(Group("mark", (text,), data=data))
        groups.append(Group("mark-row", tuple(cells), data={"of": of}))
    return Group("marks-table", tuple(groups), f"marks-{run}", data={"run": run})


def small_sheet() -> Sheet:
    """The sheet, correct in every point."""
    words = Text(Pt(337.0, 240.0), "VERIFY IN FIELD", style.TEXT, Face.MEDIUM)
    title_block = Group("title-block", (_rectangle(TITLE_BLOCK, style.FINE), words), "title-block")
    children = (
        Group("frame", (_rectangle(FRAME, style.FRAME),), id="frame"),
        _view(),
        _scale_bar(),
        _marks_table("length", 40.0),
        _marks_table("width", 70.0),
        title_block,
    )
    data = {"sheet": "Z-101", "paper": "tabloid", "units": "in", "digest": "0" * 64}
    return Sheet("Z-101", "Plan", "A small room", *PAGE, children, {**data, "step": "1/16"})
