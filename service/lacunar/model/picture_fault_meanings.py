"""What faults of sheets as pictures mean, and what to do about them."""

from lacunar.model.fault_meaning import FaultMeaning

PICTURE_FAULTS = {
    "dpi_out_of_bounds": FaultMeaning(
        "Resolution out of bounds",
        "A picture was asked for with fewer or more pixels to the inch than are made.",
        "Ask for a number within the bounds that are told.",
    ),
    "picture_too_large": FaultMeaning(
        "Picture too large",
        "A sheet has more pixels at the resolution asked for than a picture is made of.",
        "Ask for the resolution that is named, or for a PDF.",
    ),
}
