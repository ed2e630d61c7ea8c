"""A layout in sentences: every figure with the sum it came from, in the carpenter's units.

No figure is worked out here. A sentence is a label, the rule's formula with what stood for each
name, the value, and the rule's name, all as the layout gives them.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Any, TypeVar

from lacunar.exchange.backing_words import BackingWords
from lacunar.exchange.board_words import boards_in_words, rip_in_words
from lacunar.exchange.crossing_words import crossing_in_words, piece_in_words
from lacunar.exchange.explain_mouldings import explain_mouldings
from lacunar.exchange.explain_openings import explain_openings
from lacunar.exchange.fitting_words import fitting_in_words
from lacunar.exchange.followed_words import followed_in_words
from lacunar.exchange.formula_words import sum_in_words, value_in_words
from lacunar.exchange.item_words import feature_in_words, items_in_words
from lacunar.exchange.length_json import length_in_words
from lacunar.exchange.level_words import levels_in_words
from lacunar.exchange.outline_words import outline_in_words
from lacunar.exchange.survey_words import survey_in_words
from lacunar.layout.board_records import SheetRip
from lacunar.layout.crossing_records import Crossing, CutPiece
from lacunar.layout.item_records import WallFeatureCheck
from lacunar.layout.records import (
    Beam,
    BeamProfile,
    CasingChoice,
    Clearance,
    Coffer,
    ElementKind,
    EndPositions,
    Layout,
    MarkKind,
    PanelFit,
    RunElement,
    RunLayout,
    RunMarks,
    WallBeam,
    Zone,
)
from lacunar.layout.runs.marks import FROM_WALL
from lacunar.measure.figure import GIVEN, Figure
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.room import RunName

_PROFILE_FIGURES = (
    "finished_width",
    "overall_width",
    "drop",
    "net_depth",
    "exposed_side",
    "inside_width",
    "inside_depth",
    "girth",
)

_MARKS = {
    MarkKind.WALL: "{of}",
    MarkKind.FACE: "{of}, {side} face",
    MarkKind.BACKING: "{of}, {side} edge of the backing",
    MarkKind.CENTER: "{of}, center",
    MarkKind.MEMBER: "{of}, {side} face of the member",
    MarkKind.MEMBER_CENTER: "{of}, center of the member",
}

Lines = Iterator[str]
Part = TypeVar("Part")


def explain(layout: Layout, units: Units) -> str:
    """Turn a layout into the text of all its sums, a heading to each part of it.

    Positions are from the datum, the lower left corner of the plan. A figure that stands in several
    places of the layout is told once.
    """
    word = _Wording(units)
    parts: list[tuple[str, Iterable[str]]] = [
        *((f"The {name} run", word.run(layout.run(name))) for name in RunName),
        *((f"Profile {profile.id}", word.profile(profile)) for profile in layout.profiles),
        ("Beams", word.each(word.beam, layout.beams)),
        ("Wall beams", word.each(word.wall_beam, layout.wall_beams)),
        ("Crossings", word.each(word.crossing, layout.crossings)),
        ("Pieces of beams", word.each(word.piece, layout.pieces)),
        ("Casings", word.each(word.casing_choice, layout.casing_choices)),
        ("Coffers", word.coffers(layout.coffers)),
        ("Panels", word.each(word.panel, layout.panels)),
        ("Mouldings", explain_mouldings(layout.mouldings, word.figure)),
        ("Boards", boards_in_words(layout.boards, word.figure) if layout.boards else ()),
        *_measured(layout, word.figure),
        ("Sheets ripped for beams", word.each(word.rip, layout.sheet_rips)),
        ("Headroom", word.each(word.clearance, layout.headroom)),
        *_above_and_behind(layout, BackingWords(word.figure, word.length)),
        ("Ceiling items", items_in_words(layout.items, word.figure, word.length)),
        ("Wall features", word.each(word.feature, layout.wall_features)),
        ("Marks", word.each(word.run_marks, layout.marks)),
        ("Survey", survey_in_words(layout.crooked, word.figure) if layout.crooked else ()),
        (
            "Walls and cut coffers",
            outline_in_words(layout.outlined, word.figure),
        ),
        ("Order of fitting", fitting_in_words(layout.fitting, word.figure)),
        ("Cautions", (caution.text for caution in layout.cautions)),
    ]
    return "\n".join(_told(parts))


def _measured(
    layout: Layout, tell: Callable[[str, Figure[Any]], str]
) -> Iterator[tuple[str, Lines]]:
    """Openings as measured, where anything was; and a grid that follows the walls."""
    if layout.measured_openings is not None:
        yield "Openings as measured", explain_openings(layout.measured_openings, tell)
    if layout.followed is not None:
        yield (
            "Grid along the walls",
            followed_in_words(layout.followed, layout, tell),
        )


def _above_and_behind(layout: Layout, word: BackingWords) -> Iterator[tuple[str, Lines]]:
    """Heights and stations, and what is known of joists, backing and weights."""
    backing = layout.backing
    yield "Heights", word.heights(layout.heights)
    if layout.levels is not None:
        yield "Stations", levels_in_words(layout.levels, word.figure)
    if backing.joists is not None:
        yield "Joists", word.joists(backing.joists)
    yield "Backing", word.backing(backing)
    if backing.weights is not None:
        yield "Weights", word.weights(backing.weights)
    for hold in backing.holds:
        yield f"Fasteners of {hold.profile}, for an engineer to judge", word.hold(hold)


def _told(parts: Iterable[tuple[str, Iterable[str]]]) -> Iterator[str]:
    said: set[str] = set()
    for heading, lines in parts:
        fresh = [line for line in dict.fromkeys(lines) if line not in said]
        said.update(fresh)
        if fresh:
            yield from (heading, *(f"  {line}" for line in fresh), "")


def figure_in_words(label: str, figure: Figure[Any], units: Units) -> str:
    """Turn one figure into a sentence: a label, its sum, its value, and the rule's name."""
    value = value_in_words(figure.value, units)
    if figure.approximate and not value.startswith("about "):
        value = f"about {value}"
    if figure.rule == GIVEN:
        return f"{label}: {value}, as given."
    if len(figure.operands) == 1 and figure.operands[0][0] == figure.rule.formula:
        return f"{label}: {value} ({figure.rule.name})."
    if not figure.operands:
        return f"{label}: {value} ({figure.rule.name})."
    return f"{label}: {sum_in_words(figure, units)} = {value} ({figure.rule.name})."


