"""A decided ceiling as a spec that says everything, and the digest ceilings are told apart by."""

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass, fields
from typing import Any

from lacunar.exchange.column_schema import columns_json
from lacunar.exchange.openings_json import openings_to_json
from lacunar.exchange.outline_json import outline_json
from lacunar.exchange.panel_fields import temperature_text
from lacunar.exchange.survey_json import crooked_json, survey_json
from lacunar.exchange.take_off_section import take_off_to_json
from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.measure.writing import write_exact
from lacunar.model.beams import Box, FamilyBeam, FamilyProfile, Flat
from lacunar.model.boards import Air, Boards, Moisture, Movement
from lacunar.model.ceiling import Ceiling
from lacunar.model.ceiling_items import Item, WallFeature
from lacunar.model.fixing import Fixing, Wood
from lacunar.model.grid import (
    CoffersInAll,
    CoffersPerZone,
    CountRule,
    FixedBeam,
    LargestOpening,
    Run,
    WallCondition,
    WishedOpening,
)
from lacunar.model.look import Look
from lacunar.model.moulding import Crown, FlatMoulding
from lacunar.model.panel import Panel, PanelKind
from lacunar.model.room import WALLS, Joists, Member, Room
from lacunar.model.stations import Leveling, Station
from lacunar.model.stock import SOFTWOOD, Stock, StockKind
from lacunar.model.wall_kind import WallKind

Json = dict[str, Any]

_MOISTURES = ("now", "driest", "dampest")


def ceiling_to_json(ceiling: Ceiling) -> Json:
    """Turn a ceiling into the spec that leaves nothing open.

    Lengths are exact text with their unit, so that `read_spec` takes the spec back to the same
    ceiling without assuming anything. What a ceiling may be without (a wall finish nobody gave, a
    casing as wide as it must be) is left out.
    """
    write = _Writer(ceiling.units)
    return {
        "name": ceiling.name,
        "units": str(ceiling.units),
        "mark_to": ceiling.mark_to.text,
        "room": write.room(ceiling.room),
        "beams": {
            "crosswise": write.family(ceiling.beams.crosswise),
            "lengthwise": write.family(ceiling.beams.lengthwise),
            "through": str(ceiling.beams.through),
            "depth": str(ceiling.beams.depth),
            "look": write.look(ceiling.beams.look),
        },
        "grid": {"length": write.run(ceiling.grid.length), "width": write.run(ceiling.grid.width)},
        "panel": write.panel(ceiling.panel),
        **({"fixing": write.fixing(ceiling.fixing)} if ceiling.fixing else {}),
        **({"crown": write.crown(ceiling.crown)} if ceiling.crown else {}),
        **write.flat_mouldings(ceiling.flat_mouldings),
        **(
            {"measured_openings": openings_to_json(ceiling.measured_openings, write.length)}
            if ceiling.measured_openings
            else {}
        ),
        "take_off": take_off_to_json(ceiling.take_off, write.length, write.stock),
        "stock": write.lengths(
            kerf=ceiling.stock.kerf,
            longest_board=ceiling.stock.longest_board,
            longest_sheet=ceiling.stock.longest_sheet,
        ),
        "drawing": {
            **{
                field.name: str(getattr(ceiling.drawing, field.name))
                for field in fields(ceiling.drawing)
            },
            "sheets": [str(number) for number in ceiling.drawing.sheets],
        },
    }


def canonical_bytes(value: object) -> bytes:
    """Turn a JSON value into the one sequence of bytes it has: names sorted, no spaces, UTF-8.

    Equal values give equal bytes as long as they hold no fractional numbers, which the spec of
    `ceiling_to_json` does not.

    >>> canonical_bytes({"b": [1, "x"], "a": True})
    b'{"a":true,"b":[1,"x"]}'
    """
    text = json.dumps(
        value, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":")
    )
    return text.encode("utf-8")


def digest(ceiling: Ceiling) -> str:
    """Turn a ceiling into 64 hexadecimal digits that are equal only for equal ceilings.

    SHA-256 over the canonical bytes of the resolved spec without its `drawing` and `take_off`
    sections: all that decides sizes, and the name, the units and the marking step they are told in;
    not paper, issue or the persons in the title block, nor waste and the spacing of nails. So a set
    drawn again under another revision or on other paper has the digest of what is built, and one
    that differs in it is another ceiling.
    """
    spec = ceiling_to_json(ceiling)
    del spec["drawing"], spec["take_off"]
    return hashlib.sha256(canonical_bytes(spec)).hexdigest()


