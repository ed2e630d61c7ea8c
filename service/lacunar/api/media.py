"""The media types that tables and single values are sent in."""

from lacunar.api.operation import JSON, Media, Query
from lacunar.exchange.query_schema import BookMedia, TableMedia

CSV = "text/csv"
TEXT = "text/plain"
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"

BARE_VALUE = Media(
    TEXT,
    {"type": "string"},
    "With `field`: one value, as text without a line break. With `on_error=text`: what is wrong.",
)

_TYPES = {TableMedia.JSON: JSON, TableMedia.CSV: CSV}
_BOOK_TYPES = {BookMedia.JSON: JSON, BookMedia.CSV: CSV, BookMedia.XLSX: XLSX}


def table_or_value(query: Query) -> str | None:
    """The media type a query names by `field` or by `format`, if it does."""
    if "field" in query:
        return TEXT
    return _TYPES[query["format"]] if "format" in query else None


def table_or_book(query: Query) -> str | None:
    """The media type a query names by `format`, if it does; a `table` of its own is CSV."""
    if "format" in query:
        return _BOOK_TYPES[query["format"]]
    return CSV if "table" in query else None
