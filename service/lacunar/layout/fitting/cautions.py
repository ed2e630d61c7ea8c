"""The caution about fitting: what has to go up before it is shut out."""

from collections.abc import Iterator

from lacunar.layout.records import Caution, Layout


def fitting_cautions(layout: Layout) -> Iterator[Caution]:
    """Where panels or boards are larger than their mouths."""
    stuck = [
        passing
        for passing in layout.fitting.passing
        if passing.too_small_after is not None and passing.piece != "crown_frame"
    ]
    if stuck:
        yield Caution(
            code="panel_larger_than_mouth",
            text="Panels or boards are larger than the mouths of their coffers. Put them up before"
            " what would shut them out; the order of fitting does.",
            figures={
                "coffer": stuck[0].coffers[0],
                "length": stuck[0].length.value,
                "width": stuck[0].width.value,
                "mouth_length": stuck[0].mouth_length.value,
                "mouth_width": stuck[0].mouth_width.value,
            },
            pointer="/panel/seat",
        )
