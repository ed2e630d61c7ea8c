"""Sheets Z-201 and Z-301: a view of every wall, and both sections."""

from collections.abc import Callable, Iterator, Sequence

from lacunar.drawing.annotation import Block
from lacunar.drawing.paper import Scale, scales
from lacunar.drawing.sheets.obstacles import PaperTooSmall
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.view_pages import TitledView, view_area, view_pages
from lacunar.drawing.upright.elevations import Elevation, elevations
from lacunar.drawing.upright.sections import section_cut
from lacunar.drawing.upright.view import Hand
from lacunar.drawing.views.room_section import RoomSection
from lacunar.drawing.views.wall_elevation import WallElevation
from lacunar.model.room import RunName

LARGEST, SMALLEST = 4, 200
TITLE_GAP = 3.0


def elevation_pages(source: SheetSource) -> tuple[Page, ...]:
    views = []
    for number, e in enumerate(elevations(source.layout), start=1):
        for scale in scales(source.wording.units, smallest=SMALLEST, largest=LARGEST):
            area = view_area(source)
            v = WallElevation(e, Hand(number, scale, source.wording, source.typeface))
            if v.view.width <= area.width and v.view.height + 22 <= area.height / 2:
                break
        t = view_title(number, f"WALL {e.wall}", scale, (), source.typeface)
        b = stacked(
            (
                v.drawn(),
                stacked((t, scale_bar(number, scale.ratio, source.wording.units, 40)), 2.0),
            ),
            TITLE_GAP,
        )
        views.append(TitledView(e.cut.name, number, scale, b))
    return view_pages(source, views, ())


def section_pages(source: SheetSource) -> tuple[Page, ...]:
    views = []
    for number, run in enumerate(RunName, start=1):
        cut = section_cut(source.layout, run)
        for scale in scales(source.wording.units, smallest=SMALLEST, largest=LARGEST):
            area = view_area(source)
            v = RoomSection(cut, Hand(number, scale, source.wording, source.typeface))
            if v.view.width <= area.width and v.view.height + 22 <= area.height / 2:
                break
        t = view_title(number, f"SECTION {run.value}", scale, (), source.typeface)
        b = stacked(
            (
                v.drawn(),
                stacked((t, scale_bar(number, scale.ratio, source.wording.units, 40)), 2.0),
            ),
            TITLE_GAP,
        )
        views.append(TitledView(cut.name, number, scale, b))
    return view_pages(source, views, ())
