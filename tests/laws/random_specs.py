"""Specs such as might come in: plausible rooms, drawn at random, the same ones on every run.

Each spec is the JSON document of one ceiling as a dict. Most of them can be built and drawn; the
laws that use them bound how many may be refused, so that a law is not held by refusals.
"""

from collections.abc import Iterator
from fractions import Fraction
from random import Random

from tests.laws.random_builds import RandomBuilds
from tests.laws.random_items import ITEM_SHARE, random_features, random_items
from tests.laws.random_take_offs import with_take_off

Spec = dict[str, object]

# Dressed widths of the trade names, in inches (American Softwood Lumber Standard, PS 20).
DRESSED_WIDTH = {
    "1x4": Fraction("3.5"),
    "1x5": Fraction("4.5"),
    "1x6": Fraction("5.5"),
    "1x8": Fraction("7.25"),
    "1x10": Fraction("9.25"),
    "1x12": Fraction("11.25"),
    "5/4x6": Fraction("5.5"),
    "5/4x8": Fraction("7.25"),
}
INCH_STEPS = ("1/8", "1/16", "1/16", "1/32", "1/64")
METRIC_STEPS = ("1 mm", "1 mm", "0.5 mm")
INCH_PAPERS = ("letter", "tabloid", "ansi_c", "arch_c", "ansi_d", "arch_d")
METRIC_PAPERS = ("a4", "a3", "a2", "a1")
# Other sheets have laws of their own.
PLANS_AND_POLES = ("Z-101", "Z-102", "Z-701")


def random_specs(count: int, seed: int) -> Iterator[Spec]:
    """So many specs, always the same ones for a seed."""
    for number in range(count):
        draw = _Draw(Random(f"{seed}:{number}"), Random(f"items {seed}:{number}"))
        builds = RandomBuilds(Random(f"builds {seed}:{number}"))
        spec = builds.changed(draw.spec(number))
        yield with_take_off(spec, Random(f"take off {seed}:{number}"))


