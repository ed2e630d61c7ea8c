"""Cautions about surveys, and about walls that are out of square."""

from collections.abc import Iterator, Sequence

from lacunar.layout.records import Caution
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.layout.survey_records import CrookedRoom, CrookedRun
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import START_WALL, Member


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
    if crooked.mode == "follow_walls":
        yield from _following(crooked)
        return
    gaps = [gap for run in crooked.runs for gap in (run.span_at_start, run.span_at_end)]
    clear = [run.clear for run in crooked.runs for _ in range(2)]
    most = max(gap.value - line.value for gap, line in zip(gaps, clear, strict=True))
    yield Caution(
        code="walls_out_of_square",
        text="The room is not square, the grid is. What stands at the walls is ripped to a taper"
        " and scribed, its face straight; whatever ends at a wall is sized to the clear lines:"
        " leave it long and cut it to the wall. Marks differ from one end of a run to the other.",
        figures={"control": str(crooked.control), "most_beyond_clear_line": most},
        pointer="/room/survey",
    )
    yield from _member_cautions(crooked, members)
    yield from _split_cautions(crooked)
    yield from _narrow_stock(crooked)
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


def _narrow_stock(crooked: CrookedRoom) -> Iterator[Caution]:
    """A caution about boards at walls that no stock of their kind is wide enough for."""
    narrow = [(wall, b) for wall in crooked.walls for b in wall.boards if b.too_narrow]
    if narrow:
        wall, board = max(narrow, key=lambda each: each[1].widest.value - each[1].stock.width)
        yield Caution(
            code="tapers_wider_than_stock",
            text="Boards at walls are wider than their stock, and there is none wider of its kind:"
            f" {', '.join(dict.fromkeys(each.wall for each, _ in narrow))}. Glue them up, or name"
            " another line as control.",
            figures={
                "wall": wall.wall,
                "needed": board.widest.value,
                "stock_width": board.stock.width,
                "stock": board.stock.name,
            },
            pointer="/room/crooked/control",
        )


def _following(crooked: CrookedRoom) -> Iterator[Caution]:
    """A caution about coffers and beams that lie along walls out of square."""
    mode = next(each for each in crooked.modes if each.chosen)
    worst = max(mode.coffers, key=lambda coffer: coffer.out_of_square.value.degrees)
    yield Caution(
        code="grid_follows_walls",
        text="The grid follows the walls, so that coffers taper and no two are alike. Mark both"
        " ends of each beam from the wall at that end, join the marks, and measure the coffers"
        " before cutting what goes into them. Boards are given as long as their longer"
        " edge, and their ends are off square: take each angle at its place.",
        figures={"coffer": worst.id, "out_of_square": worst.out_of_square.value.tenths},
        pointer="/room/crooked/mode",
    )


def _split_cautions(crooked: CrookedRoom) -> Iterator[Caution]:
    """A caution about strips narrower somewhere than what stands there, the excess being shared."""
    less = {
        wall.wall: gap
        for wall in crooked.walls
        for run in crooked.runs
        if wall.strip and run.run is run_of_wall(wall.wall)
        for gap in _gaps(run, at_start=wall.wall in START_WALL.values())
        if gap < ZERO
    }
    if less:
        worst = min(less, key=lambda wall: less[wall])
        yield Caution(
            code="strip_narrowed",
            text="The excess is shared to both ends, so that strips are narrower somewhere than"
            f" what is to stand there: {', '.join(less)}. Hold sides and backing against the width"
            " at that end before cutting them.",
            figures={"wall": worst, "narrower_by": -less[worst]},
            pointer="/room/crooked/excess",
        )


def _gaps(run: CrookedRun, *, at_start: bool) -> Iterator[Length]:
    """What lies between the clear line and its start or end wall, at both ends of the other run."""
    for span, before in (
        (run.span_at_start, run.before_start),
        (run.span_at_end, run.before_end),
    ):
        yield before.value if at_start else span.value - run.clear.value - before.value


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
