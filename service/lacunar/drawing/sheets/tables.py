"""Tables on the sheet: what all have, and the one of beam profiles."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from lacunar.drawing import style
from lacunar.drawing.annotation import HEADING_HEIGHT, Block, heading
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import BeamProfile

ROW_PITCH = 4.6


@dataclass(frozen=True, slots=True)
class Column:
    """A table column: its words at the top, where it stands [mm], and which edge text keeps to."""

    words: str
    at: float
    anchor: Literal["start", "end"] = "end"


def column_heads(columns: Sequence[Column], width: float, top: float) -> tuple[Element, ...]:
    """The columns' words with a rule under them."""
    words = tuple(
        Text(Pt(c.at, top + style.TEXT), c.words, style.TEXT, Face.MEDIUM, c.anchor)
        for c in columns
    )
    rule = Polyline((Pt(0, top + 4.2), Pt(width, top + 4.2)), style.FINE)
    return (*words, rule)


def rows_that_fit(height: float) -> int:
    """How many table rows a block of `height` [mm] holds under its heading and column heads."""
    return int((height - HEADING_HEIGHT - 5.4) // ROW_PITCH)


def profile_table(profiles: Sequence[BeamProfile], width: float, wording: SheetWording) -> Block:
    """Every beam profile: its finished width, drop, backing and which beams have it."""
    columns = (
        Column("ID", 0.0, "start"),
        Column("WIDTH", width * 0.30),
        Column("DROP", width * 0.50),
        Column("BACKING", width * 0.76),
        Column("BEAMS", width),
    )
    y = HEADING_HEIGHT + 5.4
    drawn: list[Element] = []
    for profile in profiles:
        backing = next((p.width.value for p in profile.parts if p.name == "backing"), None)
        cells = (
            profile.id,
            wording.detail(profile.finished_width.value),
            wording.detail(profile.drop.value),
            wording.detail(backing) if backing else "-",
            _used_by(profile),
        )
        row = tuple(
            Text(Pt(c.at, y + style.TEXT), words, style.TEXT, anchor=c.anchor)
            for c, words in zip(columns, cells, strict=True)
        )
        drawn.append(Group("profile-row", row, data={"profile": profile.id}))
        y += ROW_PITCH
    children = (
        *heading("BEAM PROFILES", width),
        *column_heads(columns, width, HEADING_HEIGHT),
        *drawn,
    )
    return Block(width, y, (Group("profile-table", children, id="profile-table"),))


def _used_by(profile: BeamProfile) -> str:
    """The beams of a profile: the one, or how many."""
    return profile.used_by[0] if len(profile.used_by) == 1 else f"{len(profile.used_by)}x"
