"""Cautions about surveys, and about walls that are out of square."""

from collections.abc import Iterator, Sequence

from lacunar.layout.records import Caution
from lacunar.layout.survey_records import CrookedRoom
from lacunar.model.room import Member


def crooked_cautions(crooked: CrookedRoom | None, members: Sequence[Member]) -> Iterator[Caution]:
    """Cautions of a survey that nothing checks, and of what crooked walls ask for."""
    if crooked is None:
        return
    if crooked.survey.closing_error is None:
        yield Caution(
            code="survey_not_checked",
            text="Nothing checks the survey: one measurement more, such as the other diagonal,"
            " would show a slip of the tape.",
            figures={},
            pointer="/room/survey",
        )
    if crooked.square:
        return
    gaps = [gap for run in crooked.runs for gap in (run.span_at_start, run.span_at_end)]
    clear = [run.clear for run in crooked.runs for _ in range(2)]
    most = max(gap.value - line.value for gap, line in zip(gaps, clear, strict=True))
    yield Caution(
        code="walls_out_of_square",
        text="The room is not square, the grid is. What stands at the walls is ripped to a taper"
        " and scribed, its face straight; whatever ends at a wall is sized to the clear lines:"
        " leave it long and cut it to the wall. Marks differ from one end of a run to the other.",
        figures={"control": crooked.control, "most_beyond_clear_line": most},
        pointer="/room/survey",
    )
    yield from _member_cautions(crooked, members)
    seen = [wall for wall in crooked.walls if wall.seen]
    if seen:
        worst = max(seen, key=lambda wall: wall.taper.value)
        yield Caution(
            code="taper_seen",
            text="A strip tapers enough to be seen. Another control line, or a wider strip, hides"
            " it better.",
            figures={"wall": worst.wall, "taper": worst.taper.value},
            pointer="/room/crooked/control",
        )


def _member_cautions(crooked: CrookedRoom, members: Sequence[Member]) -> Iterator[Caution]:
    """A caution about members as far from a wall at both ends, though the wall leans."""
    leaning = {run.run for run in crooked.runs if run.before_start.value != run.before_end.value}
    for position, member in enumerate(members):
        if member.on in leaning and not member.skew:
            yield Caution(
                code="member_taken_along_wall",
                text=f"{member.name} is told, or taken, to be as far from its wall at both ends,"
                " and that wall is not square to the grid. Measure its center at both walls.",
                figures={"member": member.name},
                pointer=f"/room/members/{position}/center_at_end",
            )
