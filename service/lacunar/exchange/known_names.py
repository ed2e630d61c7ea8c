"""The names that may stand at a place in a spec, and what to say of one that may not."""

from collections.abc import Iterable
from difflib import get_close_matches

from marshmallow import ValidationError

from lacunar.exchange.fields import refusal
from lacunar.exchange.json_pointer import shown


def unknown_name(name: str, known: Iterable[str]) -> ValidationError:
    """The error to raise for a name nothing is read from, naming the nearest that is."""
    names = sorted(known)
    close = get_close_matches(name, names, n=1)
    return refusal(
        "name_unknown",
        f"Nothing is read from the name {shown(name)} here.",
        f"Write {close[0]} if that is what is meant."
        if close
        else f"Names known here: {', '.join(names)}.",
        {"known": ", ".join(names)},
    )
