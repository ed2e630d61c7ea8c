"""From a query about stock to the published sizes it means."""

from collections.abc import Mapping
from typing import Any

from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.published_stock import PublishedSize, published_size, published_sizes
from lacunar.model.stock import StockNameError


def stock_listed(query: Mapping[str, Any]) -> tuple[PublishedSize, ...]:
    """The published sizes a query asks for, by thickness and width in each list.

    Raises `SpecRefused` for a name that is in no list.
    """
    sizes = tuple(published_sizes()) if "name" not in query else (_named(query["name"]),)
    kind = query.get("kind")
    return tuple(size for size in sizes if kind is None or size.kind is kind)


def _named(name: str) -> PublishedSize:
    try:
        return published_size(name)
    except StockNameError as error:
        fault = Fault(
            code="stock_name_unknown",
            pointer="/name",
            message=error.reason,
            remedy=error.remedy,
            figures={"name": name},
        )
        raise SpecRefused([fault]) from None
