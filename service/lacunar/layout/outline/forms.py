"""Backing as forms in a room with other than four walls: counted one by one."""

from lacunar.layout.backing_records import Forms
from lacunar.layout.beams.lines import Line, Meeting
from lacunar.layout.outline.walls import Region, beam_strip
from lacunar.measure.figure import CountFigure, Rule
from lacunar.model.room import RunName

COUNTED = Rule("counted in the room, one by one", "counted")
FORMS = Rule("forms in all", "crosses + tees + ells + wall_ends + soffit_ends + mid_spans")


def counted_forms(region: Region, meeting: Meeting) -> Forms:
    """Count what stands at every place where beams meet or end, and between these.

    A corner with a beam at both its walls is an ell, whatever its angle and whichever way it turns.
    Flat beams have no backing and count as none.
    """
    backed = {run: [line for line in meeting.rows[run].lines if not line.flat] for run in RunName}
    counts = dict.fromkeys(("crosses", "tees", "wall_ends", "soffit_ends", "mid_spans"), 0)
    for one in backed[RunName.LENGTH]:
        for other in backed[RunName.WIDTH]:
            if not meeting.meet(one, other) or (one.wall and other.wall):
                continue
            counts["tees" if one.wall or other.wall else "crosses"] += 1
    for line in (*backed[RunName.LENGTH], *backed[RunName.WIDTH]):
        _count_ends(meeting, line, counts)
    ells = sum(_is_ell(region, number) for number in range(len(region.walls)))
    figures: dict[str, CountFigure] = {
        "crosses": _counted(counts["crosses"]),
        "tees": _counted(counts["tees"]),
        "ells": _counted(ells),
        "wall_ends": _counted(counts["wall_ends"]),
        "soffit_ends": _counted(counts["soffit_ends"]),
        "mid_spans": _counted(counts["mid_spans"] + _angled(region)),
    }
    values = {name: figure.value for name, figure in figures.items()}
    return Forms(**figures, in_all=FORMS.gives(sum(values.values()), **values))


def _counted(count: int) -> CountFigure:
    return COUNTED.gives(count, counted=count)


def _count_ends(meeting: Meeting, line: Line, counts: dict[str, int]) -> None:
    """Add the ends of a line at walls and soffits that no beam stands at, and its middle pieces."""
    for row in meeting.rows_across(line):
        lines = [each for each in row.lines if not each.flat]
        counts["mid_spans"] += 1 + sum(each.wall is None for each in lines)
        for end, limit in (("start", row.start), ("end", row.end)):
            if limit.kind not in ("wall", "soffit") or any(each.wall == end for each in lines):
                continue
            counts["soffit_ends" if limit.kind == "soffit" else "wall_ends"] += 1


def _is_ell(region: Region, number: int) -> bool:
    """Whether beams stand at both walls of a corner."""
    walls = region.walls[number - 1], region.walls[number]
    return all(beam_strip(region.strips[wall.side]) for wall in walls)


def _angled(region: Region) -> int:
    return sum(wall.angled and bool(beam_strip(region.strips[wall.side])) for wall in region.walls)
