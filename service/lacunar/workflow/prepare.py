"""From a spec's bytes to a layout: read, hold against the rules, decide what is open, set out."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from lacunar.drawing.painters.engine import engine
from lacunar.exchange.ceiling_json import digest
from lacunar.exchange.layout_json import layout_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.measure.units import Units
from lacunar.model.assumptions import Resolution, resolve
from lacunar.model.ceiling import Assumption
from lacunar.model.defaults import DEFAULTS
from lacunar.model.drawing import Paper


@dataclass(frozen=True, slots=True)
class Prepared:
    """A ceiling set out, what was assumed for it, and the digest of its resolved spec.

    `take_off_assumptions` are those that a take-off alone goes by.
    """

    layout: Layout
    assumptions: tuple[Assumption, ...]
    digest: str
    take_off_assumptions: tuple[Assumption, ...] = ()


def prepare(document: bytes, units: Units | None = None, paper: Paper | None = None) -> Prepared:
    """A JSON spec as a layout.

    Parameters: `document`; `units` to tell it in and `paper` to draw it on, where these are not to
    be the spec's own. Errors: `SpecRefused` with every fault of the first stage that finds any.
    """
    resolution = drawn_on(told_in(resolve(read_spec(document)), units), paper)
    layout = lay_out(resolution.ceiling)
    return Prepared(
        layout,
        resolution.assumptions,
        digest(resolution.ceiling),
        resolution.take_off_assumptions,
    )


def told_in(resolution: Resolution, units: Units | None) -> Resolution:
    """The same ceiling told in other units: its sizes stay, its marks go to what is marked there.

    The digest covers units and marking step, so a ceiling told in others is told apart.
    """
    ceiling = resolution.ceiling
    if units is None or units is ceiling.units:
        return resolution
    step = DEFAULTS[units].mark_to
    chosen = ("/units", "/mark_to")
    assumptions = [each for each in resolution.assumptions if each.pointer not in chosen]
    assumptions.append(Assumption("/mark_to", step.text, "the answer is told in other units"))
    second = ceiling.units if ceiling.drawing.second_units else None
    drawing = replace(ceiling.drawing, second_units=second)
    told = replace(ceiling, units=units, mark_to=step, drawing=drawing)
    return replace(resolution, ceiling=told, assumptions=tuple(assumptions))


def drawn_on(resolution: Resolution, paper: Paper | None) -> Resolution:
    """The same ceiling drawn on other paper; as what is built stays, so does its digest."""
    ceiling = resolution.ceiling
    if paper is None:
        return resolution
    kept = tuple(each for each in resolution.assumptions if each.pointer != "/drawing/paper")
    drawing = replace(ceiling.drawing, paper=paper)
    return replace(resolution, ceiling=replace(ceiling, drawing=drawing), assumptions=kept)


def layout_answer(prepared: Prepared, *, trace: bool) -> Mapping[str, Any]:
    """The layout as JSON values; with `trace`, each figure with its rule and operands."""
    answer = layout_to_json(prepared.layout, prepared.assumptions, trace=trace)
    return {**answer, "digest": prepared.digest, "engine": dict(engine())}
