"""The mouldings of a corner: flat ones at the ceiling and at the lower edges, nailers and crown.

All are mitred in the corner, but for nailers, which are butted.
"""

from collections.abc import Iterator, Sequence

from lacunar.drawing.solids.corner import Corner, Extent
from lacunar.drawing.solids.corner_boards import Put, mm, side_heights
from lacunar.drawing.solids.space import Place, Solid, prism
from lacunar.layout.fitting_records import Stage
from lacunar.layout.panel_stack import panel_stack
from lacunar.model.moulding import CrownMethod, FlatPlace
from lacunar.model.room import RunName

Section = Sequence[tuple[float, float]]


def trim_bodies(corner: Corner) -> Iterator[Put]:
    """Every moulding along both sides of the corner."""
    ceiling = corner.layout.ceiling
    top = -mm(panel_stack(ceiling.panel).thickness)
    out = dict.fromkeys(FlatPlace, 0.0)
    for flat in ceiling.flat_mouldings:
        start = out[flat.at]
        out[flat.at] = start + mm(flat.thickness)
        for run in RunName:
            profile = corner.profiles[run]
            if flat.at is FlatPlace.CEILING:
                heights = top - mm(flat.width), top
                stage = Stage.CEILING_MOULDINGS
            elif profile is not None:
                low, _ = side_heights(corner, profile)
                heights = low, low + mm(flat.width)
                stage = Stage.EDGE_MOULDINGS
            else:
                continue
            yield stage, _flat(corner, run, (start, out[flat.at]), heights)
    yield from _crown(corner, out[FlatPlace.CEILING], top)


def _flat(corner: Corner, run: RunName, out: Extent, heights: Extent) -> Solid:
    """A flat moulding so far out from the side, mitred at the corner."""
    near, far = out
    ring = ((-near, -corner.reach), (-far, -corner.reach), (-far, -far), (-near, -near))
    turned = ring if run is RunName.LENGTH else tuple((y, x) for x, y in ring)
    return prism((corner.coffer.id, "flat"), turned, *heights)


def _crown(corner: Corner, out: float, top: float) -> Iterator[Put]:
    section = corner.layout.mouldings.crown
    asked = corner.layout.ceiling.crown
    if section is None or asked is None:
        return
    drop, projection = mm(section.drop.value), mm(section.projection.value)
    back = mm(section.back_drop.value), mm(section.back_projection.value)
    framed = asked.method is CrownMethod.BENCH_FRAME
    stage = Stage.CROWN_FRAMES if framed else Stage.COPED_CROWN
    shape = ((out, top - drop), (out + projection, top), (out + back[1], top), (out, top - back[0]))
    for run in RunName:
        if section.nailer is not None:
            deep, high = mm(section.nailer.depth.value), mm(section.nailer.height.value)
            triangle = ((out, top - high), (out + deep, top), (out, top))
            end = -out if run is RunName.LENGTH else -out - deep
            nailer = _along(corner, run, triangle, (end,) * len(triangle))
            yield Stage.CROWN_NAILERS, nailer
        yield stage, _along(corner, run, shape, tuple(-each for each, _ in shape))


def _along(corner: Corner, run: RunName, section: Section, ends: Sequence[float]) -> Solid:
    """A section (out from the side, up) drawn out along it, each of its corners to its own end."""
    count = len(section)
    places = [Place(-out, -corner.reach, up) for out, up in section]
    places += [Place(-out, end, up) for (out, up), end in zip(section, ends, strict=True)]
    sides = tuple(
        (at, (at + 1) % count, count + (at + 1) % count, count + at) for at in range(count)
    )
    faces = (tuple(range(count))[::-1], tuple(range(count, 2 * count)), *sides)
    if run is RunName.WIDTH:
        # Mirrored in the corner's diagonal, so that faces run the other way.
        places = [Place(at.y, at.x, at.z) for at in places]
        faces = tuple(face[::-1] for face in faces)
    return Solid(corner.coffer.id, "moulding", tuple(places), faces)
