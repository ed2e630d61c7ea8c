"""Cautions about ceiling items and wall features: what meets what, and who has the say."""

from collections.abc import Iterator
from itertools import pairwise

from lacunar.layout.item_records import CeilingItem, Meeting, Meets
from lacunar.layout.names import first_few
from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling_items import ItemKind

# NFPA 72 words for ceilings, by projections and their spacing (a training center's page on beams
# and joists, read at second hand; the code itself was not opened).
_SHALLOW = Length.of_inches(4)
_NARROW = Length.of_inches(36)
_ITEMS = "/room/ceiling_items"


def item_cautions(layout: Layout) -> Iterator[Caution]:
    """Everything a careful hand would say about ceiling items and wall features."""
    items = layout.items.items
    kinds = {item.kind for item in items}
    if kinds & {ItemKind.DETECTOR, ItemKind.SPRINKLER}:
        yield _placing_is_by_code(layout)
    yield from _conflicts(items)
    yield from _low(layout)
    if kinds & {ItemKind.LIGHT, ItemKind.FAN}:
        yield Caution(
            code="wiring_and_fan_boxes",
            text="Wiring and boxes are for a licensed electrician, before the panels go up. A fan"
            " hangs from a box and framing that are rated to carry fans, never from a beam's"
            " boards or a panel.",
            figures={},
            pointer=_ITEMS,
        )
    yield from _no_clear_count(layout)
    yield from _beam_ends(layout)


def _placing_is_by_code(layout: Layout) -> Caution:
    return Caution(
        code="detectors_under_beams",
        text="Where detectors and sprinklers stand, and how far apart, is set by the local code and"
        " by a licensed designer; beams change both, and a place that is clear of beams here is"
        " not thereby a right one. None may be moved, covered or painted without them."
        f"{_nfpa_word(layout)}",
        figures={},
        pointer=_ITEMS,
    )


def _nfpa_word(layout: Layout) -> str:
    """What fire designers call a ceiling of such beams, as a word to ask with."""
    built = layout.beams
    if not built:
        return ""
    drop = max(layout.profile(beam.profile).drop.value for beam in built)
    if drop <= _SHALLOW:
        word = "a smooth one (projections of up to 4 in)"
    else:
        gaps = [
            after.center.at_start.value - before.center.at_start.value
            for before, after in pairwise(built)
            if before.on is after.on
        ]
        close = bool(gaps) and max(gaps) <= _NARROW
        word = (
            "one with joists (over 4 in deep, up to 36 in apart)"
            if close
            else "one with beams (over 4 in deep, over 36 in apart)"
        )
    return f" In the words of NFPA 72 a ceiling like this is {word}; ask what follows from that."


def _conflicts(items: tuple[CeilingItem, ...]) -> Iterator[Caution]:
    meeting = [item for item in items if item.conflicts]
    if not meeting:
        return
    for meets in Meets:
        ids = [i.id for i in meeting if any(each.meets is meets for each in i.conflicts)]
        if ids:
            worst = max(
                each.overlap.value
                for item in meeting
                for each in item.conflicts
                if each.meets is meets
            )
            yield Caution(
                code=f"items_meet_{meets}s",
                text=f"Ceiling items come too close to a {meets}, or into it: {first_few(ids)}."
                " Each is told with the nearest place that is clear of everything.",
                figures={"items": len(ids), "most_overlap": worst},
                pointer=_ITEMS,
            )
    nowhere = [item.id for item in meeting if item.nearest_clear is None]
    if nowhere:
        yield Caution(
            code="no_clear_place",
            text=f"No place on the whole ceiling is clear for {first_few(nowhere)}, at that size"
            " and clearance. Change the grid, or what goes up.",
            figures={"items": len(nowhere)},
            pointer=_ITEMS,
        )


def _low(layout: Layout) -> Iterator[Caution]:
    limit = layout.ceiling.room.headroom
    low = [
        (item.clear_height.value, item.id)
        for item in layout.items.items
        if item.clear_height is not None and item.clear_height.value < limit
    ]
    if low:
        clear, _ = min(low)
        yield Caution(
            code="item_below_headroom",
            text=f"There is less headroom below {first_few([name for _, name in low])} than the"
            " limit in the spec. For fans, the maker's instructions and the local code say how high"
            " the blades must be.",
            figures={"clear_height": clear, "limit": limit},
            pointer=_ITEMS,
        )


def _no_clear_count(layout: Layout) -> Iterator[Caution]:
    for search in layout.items.counts_clear_of_fixed:
        if not search.clear:
            yield Caution(
                code="no_count_clear_of_items",
                text=f"No number of coffers along the {search.run} run keeps every beam clear of"
                " every fixed item, with the walls as they are. Try another wall condition,"
                " narrower beams, or a soffit that shifts the grid.",
                figures={"fewest": search.fewest, "most": search.most},
                pointer=f"/grid/{search.run}",
            )


def _beam_ends(layout: Layout) -> Iterator[Caution]:
    for number, check in enumerate(layout.wall_features):
        place = f"/room/wall_features/{number}"
        for beam in check.beams:
            if beam.meeting is Meeting.OVER_EDGE:
                yield Caution(
                    code="beam_over_edge_of_feature",
                    text=f"{beam.beam} ends over an edge of {check.name}, which reads as a"
                    " mistake. Have it clear of the opening, within it, or on its center.",
                    figures={"offset": beam.offset.value, "past_edge": beam.past_edge.value},
                    pointer=place,
                )
        low = [b.beam for b in check.beams if b.over_head and b.over_head.value < ZERO]
        if low or check.along_wall:
            yield Caution(
                code="beam_below_head",
                text=f"{first_few([*low, *check.along_wall])} hangs lower than the head of"
                f" {check.name}. See that doors open, and where casing and trim end.",
                figures={"beams": len(low) + len(check.along_wall)},
                pointer=f"{place}/head",
            )
