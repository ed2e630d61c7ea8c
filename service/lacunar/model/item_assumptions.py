"""Decides what was left open about ceiling items and wall features."""

from collections.abc import Sequence

from lacunar.measure.length import ZERO, Length
from lacunar.model.assuming import Assuming
from lacunar.model.ceiling_items import (
    Item,
    ItemKind,
    ItemPattern,
    ItemSpec,
    Mobility,
    Mounting,
    WallFeature,
    WallFeatureSpec,
)

# How items are usually mounted, and which of them nobody moves for a beam (common practice, no
# source).
_MOUNTINGS = {
    ItemKind.FAN: Mounting.SURFACE,
    ItemKind.DETECTOR: Mounting.SURFACE,
}
_FIXED = (ItemKind.SPRINKLER,)


def decide_items(items: Sequence[ItemSpec], assuming: Assuming) -> tuple[Item, ...]:
    """Turn ceiling items as asked for into items decided.

    What their pattern has no use for is left out.

    Raises ValueError for a spec that has not passed the rules.
    """
    return tuple(_item(said, f"/room/ceiling_items/{n}", assuming) for n, said in enumerate(items))


def _item(said: ItemSpec, place: str, assuming: Assuming) -> Item:
    if said.kind is None:
        raise ValueError(f"{place}/kind is open: the spec has not passed the rules")
    kind = said.kind
    pattern = assuming.settle(
        said.pattern, f"{place}/pattern", _pattern(said), "as what is said of its place tells"
    )
    in_coffers, grid = pattern is ItemPattern.COFFER_CENTERS, pattern is ItemPattern.GRID
    return Item(
        kind=kind,
        name=said.name or "",
        pattern=pattern,
        x=None if in_coffers else said.x,
        y=None if in_coffers else said.y,
        diameter=said.diameter,
        length=None if said.diameter else said.length,
        width=None if said.diameter else said.width,
        clearance=assuming.settle(
            said.clearance, f"{place}/clearance", ZERO, "nothing is asked to be kept free about it"
        ),
        mounting=assuming.settle(
            said.mounting,
            f"{place}/mounting",
            _MOUNTINGS.get(kind, Mounting.RECESSED),
            f"usual for a {kind}",
        ),
        mobility=assuming.settle(
            said.mobility,
            f"{place}/mobility",
            Mobility.FIXED if kind in _FIXED else Mobility.MOVABLE,
            "its pipes are in the ceiling" if kind in _FIXED else "nothing says that it must stay",
        ),
        drop=said.drop,
        coffers=said.coffers if in_coffers else (),
        columns=said.columns if grid else None,
        rows=said.rows if grid else None,
        length_pitch=_of_many(said.length_pitch, said.columns) if grid else None,
        width_pitch=_of_many(said.width_pitch, said.rows) if grid else None,
    )


def _of_many(pitch: Length | None, count: int | None) -> Length | None:
    """A pitch where there is more than one."""
    return pitch if count is not None and count > 1 else None


def _pattern(said: ItemSpec) -> ItemPattern:
    if said.columns is not None or said.rows is not None:
        return ItemPattern.GRID
    if said.x is None and said.y is None:
        return ItemPattern.COFFER_CENTERS
    return ItemPattern.SINGLE


def decide_wall_features(
    features: Sequence[WallFeatureSpec], assuming: Assuming
) -> tuple[WallFeature, ...]:
    """Turn wall features as asked for into features with a name each.

    Raises ValueError for a spec that has not passed the rules.
    """
    decided = []
    for number, said in enumerate(features):
        place = f"/room/wall_features/{number}"
        if said.kind is None or said.wall is None or said.center is None or said.width is None:
            raise ValueError(f"{place} is open: the spec has not passed the rules")
        name = assuming.settle(
            said.name or None,
            f"{place}/name",
            f"{said.kind.value.capitalize()} {number + 1}",
            "by its place in the list",
        )
        decided.append(WallFeature(said.kind, name, said.wall, said.center, said.width, said.head))
    return tuple(decided)
