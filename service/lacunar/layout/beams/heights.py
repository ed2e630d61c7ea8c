"""Heights above the finished floor as a stack, each stated as the sum it is."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from lacunar.layout.backing_records import BeamGap, Heights, Level
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import Beam, Clearance, RunLayout
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import RunName

JOISTS = Rule("underside of the joists: the ceiling and what is on them", "height + finish")
PANEL = Rule("underside of the panels, seen in the coffers", "height - panel")
MEMBER = Rule("underside of a structural member at its lower end", "height - drop - cladding")
MOST_DROP = Rule("the most a beam can hang and leave the headroom asked for", "height - headroom")
SPARE = Rule("what is left between the lowest place and the headroom", "lowest - headroom")
CENTERS = Rule("from one beam's center to the next", "far_center - near_center")


def heights(
    ceiling: Ceiling,
    clearances: tuple[Clearance, ...],
    runs: Mapping[RunName, RunLayout],
    beams: tuple[Beam, ...],
) -> Heights:
    """Stack up what is above the floor: joists, ceiling, panels, members, and each beam profile.

    Formula for each beam: height - drop; its headroom is what `clearances` say. The worst place is
    the lowest of all levels.
    """
    room = ceiling.room
    levels = (*_above_beams(ceiling), *(_level(clear) for clear in clearances))
    lowest = min((level.height for level in levels), key=lambda height: height.value)
    worst = tuple(level.of for level in levels if level.height.value == lowest.value)
    return Heights(
        levels=levels,
        worst=worst,
        worst_height=lowest,
        limit=room.headroom,
        code_edition=room.code_edition,
        most_drop=MOST_DROP.gives(
            room.height - room.headroom, height=room.height, headroom=room.headroom
        ),
        spare=SPARE.gives(
            lowest.value - room.headroom, lowest=lowest.value, headroom=room.headroom
        ),
        gaps=tuple(_gap(runs[name], beams) for name in RunName),
    )


def _level(clear: Clearance) -> Level:
    return Level("beam", clear.profile, clear.clear_height)


def _above_beams(ceiling: Ceiling) -> Iterator[Level]:
    room = ceiling.room
    height = room.height
    if room.joists is not None:
        finish = room.joists.existing_finish
        yield Level("joists", "joists", JOISTS.gives(height + finish, height=height, finish=finish))
    yield Level("ceiling", "ceiling", given(height))
    panel = panel_stack(ceiling.panel).thickness
    if panel:
        yield Level("panel", "panel", PANEL.gives(height - panel, height=height, panel=panel))
    for member in room.members:
        drop, cladding = member.deepest, member.cladding
        under = MEMBER.gives(height - drop - cladding, height=height, drop=drop, cladding=cladding)
        yield Level("member", member.name, under)


def _gap(run: RunLayout, beams: tuple[Beam, ...]) -> BeamGap:
    openings = [opening for zone in run.zones for opening in zone.openings]
    centers = [beam.center.at_start for beam in beams if beam.on is run.name]
    apart = [_apart(*pair) for pair in pairwise(centers)]
    return BeamGap(
        run=run.name,
        opening=min(openings, key=lambda opening: opening.value),
        centers=min(apart, key=lambda each: each.value, default=None),
    )


def _apart(near: LengthFigure, far: LengthFigure) -> LengthFigure:
    return CENTERS.gives(far.value - near.value, far_center=far.value, near_center=near.value)