@dataclass(frozen=True, slots=True)
class _Wording:
    """Words the parts of a layout in one unit system."""

    units: Units

    def each(self, tell: Callable[[Part], Lines], parts: Iterable[Part]) -> Lines:
        """What is told of each of several parts, one after the other."""
        for part in parts:
            yield from tell(part)

    def figure(self, label: str, figure: Figure[Any]) -> str:
        """One figure in a sentence."""
        return figure_in_words(label, figure, self.units)

    def length(self, length: Length) -> str:
        """A length that is no figure."""
        return length_in_words(length, self.units)

    def ends(self, label: str, ends: EndPositions) -> Lines:
        """A line across a run, once where it is square to it."""
        if ends.at_start.value == ends.at_end.value:
            yield self.figure(label, ends.at_start)
        else:
            yield self.figure(f"{label} at the start", ends.at_start)
            yield self.figure(f"{label} at the end", ends.at_end)

    def run(self, run: RunLayout) -> Lines:
        """A run: its span, its zones, and what stands where."""
        yield from self.ends(f"Span of the {run.name} run", run.span)
        for zone in run.zones:
            yield from self.zone(run.name, zone)
        for element in run.elements:
            yield from self.element(element)

    def zone(self, run: RunName, zone: Zone) -> Lines:
        """A zone: where it lies, how many coffers it has and how they share it."""
        name = f"zone {zone.number} of the {run} run"
        yield self.figure(f"Start of {name}", zone.start)
        yield self.figure(f"End of {name}", zone.end)
        yield self.figure(f"Coffers in {name}", zone.coffers)
        yield self.figure(f"Clear total of {name}", zone.clear_total)
        equal = len({opening.value for opening in zone.openings}) == 1
        for number, opening in enumerate(zone.openings[: 1 if equal else None], start=1):
            which = "Each opening" if equal else f"Opening {number}"
            yield self.figure(f"{which} of {name}", opening)

    def element(self, element: RunElement) -> Lines:
        """A stretch of a run, by its two sides."""
        name = element.id
        if element.kind is ElementKind.COFFER:
            name = f"Coffers {element.id}"
        yield from self.ends(f"{name}, near face", element.near)
        yield from self.ends(f"{name}, far face", element.far)

    def profile(self, profile: BeamProfile) -> Lines:
        """A profile: its sizes, then its boards."""
        yield f"A {profile.kind.replace('_', ' ')} profile, for {', '.join(profile.used_by)}."
        for name in _PROFILE_FIGURES:
            label = name.replace("_", " ").capitalize()
            if (figure := getattr(profile, name)) is not None:
                yield self.figure(f"{label} of {profile.id}", figure)
        for part in profile.parts:
            stock = f", from {part.stock.name}" if part.stock else ""
            name = part.name.replace("_", " ").capitalize()
            label = f"{name} of {profile.id}, {part.quantity} wanted{stock}"
            yield self.figure(f"{label}, thickness", part.thickness)
            yield self.figure(f"{label}, width", part.width)

    def beam(self, beam: Beam) -> Lines:
        """A beam: width, faces, center, its member, and its pieces between what stops them."""
        yield self.figure(f"{beam.id}, width", beam.width)
        yield from self.ends(f"{beam.id}, near face", beam.near)
        yield from self.ends(f"{beam.id}, center", beam.center)
        yield from self.ends(f"{beam.id}, far face", beam.far)
        if beam.member is not None:
            member = f"{beam.id}, member {beam.member.name}"
            yield from self.ends(f"{member}, near face", beam.member.near)
            yield from self.ends(f"{member}, far face", beam.member.far)
            yield self.figure(f"{member}, start along the other run", beam.member.start)
            yield self.figure(f"{member}, end along the other run", beam.member.end)
            yield self.figure(f"{member}, skew between its ends", beam.member.skew)
            yield self.figure(f"{member}, shift of the casing", beam.member.shift)
            yield self.figure(f"{member}, most the casing can shift", beam.member.shift_limit)
        for number, piece in enumerate(beam.pieces, start=1):
            # Where a piece starts and ends are faces of the other run, told there.
            yield self.figure(f"{beam.id}, clear length of piece {number}", piece.length)

    def wall_beam(self, beam: WallBeam) -> Lines:
        """What stands at a wall."""
        yield self.figure(f"{beam.id}, width, at {beam.wall}", beam.width)
        yield from self.ends(f"{beam.id}, near face", beam.near)
        yield from self.ends(f"{beam.id}, far face", beam.far)
        for number, piece in enumerate(beam.pieces, start=1):
            yield self.figure(f"{beam.id}, clear length of piece {number}", piece.length)

    def crossing(self, crossing: Crossing) -> Lines:
        """A kind of crossing."""
        return crossing_in_words(crossing, self.figure, self.length)

    def piece(self, piece: CutPiece) -> Lines:
        """A size of piece."""
        return piece_in_words(piece, self.figure, self.length)

    def casing_choice(self, choice: CasingChoice) -> Lines:
        """What a cased beam gives centered and what it gives shifted."""
        centered = ", ".join(self.length(opening) for opening in choice.centered_openings)
        shifted = ", ".join(self.length(opening) for opening in choice.shifted_openings)
        yield f"{choice.beam} centered on its member leaves openings of {centered} beside it."
        yield (
            f"{choice.beam} shifted by {self.length(choice.shift)} leaves {shifted}."
            f" Chosen: {choice.chosen.replace('_', ' ')}."
        )

    def coffers(self, coffers: Iterable[Coffer]) -> Lines:
        """Coffers of one size together, in the order of the first of each size."""
        alike: dict[tuple[Length, Length], list[Coffer]] = {}
        for coffer in coffers:
            alike.setdefault((coffer.length.value, coffer.width.value), []).append(coffer)
        for group in alike.values():
            ids = ", ".join(coffer.id for coffer in group)
            yield self.figure(f"{ids}, length", group[0].length)
            yield self.figure(f"{ids}, width", group[0].width)

    def panel(self, panel: PanelFit) -> Lines:
        """One size of panel."""
        label = f"Panel for {', '.join(panel.coffers)}"
        yield self.figure(f"{label}, length", panel.length)
        yield self.figure(f"{label}, width", panel.width)
        yield self.figure(f"{label}, seams", panel.seams)
        yield f"{label}: the long edge of its sheets lies along the {panel.long_edge} run."
        for run in RunName:
            places = getattr(panel, f"seams_along_{run}")
            for number, place in enumerate(places, start=1):
                yield self.figure(f"{label}, seam {number} along the {run} run", place)
        for bearing in panel.seam_bearings:
            at = (
                f"{label}, seam at {self.length(bearing.place.value)} along the {bearing.along} run"
            )
            yield self.figure(f"{at}, beyond the nearest joist", bearing.offset)
            if bearing.bearing is not None:
                yield self.figure(f"{at}, bearing", bearing.bearing)
            if bearing.backing is not None:
                yield self.figure(f"{at}, strip of backing to let in", bearing.backing)

    def rip(self, rip: SheetRip) -> Lines:
        """Strips of one width from sheets."""
        return rip_in_words(rip, self.figure)

    def feature(self, check: WallFeatureCheck) -> Lines:
        """How beams end at a wall feature."""
        return feature_in_words(check, self.figure)

    def clearance(self, clearance: Clearance) -> Lines:
        """Headroom under one profile."""
        yield self.figure(f"Clear height under {clearance.profile}", clearance.clear_height)
        verdict = "enough" if clearance.enough else "not enough"
        yield (
            f"Headroom of {self.length(clearance.limit)} is asked for:"
            f" under {clearance.profile} there is {verdict}."
        )

    def run_marks(self, marks: RunMarks) -> Lines:
        """What is not told elsewhere of a run's marks: backing, framing, and what was rounded."""
        for mark in marks.marks:
            name = _MARKS[mark.kind].format(of=mark.of, side=mark.side)
            if mark.exact.rule == FROM_WALL:
                yield self.figure(f"{name}, from the wall at the {marks.end}", mark.exact)
            elif mark.kind is MarkKind.BACKING:
                yield self.figure(name, mark.exact)
            elif mark.kind is MarkKind.MEMBER_CENTER:
                yield self.figure(f"{name} at the {marks.end}", mark.exact)
            if mark.from_framing is not None:
                yield self.figure(f"{name}, from the framing", mark.from_framing)
            if mark.mark != mark.exact.value:
                yield (
                    f"{name} is at {self.length(mark.exact.value)} and is marked at"
                    f" {self.length(mark.mark)}, rounded once from the datum."
                )
