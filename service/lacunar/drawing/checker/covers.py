"""Points on a set as its cover tells it: the index, what is the same on all sheets, the data."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.drawing.checker.json_node import exact_millimeters
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.subject import Subject

NOTED = "AS NOTED"
NO_SCALE = "NONE"
SAME = ("revision", "date", "digest", "status", "number")
DIGITS = 12


def index_as_issued(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 1: the cover lists each sheet of the set once, with its title, pages and scale.

    Sheets' numbers are unique, and each says which page of how many it is.
    """
    covers = [each.sheet for each in subjects if list(each.sheet.of_kind("sheet-index"))]
    if not covers:
        yield subjects[0].sheet.finding(1, "sheet-index", "is on no sheet of the set")
        return
    cover = covers[0]
    issued: dict[str, list[SheetRead]] = {}
    for number, subject in enumerate(subjects, start=1):
        sheet = subject.sheet
        issued.setdefault(_whose(sheet), []).append(sheet)
        page, due = _field(sheet, "page"), f"{number} / {len(subjects)}"
        if page != due:
            yield sheet.finding(1, sheet.id, f"says it is page {page}, and is {due}")
    pages = [each.sheet.data.get("sheet", "") for each in subjects]
    for twice in sorted({each for each in pages if pages.count(each) > 1}):
        yield cover.finding(1, twice, "stands on several sheets")
    rows = [row for sheet in covers for row in sheet.of_kind("sheet-row")]
    if [row.data.get("of") for row in rows] != list(issued):
        message = f"lists {[row.data.get('of') for row in rows]} of {list(issued)}"
        yield cover.finding(1, "sheet-index", message)
    for row in rows:
        for message in _row_faults(covers, row, issued.get(row.data.get("of", ""), [])):
            yield cover.finding(1, f"sheet-index {row.data.get('of')}", message)


def _whose(sheet: SheetRead) -> str:
    """The number of the drawing that a sheet is a page of."""
    return "-".join(sheet.data.get("sheet", "").split("-")[:2])


def _row_faults(
    covers: Sequence[SheetRead], row: GroupRead, sheets: Sequence[SheetRead]
) -> Iterator[str]:
    data = row.data
    if not sheets:
        yield "is listed, and not in the set"
        return
    if data.get("pages") != str(len(sheets)):
        yield f"is listed with {data.get('pages')} pages, and has {len(sheets)}"
    titled = f"{sheets[0].data.get('sheet')} {data.get('title')}: "
    if not sheets[0].titles[0].startswith(titled):
        yield f"is listed as “{data.get('title')}”, and called “{sheets[0].titles[0]}”"
    scales = {scale for sheet in sheets if (scale := _field(sheet, "scale"))}
    known = all(_field(sheet, "scale") for sheet in sheets)
    drawn = scales - {NOTED, NO_SCALE}
    due = NO_SCALE if scales == {NO_SCALE} else drawn.pop() if len(drawn) == 1 else NOTED
    if known and data.get("scale") != due:
        yield f"is listed at “{data.get('scale')}”, and is at “{due}”"
    sheet = next(sheet for sheet in covers if row in sheet.groups)
    lettered = {each.text for each in sheet.letterings_in(row)}
    told = {data.get("of", ""), data.get("pages", ""), data.get("scale", "")}
    if not told <= lettered or " ".join(sorted(lettered - told)) == "":
        yield f"is lettered {sorted(lettered)}"


def _field(sheet: SheetRead, name: str) -> str:
    """What a sheet's title block, or the line at its foot, says of itself."""
    for group in sheet.of_kind("field"):
        if group.data.get("field") == name:
            return group.data.get("value", "")
    return next((foot.data.get(name, "") for foot in sheet.of_kind("page-foot")), "")


