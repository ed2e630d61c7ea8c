"""Heights, joists, backing and weights in sentences, each figure with the sum it came from."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields
from fractions import Fraction

from lacunar.layout.backing_records import (
    Backing,
    BackingLine,
    BackingPiece,
    BeamWeight,
    Forms,
    Heights,
    Hold,
    JoistLines,
    JoistRelation,
    Level,
    Weights,
)
from lacunar.measure.angle import Angle
from lacunar.measure.figure import Figure
from lacunar.measure.length import Length

AnyFigure = Figure[Length] | Figure[Angle] | Figure[int] | Figure[Fraction]
TellFigure = Callable[[str, AnyFigure], str]
TellLength = Callable[[Length], str]

_LEVELS = {
    "joists": "Underside of the joists",
    "ceiling": "Finished ceiling",
    "panel": "Underside of the panels",
    "member": "Underside of {of}",
    "beam": "Underside of {of}",
}
_SIDES = {"middle": "backing", "near": "near cleat", "far": "far cleat"}


@dataclass(frozen=True, slots=True)
class BackingWords:
    """Words what is above and behind the beams; `figure` and `length` are how figures are told."""

    figure: TellFigure
    length: TellLength

    def heights(self, heights: Heights) -> Iterator[str]:
        """The stack from the top down, what is lowest, and what the limit leaves."""
        for level in heights.levels:
            yield self.figure(f"{_name(level)} above the finished floor", level.height)
        yield self.figure(f"Lowest of all, {', '.join(heights.worst)}", heights.worst_height)
        edition = f", taken from {heights.code_edition}" if heights.code_edition else ""
        yield f"Headroom asked for: {self.length(heights.limit)}{edition}."
        yield self.figure("Deepest drop that leaves it", heights.most_drop)
        yield self.figure("Left over at the lowest place", heights.spare)
        for gap in heights.gaps:
            yield self.figure(f"Least clear opening of the {gap.run} run", gap.opening)
            if gap.centers is not None:
                yield self.figure(f"Least between beam centers of the {gap.run} run", gap.centers)

    def joists(self, joists: JoistLines) -> Iterator[str]:
        """Where the joists are."""
        yield (
            f"The joists run along the {joists.parallel_to}, {self.length(joists.spacing)} on"
            f" center, each {self.length(joists.width)} wide."
        )
        yield self.figure("Joists in the room", joists.count)
        for joist in joists.joists:
            yield self.figure(f"{joist.id}, center along the {joists.on} run", joist.center)

    def backing(self, backing: Backing) -> Iterator[str]:
        """Lines of backing with their places, and forms counted."""
        alike: dict[tuple[BackingPiece, ...], list[str]] = {}
        for line in backing.lines:
            yield from self._line(line)
            alike.setdefault(line.pieces, []).append(f"{line.beam}, {_SIDES[line.side]}")
        for pieces, lines in alike.items():
            for number, piece in enumerate(pieces, start=1):
                yield from self._piece(f"{'; '.join(lines)}, piece {number}", piece)
        yield from self._forms(backing.forms)

    def _line(self, line: BackingLine) -> Iterator[str]:
        label = f"{line.beam}, {_SIDES[line.side]}"
        yield self.figure(f"{label}, line along the {line.on} run", line.position)
        if line.relation is JoistRelation.ACROSS:
            yield f"{label} lies across the joists and is fixed to each it crosses."
        elif line.relation is JoistRelation.ON_JOIST:
            yield f"{label} lies on {line.joist} along its whole length."
        if line.offset is not None:
            yield self.figure(f"{label}, beyond the center of {line.joist}", line.offset)
        if line.bearing is not None:
            yield self.figure(f"{label}, bearing on {line.joist}", line.bearing)
        if line.bay is not None:
            near, far = (end or "the wall" for end in (line.bay.near, line.bay.far))
            yield f"{label} lies between {near} and {far}, to be carried by {line.carried_by}."
            yield self.figure(f"{label}, a block between {near} and {far}", line.bay.block)
        if line.blocks is not None:
            yield self.figure(f"{label}, blocks", line.blocks)

    def _piece(self, label: str, piece: BackingPiece) -> Iterator[str]:
        yield self.figure(f"{label}, clear length", piece.length)
        yield self.figure(f"{label}, places to fix it at", piece.count)
        for place in piece.places:
            yield self.figure(f"{label}, fixed at", place)
        if piece.fasteners is not None:
            yield self.figure(f"{label}, fasteners", piece.fasteners)

    def _forms(self, forms: Forms) -> Iterator[str]:
        for field in fields(forms):
            label = field.name.replace("_", " ")
            yield self.figure(f"Backing forms, {label}", getattr(forms, field.name))

    def weights(self, weights: Weights) -> Iterator[str]:
        """What everything weighs."""
        label = "Trim, pounds per cubic foot"
        yield self.figure(label, weights.trim_pounds_per_cubic_foot)
        label = "Backing, pounds per cubic foot"
        yield self.figure(label, weights.backing_pounds_per_cubic_foot)
        for beam in weights.beams:
            yield from self._beam(beam)
        label = "Panels, pounds per square foot"
        yield self.figure(label, weights.panel_pounds_per_square_foot)
        yield self.figure("All panels, pounds", weights.panels_pounds)
        yield self.figure("All that hangs, pounds", weights.pounds)
        label = "All that hangs, pounds per square foot of the room"
        yield self.figure(label, weights.pounds_per_square_foot)
        label = "All that hangs, kilograms per square meter of the room"
        yield self.figure(label, weights.kilograms_per_square_meter)

    def _beam(self, beam: BeamWeight) -> Iterator[str]:
        name = beam.profile
        yield self.figure(f"Sides of {name}, pounds per foot", beam.sides_pounds_per_foot)
        yield self.figure(f"Bottom of {name}, pounds per foot", beam.bottom_pounds_per_foot)
        yield self.figure(f"Backing of {name}, pounds per foot", beam.backing_pounds_per_foot)
        yield self.figure(f"{name}, pounds per foot", beam.pounds_per_foot)
        yield self.figure(f"{name}, kilograms per meter", beam.kilograms_per_meter)
        yield self.figure(f"All beams of {name}, clear length", beam.length)
        yield self.figure(f"All beams of {name}, pounds", beam.pounds)

    def hold(self, hold: Hold) -> Iterator[str]:
        """Reference figures of one profile's fasteners."""
        name = hold.profile
        yield self.figure(f"{name}, fastener in the framing", hold.penetration)
        yield self.figure(f"{name}, places to fix it at, apart", hold.spacing)
        yield self.figure(f"{name}, pounds on one fastener across the joists", hold.load_pounds)
        label = f"{name}, reference withdrawal, pounds per inch"
        yield self.figure(label, hold.withdrawal_pounds_per_inch)
        yield self.figure(f"{name}, withdrawal of one, pounds", hold.withdrawal_pounds)
        if hold.pull_through_pounds is not None:
            label = f"{name}, pull-through of one head, pounds"
            yield self.figure(label, hold.pull_through_pounds)


def _name(level: Level) -> str:
    return _LEVELS[level.kind].format(of=level.of)
