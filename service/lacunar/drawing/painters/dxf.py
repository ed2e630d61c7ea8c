"""A sheet as DXF, for programs that draw: its views at true size, and the sheet as a layout.

Model space holds each view at the size of the thing itself, in the units of the spec; the first
plan's datum is its origin, further views lie to the right of it. The layout is the sheet of paper
with frame, tables and title block, and sees each view through a window at the view's scale. What
is at no scale stands on the layout. Dash lengths and letter heights are those on paper, in both.

The library that writes the format is loaded where a sheet is painted, since it takes a while.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from io import StringIO
from math import isfinite
from typing import TYPE_CHECKING

from lacunar import __version__
from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Element, Face, Group, Pt, Sheet, walk
from lacunar.drawing.painters.attributes import number, positive, printable
from lacunar.drawing.painters.dxf_drafting import (
    AREAS,
    FILLED,
    LETTERS,
    STYLES,
    Drafter,
    Place,
    dashes_of,
)
from lacunar.drawing.painters.extents import Extent, extent, spots_of
from lacunar.drawing.typeface import Typeface

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.layout import Paperspace

_WINDOWS = "window"
_AIR = 2.0
"""How much larger than what it shows a window is, on each side [mm]."""

_FONTS = {"letters": "arial.ttf", "letters-bold": "arialbd.ttf"}
"""Fonts that readers of the format have, or have a stand-in for."""
_DIGIT_ADVANCE = 1139 / 1466
"""Of these fonts: a digit's advance by the height of capitals (from memory of their metrics)."""

_VIEWS = frozenset({"view", "pole-strip"})
_FULL_SIZE = "1"


@dataclass(frozen=True, slots=True)
class _Units:
    """The units a drawing is in: how long a millimeter is, and what the format calls them."""

    of_millimeter: float
    code: int
    paper: str
    metric: int

    @property
    def style_of_lengths(self) -> tuple[int, int]:
        """How the format writes a length: its kind and places, feet with sixteenths or whole mm."""
        return (2, 0) if self.metric else (4, 4)


_UNITS = {"in": _Units(1 / 25.4, 1, "inch", 0), "mm": _Units(1.0, 4, "mm", 1)}


@dataclass(frozen=True, slots=True)
class _View:
    """A view: its group, where model space has it, and its box on paper."""

    group: Group
    place: Place
    box: Extent


def paint_dxf(sheet: Sheet, typeface: Typeface) -> bytes:
    """One sheet as a DXF drawing (AC1024, UTF-8): the same bytes for the same sheet.

    Its units are the sheet's, inches or millimeters. Raises `ValueError`, naming the sheet, for a
    number that is no position or size on paper.
    """
    try:
        positive(sheet.width), positive(sheet.height)
        for spot in spots_of(sheet.children, typeface):
            number(spot.x), number(spot.y)
    except ValueError as error:
        raise ValueError(f"sheet {sheet.id!r} cannot be painted: {error}") from error
    units = _UNITS[sheet.data.get("units", "mm")]
    document = _document(sheet, units, typeface)
    views = tuple(_placed_views(sheet, typeface, units))
    paper = _paper(document, sheet, units)
    on_paper = Place(Pt(0.0, sheet.height), (0.0, 0.0), units.of_millimeter)
    drawn = [(document.modelspace(), view.place, (view.group,)) for view in views]
    for space, place, elements in (*drawn, (paper, on_paper, _beside_views(sheet.children))):
        drafter = Drafter(space, place, _dimension_style(document, units, place.scale))
        drafter.draw(elements)
        for name, entities in drafter.named.items():
            document.groups.new(name).extend(entities)
    for view in views:
        _add_window(paper, view, on_paper)
    return _written(document)


def _document(sheet: Sheet, units: _Units, typeface: Typeface) -> "Drawing":
    """An empty drawing with layers, kinds of lines and letters, and what it says of itself."""
    from ezdxf._options import options
    from ezdxf.filemanagement import new

    # Dates and the name of the version would change the bytes; this writes fixed ones.
    options.write_fixed_meta_data_for_testing = True
    document = new("R2010", units=units.code)
    kind, places = units.style_of_lengths
    variables = {"$LUNITS": kind, "$LUPREC": places, "$TILEMODE": 0, "$PSLTSCALE": 0}
    for name, value in {**variables, "$LTSCALE": 1.0, "$LWDISPLAY": 1}.items():
        document.header[name] = value
    document.header["$LASTSAVEDBY"] = f"Lacunar {__version__}"
    for name in ("sheet", "digest"):
        document.header.custom_vars.append(name, sheet.data.get(name, ""))
    document.header.custom_vars.append("title", printable(sheet.title))
    _add_layers(document, units)
    narrow = typeface.advances[Face.REGULAR]["0"] / typeface.cap_height / _DIGIT_ADVANCE
    for name, font in _FONTS.items():
        document.styles.new(name, dxfattribs={"font": font, "width": round(narrow, 3)})
    return document


