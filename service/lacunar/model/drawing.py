"""Paper and the fields of the title block (ISO 7200)."""

from dataclasses import dataclass
from enum import StrEnum


class Paper(StrEnum):
    """Named paper sizes; drawings lie in landscape."""

    LETTER = "letter"
    TABLOID = "tabloid"
    ANSI_C = "ansi_c"
    ANSI_D = "ansi_d"
    ARCH_C = "arch_c"
    ARCH_D = "arch_d"
    A4 = "a4"
    A3 = "a3"
    A2 = "a2"
    A1 = "a1"


class StoryPoles(StrEnum):
    """How story poles are drawn: as a table alone, or at full size too.

    `roll` is for a plotter: each pole on one long page, or on a few. `tiles` are pieces on paper
    that any office prints, cut out and taped together.
    """

    TABLE = "table"
    ROLL = "roll"
    TILES = "tiles"


@dataclass(frozen=True, slots=True)
class Drawing:
    """What is printed on and what the title block says. Empty text is left blank on the sheet.

    `date` is the date of issue (ISO 8601, an input: the clock is never read).
    """

    paper: Paper
    story_poles: StoryPoles
    number: str
    revision: str
    date: str
    status: str
    owner: str
    creator: str
    approver: str
