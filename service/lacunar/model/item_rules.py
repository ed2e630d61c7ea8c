"""Rules about ceiling items and wall features that need no setting out."""

from collections.abc import Iterator

from lacunar.measure.length import Length
from lacunar.model import limits
from lacunar.model.ceiling_items import ItemPattern, ItemSpec, WallFeatureSpec
from lacunar.model.faults import Fault
from lacunar.model.room import WALLS, RunName
from lacunar.model.rule_case import RuleCase, missing

_PITCHES = (("columns", "length_pitch"), ("rows", "width_pitch"))


def _items(case: RuleCase) -> Iterator[tuple[str, ItemSpec]]:
    for number, item in enumerate(case.spec.room.ceiling_items):
        place = f"/room/ceiling_items/{number}"
        if case.sound(place):
            yield place, item


def _features(case: RuleCase) -> Iterator[tuple[str, WallFeatureSpec]]:
    for number, feature in enumerate(case.spec.room.wall_features):
        place = f"/room/wall_features/{number}"
        if case.sound(place):
            yield place, feature


def items_have_a_kind_and_a_size(case: RuleCase) -> Iterator[Fault]:
    """What an item is and how large it is cannot be assumed: cut-outs differ by the maker."""
    for place, item in _items(case):
        if item.kind is None:
            yield missing(f"{place}/kind", "The kind of the item")
        edges = item.length is not None and item.width is not None
        either = item.length is not None or item.width is not None
        if edges is not (item.diameter is None) or (item.diameter is not None and either):
            yield Fault(
                code="item_not_sized",
                pointer=place,
                message="The size of the item is not told in one way.",
                remedy="Give a diameter, or else a length and a width.",
            )


def items_have_a_place_or_a_pattern(case: RuleCase) -> Iterator[Fault]:
    """One item and a grid have a place; items in coffers take theirs from the coffers."""
    for place, item in _items(case):
        placed = item.x is not None and item.y is not None
        anywhere = item.x is not None or item.y is not None
        gridded = item.columns is not None or item.rows is not None
        in_coffers = item.pattern is ItemPattern.COFFER_CENTERS or (
            item.pattern is None and not anywhere and not gridded
        )
        if in_coffers and not (anywhere or gridded):
            continue
        if in_coffers or not placed or (item.coffers and not in_coffers):
            yield Fault(
                code="item_place_unclear",
                pointer=place,
                message="Where the item is to be is told in part, or in two ways.",
                remedy="Give x and y from the datum, or neither of them to have one in the middle"
                " of each coffer.",
            )


def grids_of_items_are_told(case: RuleCase) -> Iterator[Fault]:
    """A grid has both counts, and a pitch along each run on which it has more than one."""
    for place, item in _items(case):
        if item.pattern is not ItemPattern.GRID and item.columns is None and item.rows is None:
            continue
        if item.pattern in (ItemPattern.SINGLE, ItemPattern.COFFER_CENTERS):
            yield Fault(
                code="item_place_unclear",
                pointer=place,
                message="Columns and rows are told of an item that is no grid.",
                remedy='Leave them out, or write "pattern": "grid".',
            )
            continue
        for count_name, pitch_name in _PITCHES:
            count: int | None = getattr(item, count_name)
            if count is None:
                yield _untold(f"{place}/{count_name}", f"How many {count_name} the grid has")
            elif not 1 <= count <= limits.ITEMS_IN_ALL:
                yield Fault(
                    code="too_many_items",
                    pointer=f"{place}/{count_name}",
                    message="There is no such number of items in a grid.",
                    remedy=f"Ask for 1 to {limits.ITEMS_IN_ALL}.",
                    figures={"given": count, "most": limits.ITEMS_IN_ALL},
                )
            elif count > 1 and getattr(item, pitch_name) is None:
                yield _untold(f"{place}/{pitch_name}", f"The {pitch_name} of the grid")


def _untold(pointer: str, what: str) -> Fault:
    """The fault of a grid told in part. Other patterns do without, so the outline cannot ask."""
    return Fault(
        code="item_grid_incomplete",
        pointer=pointer,
        message=f"{what} is not given, and cannot be assumed.",
        remedy=f"Give {pointer.rpartition('/')[2]}, or leave the pattern out.",
    )


def features_are_described(case: RuleCase) -> Iterator[Fault]:
    """A feature has a kind, a wall, a place and a width; none of them can be assumed."""
    for place, feature in _features(case):
        for name in ("kind", "wall", "center", "width"):
            if getattr(feature, name) is None:
                yield missing(f"{place}/{name}", f"The feature's {name}")


def features_lie_on_their_wall(case: RuleCase) -> Iterator[Fault]:
    """A feature lies between the ends of its wall."""
    for place, feature in _features(case):
        if feature.wall is None or feature.center is None or feature.width is None:
            continue
        if feature.wall not in WALLS and case.spec.room.outline is None:
            yield Fault(
                code="feature_wall_unknown",
                pointer=f"{place}/wall",
                message=f"A room with four walls has no wall {feature.wall}.",
                remedy="Name one of W1 to W4, or give the room as an outline.",
                figures={"wall": feature.wall},
            )
        span = _span(case, feature.wall)
        half = feature.width / 2
        if span is None or (feature.center >= half and feature.center + half <= span):
            continue
        yield Fault(
            code="feature_outside_wall",
            pointer=f"{place}/center",
            message=f"The feature does not lie between the ends of {feature.wall}.",
            remedy="Measure its center from the datum's end of the wall: from W1 on W2 and W4,"
            " from W4 on W1 and W3.",
            figures={"near": feature.center - half, "far": feature.center + half, "span": span},
        )


def _span(case: RuleCase, wall: str) -> Length | None:
    if wall not in WALLS:
        return None
    run = run_along(wall)
    if not case.sound(f"/room/{run}"):
        return None
    return case.spec.room.length if run is RunName.LENGTH else case.spec.room.width


def run_along(wall: str) -> RunName:
    """The run that a wall lies along.

    >>> run_along("W1"), run_along("W2")
    (<RunName.WIDTH: 'width'>, <RunName.LENGTH: 'length'>)
    """
    return RunName.WIDTH if WALLS.index(wall) % 2 == 0 else RunName.LENGTH


def features_end_below_the_ceiling(case: RuleCase) -> Iterator[Fault]:
    """The head of a feature is no higher than the ceiling."""
    height = case.spec.room.height
    for place, feature in _features(case):
        if feature.head is None or height is None or not case.sound("/room/height"):
            continue
        if feature.head > height:
            yield Fault(
                code="feature_above_ceiling",
                pointer=f"{place}/head",
                message="The head of the feature is above the ceiling.",
                remedy="Give its height above the finished floor.",
                figures={"head": feature.head, "height": height},
            )


ITEM_RULES = (
    items_have_a_kind_and_a_size,
    items_have_a_place_or_a_pattern,
    grids_of_items_are_told,
    features_are_described,
    features_lie_on_their_wall,
    features_end_below_the_ceiling,
)
