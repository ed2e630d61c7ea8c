"""Backing counted as forms: what stands at every node of the grid, and between nodes."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from lacunar.layout.backing_records import Forms
from lacunar.layout.records import ElementKind, RunElement, RunLayout
from lacunar.measure.figure import CountFigure, Rule
from lacunar.model.room import RunName

CROSSES = Rule("crosses: where two beams meet", "crosswise * lengthwise")
TEES = Rule(
    "tees: where a beam meets a beam at a wall",
    "crosswise * wall_beams_across + lengthwise * wall_beams_along",
)
ELLS = Rule("ells: corners with a beam at both walls", "wall_beams_along * wall_beams_across")
WALL_ENDS = Rule(
    "ends at a bare wall, of beams and of beams at walls",
    "(crosswise + wall_beams_along) * bare_across + (lengthwise + wall_beams_across) * bare_along",
)
SOFFIT_ENDS = Rule(
    "ends at a soffit, of beams and of beams at walls",
    "(crosswise + wall_beams_along) * soffits_across"
    " + (lengthwise + wall_beams_across) * soffits_along",
)
MID_SPANS = Rule(
    "middle pieces: one for each side of a coffer that a beam runs along",
    "(crosswise + wall_beams_along) * rows + (lengthwise + wall_beams_across) * columns",
)
FORMS = Rule("forms in all", "crosses + tees + ells + wall_ends + soffit_ends + mid_spans")

_BEAMS = (ElementKind.BEAM, ElementKind.FIXED_BEAM, ElementKind.CASED_BEAM)


@dataclass(frozen=True, slots=True)
class _Counted:
    """What is in one run, and how many of its two walls have a beam, nothing, or a bare soffit."""

    coffers: int
    beams: int
    wall_beams: int
    bare: int
    soffits: int


def backing_forms(runs: Mapping[RunName, RunLayout], flats: Collection[RunName] = ()) -> Forms:
    """Count the forms of a grid from what stands in its runs and at its walls.

    With m x n coffers and beams at all walls: (m-1)(n-1) crosses, 2(m-1) + 2(n-1) tees, 4 ells,
    (m+1)n + (n+1)m middle pieces; with none at the walls 2(m-1) + 2(n-1) wall ends and
    (m-1)n + (n-1)m middle pieces. A casing counts as a beam. A beam on the face of a soffit is a
    beam at that wall. Beams of the runs named in `flats` are flat and have no backing: they count
    as none, and where other beams end at one of them at a wall that wall counts as bare.
    """
    along, across = (_counted(runs[name], backed=name not in flats) for name in RunName)
    beams = {"crosswise": along.beams, "lengthwise": across.beams}
    walls = {"wall_beams_along": along.wall_beams, "wall_beams_across": across.wall_beams}
    crosswise, lengthwise = along.beams + along.wall_beams, across.beams + across.wall_beams
    crosses = CROSSES.gives(along.beams * across.beams, **beams)
    tees = TEES.gives(
        along.beams * across.wall_beams + across.beams * along.wall_beams, **beams, **walls
    )
    ells = ELLS.gives(along.wall_beams * across.wall_beams, **walls)
    wall_ends = WALL_ENDS.gives(
        crosswise * across.bare + lengthwise * along.bare,
        **beams,
        **walls,
        bare_along=along.bare,
        bare_across=across.bare,
    )
    soffit_ends = SOFFIT_ENDS.gives(
        crosswise * across.soffits + lengthwise * along.soffits,
        **beams,
        **walls,
        soffits_along=along.soffits,
        soffits_across=across.soffits,
    )
    mid_spans = MID_SPANS.gives(
        crosswise * across.coffers + lengthwise * along.coffers,
        **beams,
        **walls,
        rows=across.coffers,
        columns=along.coffers,
    )
    return _in_all(
        {
            "crosses": crosses,
            "tees": tees,
            "ells": ells,
            "wall_ends": wall_ends,
            "soffit_ends": soffit_ends,
            "mid_spans": mid_spans,
        }
    )


def _in_all(counted: Mapping[str, CountFigure]) -> Forms:
    values = {name: figure.value for name, figure in counted.items()}
    return Forms(**counted, in_all=FORMS.gives(sum(values.values()), **values))


def _counted(run: RunLayout, *, backed: bool) -> _Counted:
    kinds = [element.kind for element in run.elements]
    walls = [_at_wall(run.elements), _at_wall(run.elements[::-1])]
    return _Counted(
        coffers=kinds.count(ElementKind.COFFER),
        beams=sum(kind in _BEAMS for kind in kinds) if backed else 0,
        wall_beams=walls.count(ElementKind.WALL_BEAM) if backed else 0,
        bare=walls.count(ElementKind.COFFER)
        + (0 if backed else walls.count(ElementKind.WALL_BEAM)),
        soffits=walls.count(ElementKind.SOFFIT),
    )


def _at_wall(elements: tuple[RunElement, ...]) -> ElementKind:
    """What beams meet at the wall a run's elements are told from: a beam, a soffit, or a coffer."""
    kinds = [element.kind for element in elements]
    first = kinds.index(ElementKind.COFFER)
    return kinds[first - 1] if first else ElementKind.COFFER
