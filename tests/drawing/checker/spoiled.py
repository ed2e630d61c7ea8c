"""A correct sheet to be spoiled: its SVG with the parts in reach, and what is found then."""

from collections.abc import Callable, Iterable, Mapping
from copy import deepcopy
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from lacunar.drawing.checker import Finding
from lacunar.drawing.checker.facts import read_facts
from lacunar.drawing.checker.points import check_sheet
from lacunar.drawing.checker.reading import read_sheet
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.small_layout import small_layout

NAMESPACE = "http://www.w3.org/2000/svg"
ElementTree.register_namespace("", NAMESPACE)


class Spoiled:
    """The sheet of the small room, open to changes."""

    def __init__(self, svg: str) -> None:
        self.root = ElementTree.fromstring(svg)

    def group(self, identity: str) -> Element:
        """The group of an id."""
        (found,) = (one for one in self.root.iter() if one.get("id") == identity)
        return found

    def part(self, identity: str, name: str, number: int = 0) -> Element:
        """A path, circle or text in a group, by its number among its like."""
        return self.parts(identity, name)[number]

    def parts(self, identity: str, name: str) -> list[Element]:
        """All paths, circles, texts or groups in a group."""
        group = self.group(identity)
        return [one for one in group.iter(f"{{{NAMESPACE}}}{name}") if one is not group]

    def add(self, identity: str, name: str, text: str = "", **attributes: str) -> None:
        """Draw something more in a group; underscores in names stand for hyphens."""
        named = {key.rstrip("_").replace("_", "-"): value for key, value in attributes.items()}
        new = ElementTree.SubElement(self.group(identity), f"{{{NAMESPACE}}}{name}", named)
        new.text = text

    def add_text(self, identity: str, like: str, text: str, at: tuple[float, float]) -> None:
        """Letter something more in a group, set like the first text of another."""
        new = deepcopy(self.part(like, "text"))
        new.text = text
        new.set("x", str(at[0]))
        new.set("y", str(at[1]))
        self.group(identity).append(new)

    def add_line(self, identity: str, d: str, pen: str = "fine", width: str = "0.25") -> None:
        """Draw one more line in a group."""
        look = {"fill": "none", "stroke": "#000000", "stroke_width": width, "data_pen": pen}
        self.add(identity, "path", d=d, **look)

    def remove(self, identity: str) -> None:
        """Leave a group out."""
        gone = self.group(identity)
        for parent in self.root.iter():
            if gone in list(parent):
                parent.remove(gone)

    def move(self, identity: str, dx: float, dy: float) -> None:
        """Move everything in a group [mm]."""
        for one in self.group(identity).iter():
            for name, by in (("x", dx), ("cx", dx), ("y", dy), ("cy", dy)):
                if name in one.attrib:
                    one.set(name, f"{float(one.attrib[name]) + by:.3f}")
            if "d" in one.attrib:
                one.set("d", moved_path(one.attrib["d"], dx, dy))
            if "transform" in one.attrib:
                one.set("transform", f"rotate(-90 {one.attrib['x']} {one.attrib['y']})")

    @property
    def svg(self) -> str:
        """The spoiled sheet."""
        return ElementTree.tostring(self.root, encoding="unicode")


def moved_path(d: str, dx: float, dy: float) -> str:
    """A path moved [mm]: its numbers are x and y by turns."""
    words, turn = [], 0
    for word in d.split():
        letter = word[0] if word[0] in "ML" else ""
        if word == "Z":
            words.append(word)
            continue
        words.append(f"{letter}{float(word.removeprefix(letter)) + (dx, dy)[turn]:.3f}")
        turn = 1 - turn
    return " ".join(words)


def checked(svg: str, layout: Mapping[str, object], typeface: Typeface) -> tuple[Finding, ...]:
    """What the checker finds on one sheet by itself."""
    return check_sheet(Subject(read_sheet(svg, typeface), read_facts(layout), typeface))


def findings(svg: str, typeface: Typeface, spoil: Callable[[Spoiled], object]) -> list[Finding]:
    """What the checker finds on the sheet once it is spoiled."""
    sheet = Spoiled(svg)
    spoil(sheet)
    return list(checked(sheet.svg, small_layout(), typeface))


def points(found: Iterable[Finding]) -> set[int]:
    """The points that findings are about."""
    return {finding.point for finding in found}
