"""One corner of a coffer, part by part, as its stages of fitting put it up.

The corner is that of a coffer away from the datum: its crosswise beam stands beyond x = 0 and lies
along y, its lengthwise beam beyond y = 0 along x; the coffer is where both are below zero. All is
as long as shows how it goes on, and no longer.
"""

from collections.abc import Mapping, Set
from dataclasses import dataclass

from lacunar.drawing.solids.space import Solid, prism
from lacunar.layout.records import BeamProfile, Coffer, ElementKind, Layout, RunElement
from lacunar.model.room import RunName

REACH = 2.4
"""How long all is shown, in widths or drops of the larger beam."""
PAST = 0.35
"""How far the beam that runs through goes on past the other, of what is shown."""

Extent = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Corner:
    """The coffer, and the profile of its beam across each run; None at a bare wall.

    `through` is the run across which the beam runs through.
    """

    layout: Layout
    coffer: Coffer
    profiles: Mapping[RunName, BeamProfile | None]
    ids: Mapping[RunName, str]
    through: RunName

    @property
    def reach(self) -> float:
        """How far all goes from the corner [mm]."""
        known = [each for each in self.profiles.values() if each is not None]
        sizes = (each.value for p in known for each in (p.finished_width, p.drop))
        return REACH * max(float(size.millimeters) for size in sizes)

    def end(self, run: RunName) -> float:
        """How far a beam across a run goes on along itself from the corner [mm].

        One that is stopped ends at the other's face; one that runs through ends at the wall or
        goes on a little past the other.
        """
        other = self.profiles[run.other]
        if run is not self.through or other is None:
            return 0.0
        past = 0.0 if other.sides == 1 else PAST * self.reach
        return self.width(run.other) + past

    def box(self, named: tuple[str, str], run: RunName, across: Extent, heights: Extent) -> Solid:
        """A board along the beam across a run, by what it takes up across the beam."""
        return self.block(named, run, (across, (-self.reach, self.end(run)), heights))

    @staticmethod
    def block(
        named: tuple[str, str], run: RunName, extents: tuple[Extent, Extent, Extent]
    ) -> Solid:
        """A body with square corners: its extents across a run, along the other, and in height."""
        across, along, (low, high) = extents
        xs, ys = (across, along) if run is RunName.LENGTH else (along, across)
        ring = ((xs[0], ys[0]), (xs[1], ys[0]), (xs[1], ys[1]), (xs[0], ys[1]))
        return prism(named, ring, low, high)

    def width(self, run: RunName) -> float:
        """The finished width of the beam across a run, nothing at a bare wall [mm]."""
        profile = self.profiles[run]
        return float(profile.finished_width.value.millimeters) if profile else 0.0


def corner_of(layout: Layout) -> Corner | None:
    """The corner that shows most: of the first whole coffer between beams of both families.

    Else between what stands at walls; None where no coffer has a beam beside it.
    """
    profiles, throughs = layout.profile_of, {beam.id for beam in layout.beams if beam.through}
    found = [
        corner
        for coffer in layout.coffers
        if (corner := _corner(layout, coffer, profiles, throughs))
    ]
    return max(found, key=_shows, default=None)


def _shows(corner: Corner) -> tuple[int, int]:
    """How many of its beams are there, and how many of them stand free in the room."""
    beams = [profile for profile in corner.profiles.values() if profile is not None]
    return len(beams), sum(profile.kind in ("box", "flat") for profile in beams)


def _corner(
    layout: Layout, coffer: Coffer, known: Mapping[str, BeamProfile], throughs: Set[str]
) -> Corner | None:
    after = {
        RunName.LENGTH: _after(layout, RunName.LENGTH, coffer.column),
        RunName.WIDTH: _after(layout, RunName.WIDTH, coffer.row),
    }
    profiles = {run: known.get(element.id) if element else None for run, element in after.items()}
    if not any(profiles.values()):
        return None
    ids = {run: element.id if element else "" for run, element in after.items()}
    through = RunName.WIDTH if ids[RunName.WIDTH] in throughs else RunName.LENGTH
    return Corner(layout, coffer, profiles, ids, through)


def _after(layout: Layout, run: RunName, number: int) -> RunElement | None:
    """What stands after the coffer of a number on a run, None where that is the bare wall."""
    elements = layout.run(run).elements
    places = [at for at, each in enumerate(elements) if each.kind is ElementKind.COFFER]
    after = places[number - 1] + 1
    return elements[after] if after < len(elements) else None