class _Draw:
    """One spec in the making. Sizes are inches until `_length` writes them in the spec's units."""

    def __init__(self, random: Random, items: Random) -> None:
        self._random = random
        # A chance of their own, so that the rest of a spec does not hang on them.
        self._items = items
        self._metric = random.random() < 0.3
        span = self._span()
        other = min(max(float(span) * random.uniform(0.6, 1.25), 8 * 12), 60 * 12)
        self._spans = {"length": span, "width": self._sixteenths(other, other)}
        self._member_runs = [run for run in self._spans if random.random() < 0.2]
        self._blocking = False
        self._sides = self._pick("1x8", "1x10", "5/4x8") if self._member_runs else None

    def _chance(self, share: float) -> bool:
        return self._random.random() < share

    def _pick(self, *choices: str) -> str:
        return self._random.choice(choices)

    def _sixteenths(self, low: float, high: float) -> Fraction:
        return Fraction(self._random.randint(round(low * 16), round(high * 16)), 16)

    def _span(self) -> Fraction:
        """8 to 60 ft, most of them rooms of a house."""
        low, high = self._random.choice(((8, 14), (8, 14), (12, 26), (12, 26), (20, 60)))
        return self._sixteenths(low * 12, high * 12)

    def _length(self, inches: Fraction) -> object:
        """A length in one of the notations that a spec may be written in."""
        if self._metric:
            half_millimeters = round(inches * Fraction("25.4") * 2)
            number = half_millimeters / 2
            return self._random.choice([number, f"{number} mm", f"{number / 1000:.4f} m"])
        whole, part = divmod(inches, 1)
        feet, left = divmod(whole, 12)
        fraction = f" {part}" if part else ""
        mixed = f"{whole}{fraction}" if whole else str(part)
        notations: list[object] = [float(inches), f'{mixed}"', mixed]
        if feet:
            notations += [f"{feet}' {left}{fraction}\"", f"{feet}'-{left}{fraction}\""]
        return self._random.choice(notations)

    def spec(self, number: int) -> Spec:
        """The whole document."""
        room = self._room()
        spec: Spec = {
            "name": f"Room {number + 1}",
            "units": "mm" if self._metric else "in",
            "mark_to": self._pick(*(METRIC_STEPS if self._metric else INCH_STEPS)),
            "room": room,
            "beams": self._beams(),
            "grid": {run: self._run(run) for run in self._spans},
            **({"panel": self._panel()} if self._chance(0.6) else {}),
            **self._fixing(),
            "drawing": self._drawing(),
        }
        if self._chance(0.5):
            spec["crown"] = self._crown()
        if self._chance(0.2):
            spec["flat_mouldings"] = self._flat_mouldings()
        if self._chance(0.3):
            # Last of all, so that nothing else of the spec hangs on it.
            room.update(self._levels())
        return spec

    def _levels(self) -> Spec:
        """Stations anywhere in the room, read from a level line, over a ceiling not quite flat."""
        places = {
            tuple(self._random.randint(0, 16) for _ in self._spans)
            for _ in range(self._random.randint(1, 14))
        }
        stations: list[Spec] = [
            {
                **{
                    run: self._length(self._sixteenths(*[float(span) * part / 16] * 2))
                    for (run, span), part in zip(self._spans.items(), place, strict=True)
                },
                "above_line": self._length(20 + Fraction(self._random.randint(0, 8), 16)),
            }
            for place in sorted(places)
        ]
        if self._chance(0.3):
            stations[0]["name"] = "Low spot by the hearth"
        leveling: Spec = {"reach": self._length(self._sixteenths(0, 6))}
        if self._chance(0.5):
            leveling["panels"] = "to_ceiling"
        return {"stations": stations, "leveling": leveling}

    def _crown(self) -> Spec:
        """Crown small enough for most beams, by its face and spring or as measured."""
        crown: Spec = {}
        if self._chance(0.6):
            crown["face"] = self._length(self._sixteenths(1.5, 3.5))
            crown["spring_from_wall"] = self._random.choice((38, 45, "38", 52, "40.5"))
        else:
            crown["drop"] = self._length(self._sixteenths(1.25, 2.5))
            crown["projection"] = self._length(self._sixteenths(1, 2.5))
        if self._chance(0.6):
            crown["method"] = self._pick("bench_frame", "coped_in_place")
        if self._chance(0.4):
            crown["thickness"] = self._length(self._sixteenths(0.4375, 0.75))
        if self._chance(0.3):
            crown["fit_total"] = self._length(self._sixteenths(0, 0.125))
        return crown

    def _flat_mouldings(self) -> list[Spec]:
        """A flat behind the crown, wide enough for it, or one at the lower edge."""
        behind: Spec = {
            "name": "Frieze",
            "thickness": self._length(self._sixteenths(0.25, 0.5)),
            "width": self._length(Fraction(3)),
        }
        edge: Spec = {
            "at": "bottom_edge",
            "thickness": self._length(self._sixteenths(0.25, 0.75)),
            "width": self._length(self._sixteenths(0.5, 1)),
        }
        return self._random.choice(([behind], [edge]))

    def _room(self) -> Spec:
        room: Spec = {run: self._length(span) for run, span in self._spans.items()}
        room["height"] = self._length(self._sixteenths(8.5 * 12, 12 * 12))
        if self._chance(0.3):
            room["measured_to"] = "framing"
            room["wall_finish"] = self._wall_finish()
        members = [self._member(run) for run in self._member_runs]
        if members:
            room["members"] = members
        if self._chance(0.4):
            room["joists"] = self._joists()
        if self._items.random() < ITEM_SHARE:
            room["ceiling_items"] = random_items(self._items, self._spans)
            room["wall_features"] = random_features(self._items, self._spans)
        return room

    def _joists(self) -> Spec:
        spacing = self._sixteenths(12, 24)
        joists: Spec = {
            "parallel_to": self._pick("length", "width"),
            "spacing": self._length(spacing),
            "first": self._length(self._sixteenths(0.75, float(spacing))),
        }
        if self._chance(0.5):
            joists["ceiling"] = self._pick("open", "closed")
            self._blocking = joists["ceiling"] == "open"
        if self._chance(0.3):
            joists.update(kind="truss", width=self._length(self._sixteenths(1.5, 3.5)))
        if self._chance(0.3):
            joists["species"] = self._pick("hem_fir", "southern_pine", "douglas_fir_larch")
        return joists

    def _fixing(self) -> Spec:
        if self._chance(0.6):
            return {}
        ways = ("skin", "anchors", *(("blocking",) if self._blocking else ()))
        fixing: Spec = {"between_joists": self._pick(*ways)}
        if self._chance(0.6):
            fixing["fastener"] = self._pick("wood_screw", "lag_screw", "nail")
        if self._chance(0.4):
            fixing["block_spacing"] = self._length(self._sixteenths(12, 48))
        if self._chance(0.4):
            fixing["trim"] = {"species": self._pick("cherry", "red_oak"), "moisture": "0.08"}
        return {"fixing": fixing}

    def _wall_finish(self) -> object:
        sizes = [self._length(self._sixteenths(0.375, 0.875)) for _ in range(4)]
        if self._chance(0.5):
            return sizes[0]
        return {f"W{wall}": size for wall, size in enumerate(sizes, start=1)}

    def _member(self, run: str) -> Spec:
        center = float(self._spans[run]) * self._random.uniform(0.3, 0.7)
        member: Spec = {
            "name": f"S{1 + self._member_runs.index(run)}",
            "on": run,
            "center": self._length(self._sixteenths(center, center + 1)),
            "width": self._length(self._sixteenths(1.5, 4)),
            "drop": self._length(self._sixteenths(3.5, 5.5)),
        }
        if self._chance(0.7):
            member["casing"] = self._pick("centered", "shift_to_equal")
        if self._chance(0.5):
            member["clearance"] = self._length(self._sixteenths(0.125, 0.375))
        return member

    def _beams(self) -> Spec:
        beams: Spec = {"crosswise": self._box()}
        if self._chance(0.6):
            beams["lengthwise"] = "same" if self._chance(0.6) else self._box()
        if self._chance(0.3):
            beams["through"] = self._pick("crosswise", "lengthwise", "longer")
        if self._chance(0.3):
            beams["depth"] = self._pick("equal", "stepped")
        return beams

    def _box(self) -> Spec:
        bottom = self._pick("1x4", "1x5", "1x6", "1x6", "1x8")
        if self._member_runs:
            bottom = self._pick("1x8", "1x10")
        sides = self._sides or self._pick("1x4", "1x6", "1x6", "1x8", "5/4x6")
        box: Spec = {"profile": "box", "sides": self._stock(sides), "bottom": self._stock(bottom)}
        joints = ["between", "between", "under"]
        # Boards that are mitred together are of one thickness.
        if (box["sides"], box["bottom"]) == (sides, bottom) and sides.startswith("1x"):
            joints.append("mitred")
        joint = box["bottom_joint"] = self._pick(*joints)
        if joint != "mitred" and self._chance(0.3):
            box["reveal"] = self._length(self._sixteenths(0.125, 0.25))
        elif joint == "under" and self._chance(0.4):
            box["overhang"] = self._length(self._sixteenths(0.125, 0.5))
        widest = DRESSED_WIDTH[bottom] - 1
        if self._chance(0.3):
            box["width"] = self._length(self._sixteenths(float(widest) - 0.75, float(widest)))
        if self._chance(0.25):
            drop = DRESSED_WIDTH[sides]
            box["drop"] = self._length(self._sixteenths(float(drop) - 0.5, float(drop)))
        return box

    def _stock(self, name: str) -> object:
        if self._chance(0.75):
            return name
        thickness = Fraction("0.75") if name.startswith("1x") else Fraction(1)
        width = DRESSED_WIDTH[name]
        if self._chance(0.5):
            return {"nominal": "3/4 sheet", "width": self._length(width)}
        return {"thickness": self._length(thickness), "width": self._length(width)}

    def _run(self, name: str) -> Spec:
        run: Spec = {}
        opening = self._sixteenths(22, 60)
        coffers = max(2, round(self._spans[name] / (opening + 6)))
        has_member = name in self._member_runs
        rule = self._pick("coffers", "coffers", "largest_opening", "wished_opening", "parity")
        if rule == "coffers":
            half = max(1, coffers // 2)
            listed = [half, half] if has_member else [coffers]
            run["coffers"] = listed if self._chance(0.5) else coffers
        elif rule == "parity" and not has_member:
            run.update(wished_opening=self._length(opening), parity=self._pick("odd", "even"))
        else:
            rule = self._pick("largest_opening", "wished_opening")
            run[rule] = self._length(opening)
        for end in ("start", "end"):
            if self._chance(0.75):
                run[end] = self._wall()
        return run

    def _wall(self) -> object:
        kind = self._pick("none", "half", "half", "full", "soffit")
        if kind != "soffit":
            return kind
        soffit: Spec = {"soffit": self._length(self._sixteenths(6, 16))}
        if self._chance(0.7):
            soffit["then"] = self._pick("none", "half", "full")
        return soffit

    def _panel(self) -> Spec:
        if self._chance(0.3):
            return {"kind": "existing"}
        return self._boards() if self._chance(0.5) else self._sheets()

    def _sheets(self) -> Spec:
        panel: Spec = {"kind": "sheet_goods"}
        if self._chance(0.4):
            panel["grain"] = self._pick("length", "width")
        if self._chance(0.3):
            panel["seams"] = self._pick("equal", "sheet_edge")
        if self._chance(0.6):
            panel["seat"] = self._pick("between_backing", "between_sides", "above_backing")
        if self._chance(0.5):
            panel["thickness"] = self._length(self._sixteenths(0.25, 0.75))
        if self._chance(0.5):
            panel["gap"] = self._length(self._sixteenths(0.0625, 0.1875))
        if self._chance(0.3):
            panel["sheet"] = {
                "width": self._length(Fraction(48)),
                "length": self._length(Fraction(96)),
            }
        return panel

    def _boards(self) -> Spec:
        boards: Spec = {"kind": "boards"}
        if self._chance(0.4):
            boards["board"] = self._pick("1x4", "1x6", "1x8", "1x10")
        if self._chance(0.5):
            boards["cover"] = self._length(self._sixteenths(2.5, 8))
        if self._chance(0.5):
            boards["parallel_to"] = self._pick("length", "width")
        if self._chance(0.3):
            boards["centered_on"] = self._pick("joint", "board")
        if self._chance(0.3):
            boards["run"] = "through"
        elif self._chance(0.3):
            boards["seat"] = self._pick("between_backing", "between_sides", "above_backing")
        if self._chance(0.5):
            boards["movement"] = self._movement()
        return boards

    def _movement(self) -> Spec:
        movement: Spec = {"species": self._pick("yellow_poplar", "red_oak", "douglas_fir")}
        if self._chance(0.3):
            movement["cut"] = "quartersawn"
        if self._chance(0.3):
            movement["fastening"] = "floating"
        if self._chance(0.5):
            movement["driest"] = f"{self._random.randint(15, 35)} % at 70 F"
            movement["dampest"] = {
                "humidity": self._random.randint(50, 75),
                "temperature": "22.5 C",
            }
        if self._chance(0.5):
            movement["trim_cover"] = self._length(self._sixteenths(0.25, 1))
        return movement

    def _drawing(self) -> Spec:
        """Paper that grows with the room, often larger than needed, now and then too small."""
        papers = METRIC_PAPERS if self._metric else INCH_PAPERS
        feet = max(self._spans["length"], self._spans["width"] * 4 / 3) / 12
        limits = (11, 24, 38) if self._metric else (10, 19, 25, 31, 41)
        fits = sum(feet > limit for limit in limits)
        size = min(max(0, fits + self._random.choice((0, 0, 0, 1, 1, 2))), len(papers) - 1)
        drawing: Spec = {"paper": papers[size], "sheets": list(PLANS_AND_POLES)}
        if self._chance(0.5):
            drawing.update(revision="A", date="2026-03-02", status="For approval")
        if self._chance(0.1):
            drawing["story_poles"] = self._random.choice(("table", "roll", "tiles"))
        return drawing
