"""From a spec's bytes to a layout: read, hold against the rules, decide what is open, set out."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from lacunar.drawing.painters.engine import engine
from lacunar.exchange.ceiling_json import digest
from lacunar.exchange.layout_json import layout_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.model.assumptions import resolve
from lacunar.model.ceiling import Assumption


@dataclass(frozen=True, slots=True)
class Prepared:
    """A ceiling set out, what was assumed for it, and the digest of its resolved spec."""

    layout: Layout
    assumptions: tuple[Assumption, ...]
    digest: str


def prepare(document: bytes) -> Prepared:
    """A JSON spec as a layout.

    Errors: `SpecRefused` with every fault of the first stage that finds any.
    """
    resolution = resolve(read_spec(document))
    layout = lay_out(resolution.ceiling)
    return Prepared(layout, resolution.assumptions, digest(resolution.ceiling))


def layout_answer(prepared: Prepared, *, trace: bool) -> Mapping[str, Any]:
    """The layout as JSON values; with `trace`, each figure with its rule and operands."""
    answer = layout_to_json(prepared.layout, prepared.assumptions, trace=trace)
    return {**answer, "digest": prepared.digest, "engine": dict(engine())}
