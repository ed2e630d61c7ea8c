"""The point on headroom: what the table of heights prints, and the verdict on the limit."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.drawing.checker.figures import rounded
from lacunar.drawing.checker.naming import says
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import printed
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.checker.upright_facts import HeightFacts

VERDICTS = ("KEPT", "NOT KEPT")
SPARE = {True: "OVER LIMIT", False: "UNDER LIMIT"}
LEVEL_WORDS = {"joists": "JOISTS", "ceiling": "CEILING", "panel": "PANELS", "limit": "LIMIT"}


def headroom_as_built(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 23: headroom is the ceiling less what hangs below it, and held against the limit.

    Each row of the table of heights prints its level; a beam's is the ceiling's less its drop.
    """
    heights = subjects[0].facts.heights
    if heights is None:
        return
    rows = dict(_rows(subjects))
    for name, height in _due(heights).items():
        due = rounded(height, subjects[0].facts.step)
        told = [figure for of, figure in rows.items() if says(of, name)]
        if told != [due]:
            words = ", ".join(f"{float(each or 0):.3f} mm" for each in told) or "nothing"
            message = f"tells {words} for {name}, built is {float(due):.3f} mm"
            yield Finding(23, "Z-301", "heights-table", message)
    kept = heights.lowest >= heights.limit
    for subject in subjects:
        for lettering in subject.sheet.letterings:
            verdict = lettering.text.rpartition(", ")[2]
            judges = lettering.text.startswith("LIMIT ") and verdict in VERDICTS
            if judges and (verdict == "KEPT") != kept:
                where = subject.sheet.place(lettering.group)
                yield subject.sheet.finding(23, where, f"says “{lettering.text}”")


def _rows(subjects: Sequence[Subject]) -> Iterator[tuple[str, Fraction | None]]:
    for subject in subjects:
        sheet = subject.sheet
        for table in sheet.of_kind("heights-table"):
            for row in sheet.of_kind("height-row", table):
                texts = [lettering.text for lettering in sheet.letterings_in(row)]
                yield row.data.get("of", ""), printed(texts[-1], sheet) if texts else None


def _due(heights: HeightFacts) -> Mapping[str, Fraction]:
    """Each row by its words, with its height by what is built rather than by the stack."""
    found: dict[str, Fraction] = {"LIMIT": heights.limit}
    for name, height in heights.levels.items():
        kind, _, of = name.partition(":")
        if kind == "beam":
            height = heights.ceiling - heights.drops[of]
        found[of or LEVEL_WORDS[kind]] = height
    spare = heights.lowest - heights.limit
    found[SPARE[spare >= 0]] = abs(spare)
    return found
