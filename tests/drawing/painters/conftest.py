"""What the painters' tests share."""

import pytest

from lacunar.drawing.painters.fonts import FontStyles, load_font_styles, load_typeface
from lacunar.drawing.typeface import Typeface


@pytest.fixture(scope="session")
def typeface() -> Typeface:
    return load_typeface()


@pytest.fixture(scope="session")
def font_styles() -> FontStyles:
    return load_font_styles()
