"""The small room's layout as JSON, as far as a sheet is held against it."""

from fractions import Fraction

from tests.drawing.checker.small_room import (
    CENTERS,
    COLUMNS,
    CROSSWISE,
    CROWN,
    FACES,
    LENGTH,
    LENGTHWISE,
    MEMBER,
    ROWS,
    WALL_BEAM,
    WIDTH,
    ZERO,
)


def small_layout() -> dict[str, object]:
    """The room's layout as JSON, as far as a sheet is held against it."""
    return {
        "ceiling": {"units": "in", "mark_to": "1/16"},
        "runs": {"length": {"span": _both(LENGTH)}, "width": {"span": _both(WIDTH)}},
        "beams": [
            *(_beam(name, "length", faces) for name, faces in CROSSWISE.items()),
            *(_beam(name, "width", faces) for name, faces in LENGTHWISE.items()),
        ],
        "wall_beams": [_wall_beam()],
        "coffers": [
            {
                "id": f"{' AB'[row]}{column}",
                "row": row,
                "column": column,
                "corners": [
                    {"x": _length(x), "y": _length(y)}
                    for x, y in ((left, low), (right, low), (right, high), (left, high))
                ],
            }
            for row, (low, high) in enumerate(ROWS, start=1)
            for column, (left, right) in enumerate(COLUMNS, start=1)
        ],
        "mouldings": {
            "crown": {},
            "coffers": [
                {
                    "coffers": [f"{' AB'[row]}{column}"],
                    "seen_length": _length(right - left - CROWN),
                    "seen_width": _length(high - low - CROWN),
                }
                for row, (low, high) in enumerate(ROWS, start=1)
                for column, (left, right) in enumerate(COLUMNS, start=1)
            ],
        },
        "outline": [
            {"x": _length(x), "y": _length(y)}
            for x, y in ((ZERO, ZERO), (LENGTH, ZERO), (LENGTH, WIDTH), (ZERO, WIDTH))
        ],
        "marks": [{"run": run, "end": "start", "marks": _marks(run)} for run in FACES],
    }


def _length(inches: Fraction) -> dict[str, object]:
    return {"exact": f"{inches} in"}


def _both(inches: Fraction) -> dict[str, object]:
    return {"at_start": _length(inches), "at_end": _length(inches)}


def _faces(faces: tuple[Fraction, Fraction]) -> dict[str, object]:
    return {"near": _both(faces[0]), "far": _both(faces[1])}


def _wall_beam() -> dict[str, object]:
    pieces = [{"start": _length(ZERO), "end": _length(LENGTH)}]
    return {"id": "WB-1", "wall": "W4", "on": "width", **_faces(WALL_BEAM), "pieces": pieces}


def _beam(name: str, on: str, faces: tuple[Fraction, Fraction]) -> dict[str, object]:
    pieces = [(WALL_BEAM[1], WIDTH)] if on == "length" else COLUMNS
    return {
        "id": name,
        "on": on,
        **_faces(faces),
        "center": _both(sum(faces, ZERO) / 2),
        "pieces": [{"start": _length(start), "end": _length(end)} for start, end in pieces],
        "member": _member() if name == "XB-1" else None,
    }


def _member() -> dict[str, object]:
    return {"name": "S1", "start": _length(ZERO), "end": _length(WIDTH), **_faces(MEMBER)}


def _marks(run: str) -> list[dict[str, object]]:
    marks: list[dict[str, object]] = []
    for mark in (*FACES[run], *CENTERS[run][1:-1]):
        of, _, stop = mark.stop.partition(":")
        kind = {"": "wall", "center": "center"}.get(stop, "face")
        side = {"": "at", "center": "at"}.get(stop, stop)
        at = _length(mark.mark)
        marks.append({"kind": kind, "of": of, "side": side, "exact": at, "mark": at})
    return marks
