"""The point on pictures of the saw: pieces lie, and the table turns, as they are laid out."""

from collections.abc import Iterator
from math import atan, degrees

from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import extent
from lacunar.drawing.checker.subject import Subject

TURN_OFF = 0.2
"""How far the drawn cut may be off the angle that is printed [deg]."""


def pictures_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 154: each picture is of a cut as laid out, turned by the angle that it prints."""
    crown = subject.facts.details.crown
    cuts = crown.cuts if crown else ()
    for group in subject.sheet.of_kind("saw-picture"):
        data = group.data
        cut = {
            "lies": data.get("lies", ""),
            "end": data.get("end", ""),
            "against_fence": data.get("fence", ""),
            "table": data.get("table", ""),
            "keep": data.get("keep", ""),
        }
        where = f"{cut['lies']} {cut['end']}"
        if cut not in cuts:
            yield subject.sheet.finding(154, where, "is no cut of this crown")
        for message in _drawn(subject, group):
            yield subject.sheet.finding(154, where, message)


def _drawn(subject: Subject, group: GroupRead) -> Iterator[str]:
    sheet, data = subject.sheet, group.data
    blades = [p.spots for each in sheet.of_kind("blade", group) for p in sheet.own_paths(each)]
    kept = [p.spots for each in sheet.of_kind("kept", group) for p in sheet.own_paths(each)]
    if len(blades) != 1 or len(kept) != 1:
        yield "has no blade, or nothing that is kept"
        return
    (top, foot), piece = blades[0][:2], kept[0]
    turned = degrees(atan((foot.x - top.x) / (foot.y - top.y)))
    told = data.get("miter", "").removesuffix("°")
    sign = -1 if data.get("table") == "left" else 1
    words = " ".join(each.text for each in sheet.letterings_in(group))
    if f"TABLE {told}° {data.get('table', '').upper()}" not in words:
        yield "does not say how the table turns"
    if not told or abs(turned - sign * float(told)) > TURN_OFF:
        yield f"its cut is turned by {turned:.1f}, and not by {told} to the {data.get('table')}"
    middle = extent(piece).middle.x
    if (middle < top.x) is not (data.get("keep") == "left"):
        yield f"keeps the other side than the {data.get('keep')}"
