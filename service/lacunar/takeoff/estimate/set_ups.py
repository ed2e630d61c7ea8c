"""Settings of a saw: how often a stop, a turn or tilt, a fence or a bevel is set anew.

Parts are made together, whatever ceiling or beam they go to, so each setting is counted once.
"""

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.measure.figure import Operand
from lacunar.takeoff.estimate.estimate_records import LaborCount
from lacunar.takeoff.estimate.words import LaborPer, Work
from lacunar.takeoff.part_records import EndCut, Part, PartEnd, PartKind
from lacunar.takeoff.quantities.quantity_records import Terms

Setting = Callable[[Part], Iterator[Hashable]]

# What a saw is turned or tilted for; a notch is sawn at a square setting.
_TURNED = (EndCut.MITRED, EndCut.COPED, EndCut.POINTED, EndCut.SCARFED, EndCut.ANGLED)
# Whose left end is another setting than the right: they cannot be turned over.
_HANDED = (PartKind.CROWN, PartKind.FLAT_MOULDING)


def set_ups(parts: Sequence[Part]) -> Iterator[LaborCount]:
    """Turn parts into the settings of a saw that they take, of each kind by itself.

    A stop for each different length of a material; a turn or tilt for each different end that is
    not square, left and right apart where a moulding cannot be turned over, a cope as it is mitred
    first; a fence for each different width that is ripped from wider stock; a bevel for each
    material with mitred long edges.
    """
    kinds: Mapping[Work, tuple[Setting, str]] = {
        Work.LENGTH_STOP: (_length, "stops: different lengths of each material"),
        Work.END_ANGLE: (_angles, "turns and tilts: different ends of each material"),
        Work.RIP_WIDTH: (_width, "fences: different widths ripped from each material"),
        Work.EDGE_BEVEL: (_bevel, "bevels: one for each material with mitred edges"),
    }
    for work, (setting, name) in kinds.items():
        yield from _counted(parts, work, setting, name)


def _counted(
    parts: Sequence[Part], work: Work, setting: Setting, name: str
) -> Iterator[LaborCount]:
    """The different settings of each material, and the marks they are first made for."""
    of_material: dict[Hashable, dict[Hashable, str]] = {}
    for part in parts:
        for each in setting(part):
            of_material.setdefault(part.material.key, {}).setdefault(each, part.mark)
    if of_material:
        rows: list[Mapping[str, Operand]] = [
            {"different": len(settings)} for settings in of_material.values()
        ]
        figure = Terms("different", rows).figure(
            name, "", Fraction(sum(map(len, of_material.values())))
        )
        marks = (mark for settings in of_material.values() for mark in settings.values())
        yield LaborCount(LaborPer.SET_UP, work, figure, tuple(dict.fromkeys(marks)))


def _length(part: Part) -> Iterator[Hashable]:
    yield part.cut_length.value


def _angles(part: Part) -> Iterator[Hashable]:
    handed = part.kind in _HANDED
    for hand, end in (("left", part.left), ("right", part.right)):
        if end.cut in _TURNED:
            yield _turned(end), hand if handed else ""


def _turned(end: PartEnd) -> Hashable:
    """An end as a saw meets it: a cope is mitred first."""
    cut = EndCut.MITRED if end.cut is EndCut.COPED else end.cut
    return cut, end.angle, end.corner


def _width(part: Part) -> Iterator[Hashable]:
    stock = part.material.width
    if part.cut_width is not None and stock is not None and part.cut_width.value < stock:
        yield part.cut_width.value


def _bevel(part: Part) -> Iterator[Hashable]:
    if part.mitred_edges:
        yield part.mitred_edges > 0
