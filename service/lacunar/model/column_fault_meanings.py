"""What the faults of columns mean."""

from lacunar.model.fault_meaning import FaultMeaning

COLUMN_FAULTS = {
    "column_unclear": FaultMeaning(
        "Column unclear",
        "Where a column stands is told in two ways.",
        "Give its center with both sizes, or its corners.",
    ),
    "column_not_convex": FaultMeaning(
        "Column not convex",
        "A column has fewer than three corners, crosses itself, or turns inward somewhere.",
        "Give the polygon about it.",
    ),
    "columns_in_survey": FaultMeaning(
        "Columns in a surveyed room",
        "Columns are laid out in rooms told by length and width or by an outline.",
        "Give the room as an outline.",
    ),
    "column_at_wall": FaultMeaning(
        "Column at a wall",
        "A column does not stand free: it meets a wall, or what stands at one.",
        "Tell it as a part of the outline, or let nothing stand at the wall there.",
    ),
    "columns_meet": FaultMeaning(
        "Columns meet",
        "Two columns touch or overlap.",
        "Tell them as one.",
    ),
}
