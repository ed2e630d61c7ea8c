"""How tests of choosing come by options: from documents as they would be sent."""

import json
from typing import Any

from lacunar.choosing.records import Criterion, Option
from lacunar.choosing.search import FoundOptions
from lacunar.workflow.options import begin_options

Spec = dict[str, Any]


def search(ceiling: Spec, prices: Spec | None = None, **choices: Any) -> FoundOptions:
    """What a search finds that goes through to its end."""
    document: Spec = {"ceiling": ceiling, "choices": choices}
    if prices is not None:
        document["prices"] = prices
    begun = begin_options(json.dumps(document).encode())
    for _ in begun.steps():
        pass
    return begun.search.found()


def options(ceiling: Spec, prices: Spec | None = None, **choices: Any) -> tuple[Option, ...]:
    """The options of a ceiling."""
    return search(ceiling, prices, **choices).found.options


def room(length: object, width: object, height: object = "9 ft", **more: Any) -> Spec:
    """The room of a spec."""
    return {"length": length, "width": width, "height": height, **more}


def value(option: Option, criterion: Criterion) -> Any:
    """What an option comes to by a criterion."""
    (found,) = [each.figure.value for each in option.judged if each.criterion is criterion]
    return found


def grid(option: Option) -> tuple[int, int, str, str]:
    """An option's counts and wall conditions."""
    length, width = option.length, option.width
    return length.coffers, width.coffers, length.start, width.start
