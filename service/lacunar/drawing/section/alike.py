"""Which beams of a profile one section shows: those whose members lie in it alike."""

from lacunar.layout.records import Beam, BeamProfile, Layout
from lacunar.measure.length import Length


def cut_alike(layout: Layout, profile: BeamProfile) -> tuple[tuple[Beam, ...], ...]:
    """The beams of a profile by what a section of them shows: members of one size at one place."""
    alike: dict[tuple[Length, ...], list[Beam]] = {}
    for beam in (b for b in layout.beams if b.profile == profile.id):
        shown: tuple[Length, ...] = ()
        if beam.member:
            near, far = beam.member.near.at_start.value, beam.member.far.at_start.value
            shown = (near - beam.near.at_start.value, far - near, beam.member.drop)
        alike.setdefault(shown, []).append(beam)
    return tuple(tuple(beams) for beams in alike.values())
