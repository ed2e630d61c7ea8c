"""Options as JSON: each with its figures, its sentences, and the ceiling it asks for."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from lacunar.choosing.laying import LaidOut
from lacunar.choosing.search import FoundOptions
from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.option_words import why
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption, Ceiling

Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class PreparedOptions:
    """Options with what was assumed for the search, and the ceiling as it was sent, resolved."""

    options: FoundOptions
    assumptions: tuple[Assumption, ...]
    digest: str
    ceiling: Ceiling

    @property
    def step(self) -> Step:
        """What texts of lengths are rounded to."""
        return self.ceiling.mark_to


def options_to_json(prepared: PreparedOptions, *, trace: bool) -> Json:
    """Turn options into JSON values; with `trace`, each figure with its reason."""
    write = RecordWriter(prepared.step, trace)
    found = prepared.options.found
    return {
        "units": str(prepared.step.units),
        "mark_to": prepared.step.text,
        "counts": write.value(found.counts),
        "options": list(_options(prepared, write)),
        "nudges": write.value(found.nudges),
        "not_searched": write.value(found.not_searched),
        "assumptions": write.value(_assumed(prepared)),
        "digest": prepared.digest,
    }


def _options(prepared: PreparedOptions, write: RecordWriter) -> Iterator[Json]:
    options = prepared.options.found.options
    for option, laid in zip(options, prepared.options.laid_out, strict=True):
        yield {
            **write.record(option),
            "why": list(why(option, len(options), prepared.step)),
            "ceiling": ceiling_to_json(laid.resolution.ceiling),
        }


def _assumed(prepared: PreparedOptions) -> tuple[Assumption, ...]:
    """What was assumed for the search, then for any of the options, each thing once."""
    each = (_assumed_for(laid) for laid in prepared.options.laid_out)
    told = [*prepared.assumptions, *(one for assumed in each for one in assumed)]
    return tuple({(one.pointer, str(one.value)): one for one in told}.values())


def _assumed_for(laid: LaidOut) -> Iterator[Assumption]:
    """What was assumed for one layout, and where it is priced for its take-off and of stock."""
    yield from laid.resolution.assumptions
    if laid.costed is not None:
        yield from laid.resolution.take_off_assumptions
        yield from laid.costed.assumptions
