"""An outline out of the parts of a spec, and back as the part that says everything."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from lacunar.exchange.survey_json import bow_json
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.model.outline import CheckDiagonal, Outline, OutlineSpec, SideSpec, Surface, WallStands

Json = dict[str, Any]
Write = Callable[[Length], str]


def outlined(parts: Mapping[str, Any]) -> Json:
    """Turn the parts of a room into its outline."""
    if "outline" not in parts:
        return {}
    said = parts["outline"]
    sides = tuple(SideSpec(**side) for side in said["sides"]) if "sides" in said else None
    read = OutlineSpec(
        sides=sides,
        points=_readable(said["points"]) if "points" in said else None,
        diagonals=tuple(diagonal_read(each) for each in said.get("diagonals", ())),
        tolerance=said.get("tolerance"),
        walls=tuple(WallStands(**each) for each in said.get("walls", ()) if len(each) > 1),
        surfaces=tuple(_surface_read(each) for each in said.get("surfaces", ())),
    )
    return {"outline": read}


def _readable(points: Sequence[object]) -> tuple[Spot, ...]:
    """The corners without those that could not be read, of which there is a fault already."""
    return tuple(point for point in points if isinstance(point, Spot))


def diagonal_read(parts: Mapping[str, Any]) -> CheckDiagonal:
    """What was measured from corner to corner."""
    return CheckDiagonal(parts.get("from_corner"), parts.get("to_corner"), parts.get("length"))


def outline_json(outline: Outline, write: Write) -> Json:
    """Turn an outline into what it was read from; `write` gives a length in the spec's units."""
    sides = [{"length": write(each.length), "corner": each.corner.number} for each in outline.sides]
    points = [{"x": write(spot.x), "y": write(spot.y)} for spot in outline.points]
    diagonals = diagonals_json(outline.diagonals, write)
    walls = [{"wall": each.wall, "stands": str(each.stands)} for each in outline.walls]
    surfaces = [_surface(each, write) for each in outline.surfaces]
    said = {
        "sides": sides,
        "points": points,
        "diagonals": diagonals,
        "walls": walls,
        "surfaces": surfaces,
    }
    return {
        **{name: part for name, part in said.items() if part},
        "tolerance": write(outline.tolerance),
    }


def _surface_read(parts: Mapping[str, Any]) -> Surface:
    return Surface(parts.get("side"), parts.get("finish"), parts.get("bow") or None)


def _surface(surface: Surface, write: Write) -> Json:
    finish, bow = surface.finish, surface.bow
    return {
        "side": surface.side,
        **({"finish": write(finish)} if finish is not None else {}),
        **({"bow": bow_json(bow, write)} if bow else {}),
    }


def diagonals_json(diagonals: Sequence[CheckDiagonal], write: Write) -> list[Json]:
    """Turn what was measured from corner to corner into what it was read from."""
    return [
        {"from_corner": each.from_corner, "to_corner": each.to_corner, "length": write(each.length)}
        for each in diagonals
        if each.length is not None
    ]
