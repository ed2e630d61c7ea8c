"""Each folder tells, at its top, what comes in, what goes out, and what must not happen there."""

import ast
import re
from pathlib import Path

import pytest

from tests.architecture.sources import PACKAGE, ROOT, from_text, read

STAGES = sorted(path for path in PACKAGE.iterdir() if list(path.glob("*.py")))
TOLD = {"comes in": r"\bcomes? in\b", "goes out": r"\bgoes out\b", "must not": r"\bmust not\b"}

# Names that say nothing about what is inside, so that anything ends up there.
SAYS_NOTHING = {"common", "helper", "helpers", "manager", "managers", "misc", "util", "utils"}


def untold(tree: ast.Module) -> list[str]:
    """Return what a stage's docstring does not tell."""
    docstring = ast.get_docstring(tree) or ""
    return [what for what, words in TOLD.items() if not re.search(words, docstring, re.IGNORECASE)]


def says_nothing(path: Path) -> bool:
    """Tell whether a name, or a part of it between underscores, stands for anything at all."""
    return not SAYS_NOTHING.isdisjoint(path.stem.lower().split("_"))


@pytest.mark.parametrize("stage", STAGES, ids=lambda path: path.name)
def test_a_stage_tells_what_comes_in_goes_out_and_must_not_happen(stage: Path):
    assert untold(read(stage / "__init__.py").tree) == []


def test_an_empty_docstring_tells_nothing():
    assert untold(from_text('"""Setting out. Comes in: a ceiling."""').tree) == [
        "goes out",
        "must not",
    ]


def test_no_folder_without_code():
    empty = [
        path.name
        for path in PACKAGE.iterdir()
        if path.is_dir() and path.name != "__pycache__" and path not in STAGES
    ]
    assert empty == []


def test_no_name_stands_for_anything_at_all():
    below = [
        path for top in (PACKAGE, ROOT / "tests", ROOT / "examples") for path in top.rglob("*")
    ]
    assert [str(path) for path in below if says_nothing(path)] == []


@pytest.mark.parametrize("name", ["utils.py", "string_helpers.py", "common", "page_manager.py"])
def test_a_planted_name_is_found(name: str):
    assert says_nothing(Path(name))
