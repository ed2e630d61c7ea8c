"""Points on paper mock-ups: strips are as wide as beams are laid out, whole, and at full size."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import accumulate

from lacunar.drawing.checker.full_size import StripRead, page_true, strips_read, whole
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.profile_facts import NOTHING, ProfileFacts, SectionFacts
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import in_words, printed
from lacunar.drawing.checker.subject import Subject

STRIP = "mock-up-strip"
BEAMS = ("box", "flat", "cased")
Places = tuple[Fraction, ...]


def beam_places(profile: ProfileFacts, panel: Fraction) -> Places:
    """Where a beam laid flat is folded, from one ceiling edge to the other [mm].

    Down a side, along what is set in or out, across the bottom, and up again.
    """
    return _summed((*_halves(profile), *_halves(profile)[-2::-1]), panel)


def _halves(profile: ProfileFacts) -> Places:
    """The stretches from the panel down to the bottom, which comes last and is whole."""
    side, bottom, upper = (profile.board(name) for name in ("side", "bottom", "upper_board"))
    net, width = profile.net_depth, profile.finished
    if bottom is None:
        return net, width
    if profile.joint == "between" and side is not None and profile.reveal:
        return net, side.thickness, profile.reveal, width - 2 * side.thickness
    other = upper.width if upper is not None else width
    out = abs(bottom.width - other) / 2
    stands_off = profile.joint == "under" or upper is not None
    if not stands_off or not out or net <= bottom.thickness:
        return net, bottom.width if stands_off else width
    return net - bottom.thickness, out, bottom.thickness, bottom.width


def _summed(sizes: Places, panel: Fraction) -> Places:
    beside = (panel,) if panel else ()
    return tuple(accumulate((*beside, *sizes, *beside), initial=NOTHING))


def _expected(strip: str, sections: SectionFacts) -> tuple[Places, ...]:
    """Where the lines of a strip may lie; nothing for one that the layout does not know."""
    for profile in sections.profiles:
        if strip == f"mock-up-{profile.id}-beam":
            return (beam_places(profile, sections.panel),)
        if strip == f"mock-up-{profile.id}-card":
            crown = (sections.panel + sections.crown[1],) if sections.crown else ()
            return (tuple(sorted({NOTHING, sections.panel, *crown, profile.drop})),)
    if strip == "mock-up-crown" and sections.crown:
        return ((NOTHING, sections.crown[0]),)
    for number, (thick, wide) in enumerate(sections.flats, start=1):
        if strip == f"mock-up-flat-{number}":
            return (tuple(accumulate((thick, wide, thick), initial=NOTHING)),)
    return ()


def strips_as_wide(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Points 143 and 144: strips have their lines where the layout has them, and are whole."""
    found: dict[str, list[StripRead]] = {}
    for subject in subjects:
        for piece in strips_read(subject.sheet, STRIP):
            found.setdefault(piece.group.data.get("strip", ""), []).append(piece)
    facts = subjects[0].facts
    if not facts.sections.mocked_up:
        for pieces in found.values():
            yield pieces[0].finding(143, "is drawn, and nobody has asked for it")
        return
    for name, pieces in found.items():
        expected = _expected(name, facts.sections)
        if not expected:
            yield pieces[0].finding(143, "is of nothing that the layout has")
            continue
        pieces.sort(key=lambda piece: piece.first)
        yield from whole(144, pieces, float(expected[0][-1]), "mock-up-cross")
        yield from _lines(pieces, expected[0])
        yield from _numbers(pieces, expected[0], facts.step)
    yield from _every_beam(subjects, found)
    sheets = {id(piece.sheet): piece.sheet for pieces in found.values() for piece in pieces}
    for sheet in sheets.values():
        yield from page_true(144, sheet, facts.digest)


def _on(piece: StripRead, places: Places) -> list[float]:
    """The places that are on a piece, from its start."""
    low, high = piece.first - TOLERANCE, piece.last + TOLERANCE
    return [float(each) for each in places if low <= each <= high]


def _lines(pieces: Sequence[StripRead], places: Places) -> Iterator[Finding]:
    """Whether each place has its line on every piece that it is on, and no other place has one."""
    for piece in pieces:
        due = _on(piece, places)
        drawn = sorted(
            piece.place(path.around.middle.x)
            for line in piece.sheet.of_kind("mock-up-line", piece.group)
            for path in piece.sheet.paths_in(line)
        )
        if len(drawn) != len(due) or any(
            abs(one - other) > TOLERANCE for one, other in zip(drawn, due, strict=True)
        ):
            told = ", ".join(f"{each:.2f}" for each in drawn)
            yield piece.finding(143, f"has lines at {told} mm, which is not as laid out")


def _numbers(pieces: Sequence[StripRead], places: Places, step: Fraction) -> Iterator[Finding]:
    """Whether each number is that of a line, or of where its piece starts."""
    for piece in pieces:
        told = []
        for number in piece.sheet.of_kind("mock-up-number", piece.group):
            text = " ".join(each.text for each in piece.sheet.letterings_in(number))
            value = printed(text, piece.sheet)
            told.append(value)
            near = [*places, Fraction(piece.first)]
            if value is None or all(abs(value - each) > step for each in near):
                shown = text if value is None else in_words(value)
                yield piece.finding(143, f"bears {shown}, at which it has no line")
        if len(told) != len(_on(piece, places)) + (1 if piece.first else 0):
            yield piece.finding(143, "does not bear the number of each of its lines")


def _every_beam(
    subjects: Sequence[Subject], found: dict[str, list[StripRead]]
) -> Iterator[Finding]:
    """Whether each beam that looks unlike others has a strip, or is said not to be drawn."""
    sections = subjects[0].facts.sections
    drawn = {
        beam_places(profile, sections.panel)
        for profile in sections.profiles
        if f"mock-up-{profile.id}-beam" in found
    }
    said = any("Not drawn" in each.text for s in subjects for each in s.sheet.letterings)
    for profile in sections.profiles:
        missing = profile.kind in BEAMS and beam_places(profile, sections.panel) not in drawn
        if missing and not said:
            sheet = subjects[0].sheet
            yield sheet.finding(143, f"mock-up-{profile.id}-beam", "has no strip")
