"""Rules about a room's survey: that it is one kind of survey, and says enough."""

from collections.abc import Iterator

from lacunar.model.faults import Fault
from lacunar.model.rule_case import RuleCase, missing
from lacunar.model.survey import GridMode, SurveySpec, Wall

_SURVEY = "/room/survey"


def the_room_is_measured_once(case: RuleCase) -> Iterator[Fault]:
    """A room is given by length and width, by a survey, or by an outline, never by two of them."""
    room = case.spec.room
    if room.survey is None and room.outline is None:
        return
    by = "survey" if room.survey is not None else "outline"
    if room.survey is not None and room.outline is not None and case.sound("/room/outline"):
        yield Fault(
            code="room_measured_twice",
            pointer="/room/outline",
            message="The room is given by an outline beside its survey.",
            remedy="Give a survey of four walls, or an outline, not both.",
        )
    for name in ("length", "width"):
        if getattr(room, name) is not None and case.sound(f"/room/{name}"):
            yield Fault(
                code="room_measured_twice",
                pointer=f"/room/{name}",
                message=f"The {name} of the room is given beside its {by}.",
                remedy=f"Leave {name} out: it follows from the {by}.",
            )


def crooked_rooms_are_surveyed(case: RuleCase) -> Iterator[Fault]:
    """How a grid lies in a crooked room has a meaning in a surveyed room alone."""
    if case.spec.room.crooked is not None and case.spec.room.survey is None and case.sound(_SURVEY):
        yield Fault(
            code="crooked_not_surveyed",
            pointer="/room/crooked",
            message="The room is given by length and width, so that it is not crooked.",
            remedy="Give room.survey in place of length and width, or leave crooked out.",
        )


def control_lines_are_there(case: RuleCase) -> Iterator[Fault]:
    """The grid is square to a wall, or to a member that has a name."""
    crooked, members = case.spec.room.crooked, case.spec.room.members
    if crooked is None or crooked.control is None or not case.sound("/room/members"):
        return
    names = [member.name for member in members if member.name is not None]
    if crooked.control not in (*Wall, *names):
        yield Fault(
            code="control_line_unknown",
            pointer="/room/crooked/control",
            message=f"There is no wall and no member called {crooked.control}.",
            remedy="Name one of the walls W1 to W4, or a member by the name it is given.",
            figures={"known": ", ".join((*Wall, *names))},
        )


def settings_are_of_the_mode(case: RuleCase) -> Iterator[Fault]:
    """What only one way to lay the grid out asks for is not given beside the other."""
    crooked = case.spec.room.crooked
    if crooked is None or not case.sound("/room/crooked"):
        return
    mode = crooked.mode or GridMode.KEEP_SQUARE
    other = {
        GridMode.KEEP_SQUARE: ("out_of_square", "out_of_square_limit"),
        GridMode.FOLLOW_WALLS: ("control", "excess"),
    }
    for name in other[mode]:
        if getattr(crooked, name) is not None:
            yield Fault(
                code="mode_without_setting",
                pointer=f"/room/crooked/{name}",
                message=f"{name} means nothing where the grid is laid out by {mode}.",
                remedy=f"Leave {name} out, or lay the grid out the other way, with mode.",
                figures={"mode": str(mode)},
            )


def surveys_are_of_one_kind(case: RuleCase) -> Iterator[Fault]:
    """Four sides, or four points that need neither sides nor angles."""
    survey = case.spec.room.survey
    if survey is None or not case.sound(_SURVEY):
        return
    if survey.sides is None and survey.points is None:
        yield missing(f"{_SURVEY}/sides", "The four sides of the room, or its four points,")
    beside = survey.sides is not None or survey.angles is not None
    if survey.points is not None and beside:
        yield Fault(
            code="survey_kind_unclear",
            pointer=f"{_SURVEY}/points",
            message="Points are given beside sides or angles.",
            remedy="Give points alone, or sides with diagonals or angles.",
        )


def four_sides_have_a_diagonal(case: RuleCase) -> Iterator[Fault]:
    """Four sides alone can lean either way: a diagonal or the angles fix them."""
    survey = case.spec.room.survey
    if survey is None or survey.sides is None or not case.sound(_SURVEY):
        return
    if survey.angles is None and not _has_diagonal(survey):
        yield Fault(
            code="diagonal_missing",
            pointer=f"{_SURVEY}/diagonals",
            message="Four sides alone do not fix the shape of the room: it can lean either way.",
            remedy="Measure one diagonal, better both: rising, from the corner of W4 and W1 to that"
            " of W2 and W3; falling, from W1 and W2 to W3 and W4.",
        )


def _has_diagonal(survey: SurveySpec) -> bool:
    diagonals = survey.diagonals
    return diagonals is not None and (diagonals.rising is not None or diagonals.falling is not None)


SURVEY_RULES = (
    the_room_is_measured_once,
    crooked_rooms_are_surveyed,
    control_lines_are_there,
    settings_are_of_the_mode,
    surveys_are_of_one_kind,
    four_sides_have_a_diagonal,
)