def _add_layers(document: "Drawing", units: _Units) -> None:
    """A layer for each pen, as wide and dashed as it is; and for areas, letters and windows."""
    for pen in style.PENS:
        if pen.dashes:
            lengths = [dash * units.of_millimeter for dash in pen.dashes]
            pattern = [length if n % 2 == 0 else -length for n, length in enumerate(lengths)]
            document.linetypes.add(dashes_of(pen), [sum(lengths), *pattern])
        weight = round(pen.width * 100)
        document.layers.add(pen.name, linetype=dashes_of(pen), lineweight=weight)
    for name in (FILLED, LETTERS):
        document.layers.add(name)
    for name in (AREAS, _WINDOWS):
        document.layers.add(name, plot=False)


def _dimension_style(document: "Drawing", units: _Units, scale: float) -> str:
    """The name of the style that dimensions at a scale have, made where it is not yet there."""
    name = f"at-{scale:g}".replace(".", "_")
    if name in document.dimstyles:
        return name
    kind, places = units.style_of_lengths
    sizes = {
        "dimtxt": style.TEXT,
        "dimtsz": style.TICK_REACH,
        "dimgap": style.TEXT_ABOVE_LINE,
        "dimexo": 0.0,
        "dimexe": style.EXTENSION_OVERRUN,
    }
    lengths = {key: size * units.of_millimeter for key, size in sizes.items()}
    turned = {"dimtad": 1, "dimtih": 0, "dimtoh": 0, "dimlunit": kind, "dimdec": places}
    wide = {"dimlwd": round(style.DIMENSION.width * 100), "dimtxsty": STYLES[Face.MEDIUM]}
    document.dimstyles.new(
        name, dxfattribs={"dimscale": scale, "dimlwe": wide["dimlwd"], **lengths, **turned, **wide}
    )
    return name


def _placed_views(sheet: Sheet, typeface: Typeface, units: _Units) -> Iterator[_View]:
    """The sheet's views in model space, one to the right of the other.

    The first has its datum, where it has one, in the origin, else its lower left corner.
    """
    reached = 0.0
    for group in _views(sheet.children):
        box, scale = extent((group,), typeface), _scale(group)
        box = Extent(box.left - _AIR, box.top - _AIR, box.right + _AIR, box.bottom + _AIR)
        place = Place(_origin(group, box), (0.0, 0.0), units.of_millimeter, scale)
        left, right = (place.spot(Pt(x, box.bottom))[0] for x in (box.left, box.right))
        if reached:
            place = replace(place, at=(reached - left, 0.0))
            right += place.at[0]
        reached = right + place.length(style.FIRST_STRING)
        yield _View(group, place, box)


def _origin(view: Group, box: Extent) -> Pt:
    for element in walk(view.children):
        if isinstance(element, Group) and element.kind == "datum":
            for ring in element.children:
                if isinstance(ring, Circle):
                    return ring.center
    return Pt(box.left, box.bottom)


def _views(elements: Sequence[Element]) -> Iterator[Group]:
    for element in elements:
        if isinstance(element, Group):
            if _scale(element):
                yield element
            else:
                yield from _views(element.children)


def _scale(group: Group) -> float:
    """How much smaller than life a group is drawn; 0 where it is no view, or at no scale."""
    if group.kind not in _VIEWS:
        return 0.0
    try:
        scale = float(group.data.get("scale", _FULL_SIZE))
    except ValueError:
        return 0.0
    return scale if isfinite(scale) and scale > 0 else 0.0


def _beside_views(elements: Sequence[Element]) -> tuple[Element, ...]:
    """The elements without the views in them."""
    left: list[Element] = []
    for element in elements:
        if not isinstance(element, Group):
            left.append(element)
        elif not _scale(element):
            left.append(replace(element, children=_beside_views(element.children)))
    return tuple(left)


def _paper(document: "Drawing", sheet: Sheet, units: _Units) -> "Paperspace":
    """The layout of the sheet, as large as its paper, which is what the drawing opens on."""
    document.layouts.rename("Layout1", sheet.id)
    paper = document.paperspace(sheet.id)
    size = sheet.width * units.of_millimeter, sheet.height * units.of_millimeter
    name = sheet.data.get("paper", "sheet")
    paper.page_setup(size, units=units.paper, scale=(1, 1), name=name, device="none")
    document.layouts.set_active_layout(sheet.id)
    return paper


def _add_window(paper: "Paperspace", view: _View, on_paper: Place) -> None:
    """A window in the layout through which a view is seen where it stands on the sheet."""
    box = view.box
    middle = Pt((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    width, height = box.right - box.left, box.bottom - box.top
    window = paper.add_viewport(
        on_paper.spot(middle),
        (on_paper.length(width), on_paper.length(height)),
        view.place.spot(middle),
        view.place.length(height),
        dxfattribs={"layer": _WINDOWS},
    )
    window.dxf.status = window.dxf.id


def _written(document: "Drawing") -> bytes:
    # The library adds classes in an order that changes from process to process.
    for name in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(name)
    target = StringIO()
    document.write(target)
    return target.getvalue().encode("utf-8")
