"""Cautions about how low the beams hang."""

from collections.abc import Iterator

from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import Length
from lacunar.model.faults import FigureValue

# How deep beams may be by the height of the ceiling before they look heavy, from heights of 8, 9,
# 10 and 11 ft up: 4, 8, 10 and 12 in (a beam maker's advice to its customers; a matter of looks).
_ADVISED_DEPTHS = tuple(
    (Length.of_feet(height), Length.of_inches(depth))
    for height, depth in ((11, 12), (10, 10), (9, 8), (8, 4))
)


def headroom_cautions(layout: Layout) -> Iterator[Caution]:
    """Cautions of beams lower than the limit, and of beams deep for their ceiling."""
    low = [clear for clear in layout.headroom if not clear.enough]
    if low:
        lowest = min(low, key=lambda clear: clear.clear_height.value)
        yield Caution(
            code="headroom_below_limit",
            text="There is less headroom below beams than the limit in the spec. The model code"
            " (International Residential Code, section R305.1) asks for 7 ft in habitable rooms;"
            " what beams may project below that differs by edition."
            f"{_edition(layout)} Older model-code text let beams at least 48 in on center hang"
            " up to 6 in below the height required. The local code governs.",
            figures={
                **_on_center(layout),
                "clear_height": lowest.clear_height.value,
                "limit": lowest.limit,
                "profiles": ", ".join(clear.profile for clear in low),
            },
            pointer="/room/headroom",
        )
    yield from _deep_for_height(layout)


def _edition(layout: Layout) -> str:
    """What the limit in the spec was taken from, where that was told."""
    edition = layout.ceiling.room.code_edition
    return f" The limit is taken from: {edition}." if edition else ""


def _on_center(layout: Layout) -> dict[str, FigureValue]:
    """The least between centers of neighboring beams in each run that has two."""
    return {
        f"on_center_{gap.run}": gap.centers.value
        for gap in layout.heights.gaps
        if gap.centers is not None
    }


def _deep_for_height(layout: Layout) -> Iterator[Caution]:
    height = layout.ceiling.room.height
    deepest = max((profile.drop.value for profile in layout.profiles), default=None)
    advised = next((depth for from_height, depth in _ADVISED_DEPTHS if height >= from_height), None)
    if deepest is None or (advised is not None and deepest <= advised):
        return
    figures = {"drop": deepest, "height": height}
    yield Caution(
        code="beams_deep_for_height",
        text="The beams are deep for a ceiling of this height and may weigh on the room. Tape up a"
        " full-size mock-up before building them.",
        figures=figures if advised is None else {**figures, "advised_drop": advised},
        pointer="/beams",
    )
