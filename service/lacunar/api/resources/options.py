"""Options: a ceiling in, the layouts of it that are worth considering out."""

from lacunar.api import option_examples
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation, Query
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import OptionMedia, OptionsQuery
from lacunar.workflow.options import options_answer, options_pdf, prepare_options

_MEDIA = {
    OptionMedia.JSON: Media(JSON, {"$ref": "#/components/schemas/Options"}, "The options."),
    OptionMedia.PDF: Media(
        "application/pdf",
        {"type": "string", "format": "binary"},
        "Small plans of the options with their figures, for a client to point at.",
    ),
}


def choose(asked: Asked) -> Answer:
    """A ceiling as its options."""
    prepared = prepare_options(asked.document)
    if asked.media == _MEDIA[OptionMedia.PDF].type:
        return Answer(options_pdf(prepared), f"options-{prepared.digest[:12]}.pdf")
    return Answer(json_bytes(options_answer(prepared, trace=asked.query.get("trace", False))))


def _chosen(query: Query) -> str | None:
    return _MEDIA[query["format"]].type if "format" in query else None


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/options",
        id="createOptions",
        tag="Ceilings",
        summary="Find the layouts of a ceiling that are worth considering",
        description=(
            "Takes a ceiling's spec, alone or with the limits within which it may be varied, and"
            " answers with layouts none of which is beaten: no other is at least as good in"
            " everything and better in something. What the ceiling tells is kept unless the limits"
            " name it; what it leaves open is varied within usual limits, which are listed. Every"
            " combination is compared by its runs, the best are laid out and taken off in full;"
            " the answer tells how many, and what was not searched. With `nudges_of`, small changes"
            " of one option are tried as well. With `prices`, the price list of an estimate, and"
            " maybe `stock`, each option is estimated by itself, and compared by its total unless"
            " only some of them lack a price. A search is bounded by counts, so that the same"
            " request gets the same answer. Nothing is stored."
        ),
        media=tuple(_MEDIA.values()),
        statuses=(400, 406, 413, 415, 422, 503),
        answer=choose,
        query=OptionsQuery(),
        chosen=_chosen,
        document="OptionsAsked",
        examples=option_examples.EXAMPLES,
    ),
)
