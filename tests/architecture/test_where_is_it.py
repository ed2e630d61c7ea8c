"""DEVELOPERS.md answers "where is it?" with functions that exist, and names folders that do."""

import importlib
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "DEVELOPERS.md").read_text()
ANSWERS = re.findall(r"^\| (.+\?) \| `(lacunar\.[\w.]+)` \|$", PAGE, flags=re.MULTILINE)


def test_there_are_at_least_fifteen_answers():
    assert len(ANSWERS) >= 15


@pytest.mark.parametrize(("question", "name"), ANSWERS)
def test_an_answer_is_a_function_with_a_docstring(question, name):
    module, _, function = name.rpartition(".")
    found = getattr(importlib.import_module(module), function)
    assert callable(found), question
    assert found.__doc__, question


def test_every_stage_folder_is_told_of():
    folders = {p.parent.name for p in (ROOT / "service" / "lacunar").glob("*/__init__.py")}
    assert {folder for folder in folders if f"`{folder}" not in PAGE} == set()
