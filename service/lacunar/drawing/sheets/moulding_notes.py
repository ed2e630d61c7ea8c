"""Crown in sentences for the notes on a sheet."""

from collections.abc import Iterator

from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import Mouldings
from lacunar.model.moulding import Crown, CrownMethod

# More sizes than these are a list, which belongs in a table.
LISTED_SIZES = 3

_METHODS = {
    CrownMethod.BENCH_FRAME: "mitred frames made up on the bench",
    CrownMethod.COPED_IN_PLACE: "coped in place",
}


def crown_notes(mouldings: Mouldings, asked: Crown | None, wording: SheetWording) -> Iterator[str]:
    """What crown there is and how it stands; then what it leaves to be seen, size by size."""
    crown = mouldings.crown
    if crown is None or asked is None:
        return
    yield (
        f"Crown {wording.size(crown.face.value)}, spring {crown.spring_from_wall.value.tenths} from"
        f" the wall: {wording.length(crown.drop.value)} down the side and"
        f" {wording.length(crown.projection.value)} out along the ceiling;"
        f" {_METHODS[asked.method]}."
    )
    sizes = dict.fromkeys(
        f"{wording.length(trim.seen_length.value)} x {wording.length(trim.seen_width.value)}"
        for trim in mouldings.coffers
    )
    told = ", ".join(list(sizes)[:LISTED_SIZES])
    more = f", and {len(sizes) - LISTED_SIZES} more" if len(sizes) > LISTED_SIZES else ""
    yield f"Seen opening{'s' if len(sizes) > 1 else ''} inside the crown: {told}{more}."