@dataclass(frozen=True, slots=True)
class _Writer:
    """Writes the parts of a ceiling in its units; what is None is left out."""

    units: Units

    def length(self, length: Length) -> str:
        return write_exact(length, self.units)

    def lengths(self, **named: Length | None) -> Json:
        return {name: self.length(length) for name, length in named.items() if length is not None}

    def _plan_of(self, room: Room) -> Json:
        """The room as it was measured: by length and width, a survey, or an outline."""
        if room.outline is not None:
            return {"outline": outline_json(room.outline, self.length)}
        if room.survey is None:
            return self.lengths(length=room.length, width=room.width)
        crooked = {"crooked": crooked_json(room.crooked, self.length)} if room.crooked else {}
        return {"survey": survey_json(room.survey, self.length), **crooked}

    def room(self, room: Room) -> Json:
        finish = room.wall_finish
        return {
            **self._plan_of(room),
            **self.lengths(height=room.height, headroom=room.headroom),
            "measured_to": str(room.measured_to),
            **({"wall_finish": self.wall_finish(finish)} if finish else {}),
            **({"code_edition": room.code_edition} if room.code_edition else {}),
            "members": [self.member(member) for member in room.members],
            **columns_json(room.columns, self.length),
            **({"joists": self.joists(room.joists)} if room.joists else {}),
            **(self.levels(room.stations, room.leveling) if room.leveling else {}),
            **self.each("ceiling_items", room.ceiling_items),
            **self.each("wall_features", room.wall_features),
        }

    def levels(self, stations: tuple[Station, ...], leveling: Leveling) -> Json:
        return {
            "stations": [self.station(station) for station in stations],
            "leveling": self.leveling(leveling),
        }

    def station(self, station: Station) -> Json:
        return {
            "name": station.name,
            **self.lengths(
                length=station.length,
                width=station.width,
                height=station.height,
                above_line=station.above_line,
            ),
        }

    def leveling(self, leveling: Leveling) -> Json:
        lengths = self.lengths(reach=leveling.reach, uneven=leveling.uneven)
        return {"panels": str(leveling.panels), **lengths}

    def each(self, name: str, things: Sequence[Item | WallFeature]) -> Json:
        """Items or features under their name; nothing where there are none."""
        return {name: [self.said(thing) for thing in things]} if things else {}

    def said(self, thing: Item | WallFeature) -> Json:
        """What is said of an item or feature; what it is without is left out."""
        parts = {field.name: getattr(thing, field.name) for field in fields(thing)}
        return {
            name: self.plain(part) for name, part in parts.items() if part not in (None, "", ())
        }

    def plain(self, part: Length | tuple[str, ...] | int | str) -> Any:
        if isinstance(part, Length):
            return self.length(part)
        if isinstance(part, tuple):
            return list(part)
        return part if isinstance(part, int) else str(part)

    def joists(self, joists: Joists) -> Json:
        return {
            "parallel_to": str(joists.parallel_to),
            "kind": str(joists.kind),
            "ceiling": str(joists.ceiling),
            **({"species": str(joists.species)} if joists.species else {}),
            "gravity": str(joists.gravity),
            **self.lengths(
                spacing=joists.spacing,
                first=joists.first,
                width=joists.width,
                existing_finish=joists.existing_finish,
            ),
        }

    def fixing(self, fixing: Fixing) -> Json:
        return {
            "between_joists": str(fixing.between_joists),
            "fastener": str(fixing.fastener),
            "size": fixing.size,
            "at_crossing": fixing.at_crossing,
            "service": str(fixing.service),
            "trim": self.wood(fixing.trim),
            "backing": self.wood(fixing.backing),
            "panel_gravity": str(fixing.panel_gravity),
            **self.lengths(
                length=fixing.length,
                least_penetration=fixing.least_penetration,
                shim=fixing.shim,
                block_through=fixing.block_through,
                block_spacing=fixing.block_spacing,
                end_distance=fixing.end_distance,
            ),
        }

    def wood(self, wood: Wood) -> Json:
        return {
            **({"species": str(wood.species)} if wood.species else {}),
            "gravity": str(wood.gravity),
            "moisture": str(wood.moisture),
        }

    def wall_finish(self, finish: tuple[Length, ...]) -> Json:
        return {wall: self.length(each) for wall, each in zip(WALLS, finish, strict=True)}

    def member(self, member: Member) -> Json:
        return {
            "name": member.name,
            "on": str(member.on),
            "casing": str(member.casing),
            **self.lengths(
                center=member.center,
                width=member.width,
                drop=member.drop,
                clearance=member.clearance,
                cased_width=member.cased_width,
                center_at_end=member.center_at_end,
                drop_at_end=member.drop_at_end,
                starts_at=member.starts_at,
                ends_at=member.ends_at,
                cladding=member.cladding,
                cleat=member.cleat,
            ),
        }

    def family(self, built: FamilyBeam) -> Json:
        return self.flat(built) if isinstance(built, Flat) else self.box(built)

    def flat(self, flat: Flat) -> Json:
        upper = flat.upper_board
        edges = self.lengths(reveal=flat.reveal, overhang=flat.overhang) if upper else {}
        return {
            "profile": str(FamilyProfile.FLAT),
            "bottom": self.stock(flat.bottom),
            **({"upper_board": self.stock(upper)} if upper else {}),
            **edges,
            **self.lengths(width=flat.width),
        }

    def box(self, box: Box) -> Json:
        return {
            "profile": str(FamilyProfile.BOX),
            "sides": self.stock(box.sides),
            "bottom": self.stock(box.bottom),
            **({"backing": self.stock(box.backing)} if box.backing else {}),
            "bottom_joint": str(box.bottom_joint),
            **self.lengths(
                reveal=box.reveal,
                overhang=box.overhang,
                allowance=box.allowance,
                width=box.width,
                drop=box.drop,
            ),
        }

    def look(self, look: Look) -> Json:
        return {field.name: str(getattr(look, field.name)) for field in fields(look)}

    def stock(self, stock: Stock) -> str | Json:
        if stock.kind in SOFTWOOD:
            return stock.name
        if stock.kind is StockKind.ACTUAL:
            return self.lengths(thickness=stock.thickness, width=stock.width)
        return {"nominal": stock.name, "width": self.length(stock.width)}

    def run(self, run: Run) -> Json:
        return {
            **self.count(run.count),
            **({"parity": str(run.parity)} if run.parity else {}),
            **({"weights": [str(weight) for weight in run.weights]} if run.weights else {}),
            **self.lengths(held=run.held),
            "start": self.wall_condition(run.start),
            "end": self.wall_condition(run.end),
            "fixed_beams": [self.fixed_beam(beam) for beam in run.fixed_beams],
        }

    def count(self, rule: CountRule) -> Json:
        match rule:
            case CoffersPerZone():
                return {"coffers": list(rule.counts)}
            case CoffersInAll():
                return {"coffers": rule.count}
            case LargestOpening():
                return {"largest_opening": self.length(rule.opening)}
            case WishedOpening():
                return {"wished_opening": self.length(rule.opening)}

    def wall_condition(self, condition: WallCondition) -> str | Json:
        if condition.kind is not WallKind.SOFFIT:
            return str(condition.kind)
        return {**self.lengths(soffit=condition.soffit_width), "then": str(condition.then)}

    def fixed_beam(self, beam: FixedBeam) -> Json:
        return {"name": beam.name, **self.lengths(center=beam.center, width=beam.width)}

    def panel(self, panel: Panel) -> Json:
        return {
            "kind": str(panel.kind),
            "sheet": self.lengths(width=panel.sheet.width, length=panel.sheet.length),
            "thickness": self.length(panel.thickness),
            "seat": str(panel.seat),
            "gap": self.length(panel.gap),
            **({"seams": str(panel.seams)} if panel.kind is PanelKind.SHEET_GOODS else {}),
            **({"grain": str(panel.grain)} if panel.grain else {}),
            **(self.boards(panel.boards) if panel.boards else {}),
        }

    def crown(self, crown: Crown) -> Json:
        parts = {field.name: getattr(crown, field.name) for field in fields(crown)}
        return {name: self.part(part) for name, part in parts.items() if part is not None}

    def part(self, part: Length | Angle | str) -> str:
        if isinstance(part, Length):
            return self.length(part)
        return part.number if isinstance(part, Angle) else str(part)

    def flat_mouldings(self, mouldings: tuple[FlatMoulding, ...]) -> Json:
        written = [
            {
                "name": moulding.name,
                "at": str(moulding.at),
                **self.lengths(thickness=moulding.thickness, width=moulding.width),
            }
            for moulding in mouldings
        ]
        return {"flat_mouldings": written} if written else {}

    def boards(self, boards: Boards) -> Json:
        words = {"board": boards.nominal, "centered_on": boards.centered_on}
        return {
            **self.lengths(cover=boards.cover, tongue=boards.tongue),
            "parallel_to": str(boards.parallel_to),
            "run": str(boards.run),
            **{name: str(word) for name, word in words.items() if word},
            **({"movement": self.movement(boards.movement)} if boards.movement else {}),
        }

    def movement(self, movement: Movement) -> Json:
        chosen = {"species": movement.species, "coefficient": movement.coefficient}
        return {
            **{name: str(each) for name, each in chosen.items() if each is not None},
            "cut": str(movement.cut),
            "fastening": str(movement.fastening),
            **{name: self.moisture(getattr(movement, name)) for name in _MOISTURES},
            **self.lengths(trim_cover=movement.trim_cover),
        }

    def moisture(self, moisture: Moisture) -> str | Json:
        if isinstance(moisture, Air):
            temperature = temperature_text(moisture.temperature)
            return {"humidity": str(moisture.humidity), "temperature": temperature}
        return str(moisture)
