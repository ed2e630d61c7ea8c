"""Ids of coffers and beams."""

# Row letters, without I and O, which read as figures.
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


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
