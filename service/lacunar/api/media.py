"""The media types that tables and single values are sent in."""

from lacunar.api.operation import JSON, Media, Query
from lacunar.exchange.query_schema import TableMedia

CSV = "text/csv"
TEXT = "text/plain"

BARE_VALUE = Media(
    TEXT,
    {"type": "string"},
    "With `field`: one value, as text without a line break. With `on_error=text`: what is wrong.",
)

_TYPES = {TableMedia.JSON: JSON, TableMedia.CSV: CSV}


def table_or_value(query: Query) -> str | None:
    """The media type a query names by `field` or by `format`, if it does."""
    if "field" in query:
        return TEXT
    return _TYPES[query["format"]] if "format" in query else None
