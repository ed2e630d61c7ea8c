"""Two drawings of a sheet, told apart in words: what is new, gone, moved, or says otherwise."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import zip_longest
from typing import NamedTuple
from xml.etree import ElementTree

MOST_LINES = 25
MOST_NAMES = 6
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
_PLACES = ("d", "x", "y", "cx", "cy", "transform")
_HAIR = 0.0015
"""Coordinates are written to a thousandth of a millimeter."""


class Mark(NamedTuple):
    """One path, circle or text: the form of it, its coordinates, and its words."""

    form: tuple[tuple[str, str], ...]
    places: tuple[float, ...]
    words: str


@dataclass
class Part:
    """What stands in a group itself: its data, and its marks in order."""

    data: Mapping[str, str]
    marks: list[Mark] = field(default_factory=list)


def differences(old: str, new: str) -> list[str]:
    """What is to be seen or read in one drawing and not in the other, at most so many lines.

    Groups go by their ids, others by their class in the nearest group with an id.
    """
    before, after = _parts(old), _parts(new)
    told: dict[str, list[str]] = {}
    for name in dict.fromkeys((*before, *after)):
        for what in _told(before.get(name), after.get(name)):
            told.setdefault(what, []).append(name)
    lines = [f"{_listed(names)}: {what}" for what, names in told.items()]
    if len(lines) > MOST_LINES:
        lines[MOST_LINES:] = [f"and {len(lines) - MOST_LINES} more differences"]
    if not lines and old != new:
        lines = ["nothing to be seen: the files differ in their fonts or in how they are written"]
    return lines


def _parts(svg: str) -> dict[str, Part]:
    root = ElementTree.fromstring(svg)
    parts: dict[str, Part] = {}
    _collect(root, "the sheet", parts)
    return parts


def _collect(element: ElementTree.Element, name: str, parts: dict[str, Part]) -> None:
    data = {key: value for key, value in element.attrib.items() if key.startswith("data-")}
    size = {key: element.attrib[key] for key in ("viewBox",) if key in element.attrib}
    part = parts.setdefault(name, Part({**data, **size}))
    for child in element:
        tag = child.tag.rpartition("}")[2]
        if tag == "g":
            inner = child.get("id") or f"{name} {child.get('class', '')}"
            _collect(child, inner, parts)
        elif tag in ("path", "circle", "text"):
            part.marks.append(_mark(tag, child))
        elif tag in ("title", "desc"):
            part.marks.append(Mark((("", tag),), (), child.text or ""))


def _mark(tag: str, element: ElementTree.Element) -> Mark:
    numbers: list[float] = []
    form = [("", tag)]
    for key, value in sorted(element.attrib.items()):
        if key in _PLACES:
            numbers += map(float, _NUMBER.findall(value))
            form.append((key, _NUMBER.sub("", value)))
        else:
            form.append((key, value))
    return Mark(tuple(form), tuple(numbers), (element.text or "").strip())


def _told(before: Part | None, after: Part | None) -> Iterator[str]:
    """What became of one group; what is told alike of several is told once."""
    if before is None or after is None:
        yield "new" if before is None else "gone"
        return
    for key in dict.fromkeys((*before.data, *after.data)):
        was, now = before.data.get(key), after.data.get(key)
        if was != now:
            yield f"{key} is {now!r}, was {was!r}"
    changes = [
        change
        for one, other in zip_longest(before.marks, after.marks)
        for change in _change(one, other)
    ]
    yield from dict.fromkeys(changes)


def _change(was: Mark | None, now: Mark | None) -> Iterator[str]:
    if was is None or now is None:
        mark, what = (now, "has more") if was is None else (was, "has no more")
        assert mark is not None
        yield f"{what} {mark.form[0][1]} {mark.words!r}".removesuffix(" ''")
        return
    if was.words != now.words:
        yield f"says {now.words!r}, said {was.words!r}"
    if was.form != now.form:
        changed = dict(now.form).items() ^ dict(was.form).items()
        yield f"is drawn otherwise ({', '.join(sorted({key or 'kind' for key, _ in changed}))})"
    elif was.places != now.places:
        yield _way(was, now)


def _way(was: Mark, now: Mark) -> str:
    """Where to a mark moved, if all of it moved alike."""
    offs = [b - a for a, b in zip(was.places, now.places, strict=True)]
    if dict(was.form).keys() & {"transform"}:
        offs = offs[-2:]  # the place stands in the transform, after the angle, and again as x and y
    across, down = offs[0::2], offs[1::2]
    if max(across) - min(across) > _HAIR or (down and max(down) - min(down) > _HAIR):
        return "has another shape"
    return f"moved {_told_way(across[0], 'right', 'left')}, {_told_way(down[0], 'down', 'up')}"


def _told_way(off: float, ahead: str, back: str) -> str:
    return f"{abs(off):.2f} mm {ahead if off >= 0 else back}"


def _listed(names: list[str]) -> str:
    more = len(names) - MOST_NAMES
    return ", ".join(names[:MOST_NAMES]) + (f" and {more} more" if more > 0 else "")