def same_on_all(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 2: all sheets are of one revision and date, and drawn from one input."""
    framed = [each.sheet for each in subjects if list(each.sheet.of_kind("title-block"))]
    for name in SAME:
        values = [_field(sheet, name) for sheet in framed]
        for sheet, value in zip(framed, values, strict=True):
            if value != values[0]:
                yield sheet.finding(2, name, f"says “{value}”, the first sheet “{values[0]}”")
    digests = [each.sheet.data.get("digest", "") for each in subjects]
    for subject, digest in zip(subjects, digests, strict=True):
        sheet = subject.sheet
        if digest != digests[0] or _field(sheet, "digest") != digest[:DIGITS]:
            yield sheet.finding(2, "digest", "is drawn from another input than the first sheet")


def one_page_size(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 3: all sheets are of one paper, but for those at full size."""
    framed = [each.sheet for each in subjects if list(each.sheet.of_kind("title-block"))]
    for sheet in framed:
        if (sheet.data.get("paper"), sheet.page) != (framed[0].data.get("paper"), framed[0].page):
            yield sheet.finding(3, sheet.id, "is of another paper than the first sheet")


def data_as_laid_out(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 111: what the cover tells of the ceiling is what the layout has."""
    rows = [(each, row) for each in subjects for row in each.sheet.of_kind("ceiling-data-row")]
    first = subjects[0]
    known = first.facts.pictorial
    told = {**(known.told if known else {}), "digest": first.facts.digest[:DIGITS]}
    told["revision"] = first.facts.title.get("revision", "")
    for subject, row in rows:
        name, value = row.data.get("of", ""), row.data.get("value", "")
        if not _same(value, told.get(name, "")):
            message = f"{name} is told as {value}, the layout has {told.get(name)}"
            yield subject.sheet.finding(111, "ceiling-data", message)
        if len(subject.sheet.letterings_in(row)) < 2:  # noqa: PLR2004
            yield subject.sheet.finding(111, "ceiling-data", f"{name} is not lettered")
    names = [row.data.get("of", "") for _, row in rows]
    for name in ("room-length", "room-width", "height", "coffers", "headroom", "limit", "digest"):
        if names.count(name) != 1:
            message = f"{name} is told {names.count(name)} times"
            yield first.sheet.finding(111, "ceiling-data", message)


def _same(one: str, other: str) -> bool:
    """Whether two values say the same, in whatever unit."""
    return one == other or (bool(one) and _lengths(one) == _lengths(other) is not None)


def _lengths(text: str) -> tuple[Fraction, ...] | None:
    try:
        return tuple(exact_millimeters(each) for each in text.split(" x "))
    except (ValueError, ZeroDivisionError):
        return None


def key_plan_whole(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 112: the key plan has every coffer, names all walls, and the first row and column."""
    for subject in subjects:
        sheet, facts = subject.sheet, subject.facts
        for plan in sheet.of_kind("key-plan"):
            drawn = sorted(group.data.get("id", "") for group in sheet.of_kind("key-coffer", plan))
            if drawn != sorted(coffer.id for coffer in facts.coffers):
                yield sheet.finding(112, plan.id, "has other coffers than the layout")
            tags = {
                tag.data.get("of"): [each.text for each in sheet.letterings_in(tag)]
                for tag in sheet.of_kind("tag", plan)
            }
            walls = [f"W{number}" for number in range(1, len(facts.outline) + 1)]
            if facts.outline_facts is not None:
                walls = [side.wall for side in facts.outline_facts.sides]
            for wall in dict.fromkeys(walls):
                if tags.get(wall) != [wall]:
                    yield sheet.finding(112, plan.id, f"does not name wall {wall}")
            yield from _rows_and_columns(subject, plan)


def _rows_and_columns(subject: Subject, plan: GroupRead) -> Iterator[Finding]:
    sheet = subject.sheet
    names: Mapping[str, set[str]] = {"row-name": set(), "column-number": set()}
    for coffer in subject.facts.coffers:
        row = coffer.id.rstrip("0123456789")
        names["row-name"].add(row)
        names["column-number"].add(coffer.id.removeprefix(row))
    for kind, due in names.items():
        shown = [
            each.text for group in sheet.of_kind(kind, plan) for each in sheet.letterings_in(group)
        ]
        first = min(due, key=lambda name: (len(name), name))
        if first not in shown or not due.issuperset(shown) or len(set(shown)) < len(shown):
            yield sheet.finding(112, plan.id, f"{kind}s are {shown}")


def steps_as_laid_out(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 113: the list beside the exploded corner has the layout's steps of fitting in order.

    Each balloon is of one of them, with its number, and each that is not said to be left out of the
    picture has one.
    """
    for subject in subjects:
        sheet, known = subject.sheet, subject.facts.pictorial
        for view in sheet.of_kind("exploded"):
            rows = [
                row
                for each in subjects
                if _whose(each.sheet) == _whose(sheet)
                for row in each.sheet.of_kind("fitting-row")
            ]
            told = [(row.data.get("of"), row.data.get("value")) for row in rows]
            steps = enumerate(known.steps if known else (), start=1)
            if told != [(str(number), stage) for number, stage in steps]:
                yield sheet.finding(113, "fitting", "lists other steps than the layout has")
            tags = [tag for tag in sheet.of_kind("tag", view) if tag.data.get("kind") == "step"]
            balloons = [tag.data.get("of") for tag in tags]
            lettered = [[each.text for each in sheet.letterings_in(tag)] for tag in tags]
            if lettered != [[of] for of in balloons] or len(set(balloons)) < len(balloons):
                yield sheet.finding(113, view.id, "a balloon does not bear its own number")
            yield from _balloons(subject, balloons)


def _balloons(subject: Subject, balloons: Sequence[str | None]) -> Iterator[Finding]:
    sheet = subject.sheet
    for row in sheet.of_kind("fitting-row"):
        words = " ".join(each.text for each in sheet.letterings_in(row))
        of, left_out = row.data.get("of"), "NOT PICTURED" in words
        if left_out is (of in balloons):
            message = "is pictured without a balloon, or has one and is not"
            yield sheet.finding(113, f"fitting {of}", message)
