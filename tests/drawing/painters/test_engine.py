import re

import pytest

from lacunar.drawing.painters.engine import STOCK_TEXT_VARIABLE, engine
from lacunar.drawing.typeface import Typeface


def test_the_engine_names_what_shapes_a_drawing(typeface: Typeface) -> None:
    named = engine()
    painting = ["svgwrite", "cairosvg", "cairo", "pypdfium2", "ezdxf"]
    assert list(named) == ["lacunar", *painting, "text", "font"]
    assert named["font"] == typeface.digest
    assert re.fullmatch(r"1\.\d+\.\d+", named["cairo"])
    assert named["cairosvg"] == "2.9.1"
    assert engine() == named


def test_no_path_of_the_machine_is_in_it() -> None:
    assert not [value for value in engine().values() if "/" in value or "\\" in value]


def test_the_stock_text_painter_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    assert engine()["text"] == "whole"
    monkeypatch.setenv(STOCK_TEXT_VARIABLE, "1")
    assert engine()["text"] == "stock"
