"""What the architecture tests read: the checkout's Python files, as text and as syntax trees."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "service" / "lacunar"

# The scripts that must be readable by an old Python, so that it can be refused in words.
SCRIPTS = [
    ROOT / "examples" / "fresh_machine.py",
    ROOT / "examples" / "draw_examples.py",
    ROOT / "tests" / "run.py",
]


@dataclass(frozen=True)
class Source:
    """One Python file, read once."""

    name: str  # from the top of the checkout
    text: str
    tree: ast.Module


def read(path: Path) -> Source:
    """Return one file of the checkout."""
    text = path.read_text(encoding="utf-8")
    return Source(str(path.relative_to(ROOT)), text, ast.parse(text, str(path)))


def from_text(text: str) -> Source:
    """Return a file that exists only in a test."""
    return Source("planted.py", text, ast.parse(text))


def sources(*folders: Path) -> list[Source]:
    """Return all Python files below some folders of the checkout."""
    return [read(path) for folder in folders for path in sorted(folder.rglob("*.py"))]


def functions(source: Source) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Return every function of a file, methods and inner functions too."""
    for node in ast.walk(source.tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node
