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


class SheetNumber(StrEnum):
    """The drawings a set can have, in their order: Z for shop drawings, then the kind of sheet.

    The numbering is that of the US National CAD Standard: 0 general, 1 plans, 2 elevations, 3
    sections, 5 details, 6 schedules, 9 pictorials; 7 is free for a user's own kinds, here those at
    full size. From memory of the standard.
    """

    COVER = "Z-001"
    PLAN = "Z-101"
    SETTING_OUT = "Z-102"
    BACKING = "Z-103"
    PANELS = "Z-104"
    ELEVATIONS = "Z-201"
    SECTIONS = "Z-301"
    PROFILES = "Z-501"
    CROSSINGS = "Z-502"
    CROWN = "Z-503"
    CUT_LIST = "Z-601"
    CUTTING = "Z-602"
    MATERIALS = "Z-603"
    STORY_POLES = "Z-701"
    MOCK_UP = "Z-702"
    EXPLODED = "Z-901"


@dataclass(frozen=True, slots=True)
class Drawing:
    """What is printed on and what the title block says. Empty text is left blank on the sheet.

    `sheets` are the drawings to be issued, in the order of the set; one that has nothing to show of
    a ceiling is left out. `date` is the date of issue (ISO 8601, an input: the clock is never
    read).
    """

    paper: Paper
    sheets: tuple[SheetNumber, ...]
    story_poles: StoryPoles
    number: str
    revision: str
    date: str
    status: str
    owner: str
    creator: str
    approver: str
