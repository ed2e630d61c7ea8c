"""Ids of coffers and beams, and how many of them are told in a sentence."""

from collections.abc import Sequence

# Row letters, without I and O, which read as figures.
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
TOLD = 6


def row_letters(row: int) -> str:
    """Turn a row number, counted from 1 at the datum, into its letters: A … Z, AA, AB, ….

    >>> [row_letters(row) for row in (1, 8, 9, 24, 25, 48, 49)]
    ['A', 'H', 'J', 'Z', 'AA', 'AZ', 'BA']
    """
    letters = ""
    while row:
        row, letter = divmod(row - 1, len(LETTERS))
        letters = LETTERS[letter] + letters
    return letters


def coffer_id(row: int, column: int) -> str:
    """Turn a coffer's row and column, counted from 1 at the datum, into its id.

    >>> coffer_id(2, 3)
    'B3'
    """
    return f"{row_letters(row)}{column}"


def from_to(ids: Sequence[str]) -> str:
    """Turn ids in order into how they are told shortly: the first and the last.

    >>> from_to(["A1", "A2", "B1"]), from_to(["A1"]), from_to([])
    ('A1 to B1', 'A1', 'none')
    """
    if len(ids) > 1:
        return f"{ids[0]} to {ids[-1]}"
    return ids[0] if ids else "none"


def first_few(ids: Sequence[str], what: str = "") -> str:
    """Turn ids into the first six of them and the number of the others.

    Parameters: `ids`; `what` the others are, where that is to be said.

    >>> first_few(["A1", "A2"]), first_few([f"A{n}" for n in range(1, 9)], "coffers")
    ('A1, A2', 'A1, A2, A3, A4, A5, A6 and 2 more coffers')
    """
    more = len(ids) - TOLD
    told = ", ".join(ids[:TOLD])
    return f"{told} and {more} more {what}".rstrip() if more > 0 else told
