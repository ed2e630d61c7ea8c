"""What the checker's tests share: the typeface, and the small room as SVG."""

import pytest

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.small_room import small_sheet


@pytest.fixture(scope="session")
def typeface() -> Typeface:
    return load_typeface()


@pytest.fixture(scope="session")
def svg(typeface: Typeface) -> str:
    return paint_svg(small_sheet(), typeface, fonts=None)
