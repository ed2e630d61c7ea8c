"""The top of the checkout holds what the project agreed on and nothing else."""

import shutil
import subprocess
from pathlib import Path

from tests.architecture.sources import ROOT

# A folder comes with its first code; so these may be missing, but nothing else may be there.
AGREED = {
    "DEVELOPERS.md",
    "README.md",
    "docker",
    "examples",
    "openapi",
    "pyproject.toml",
    "requirements.lock",
    "service",
    "tests",
}
NEEDED = {"examples", "pyproject.toml", "requirements.lock", "service", "tests"}


def top_level(root: Path) -> set[str]:
    """Return the names at the top: those git keeps, or all that lie there where git is missing."""
    if shutil.which("git"):
        kept = subprocess.run(
            ["git", "ls-files"], cwd=root, capture_output=True, text=True, check=False
        )
        if kept.returncode == 0:
            return {line.split("/")[0] for line in kept.stdout.splitlines()}
    return {path.name for path in root.iterdir() if path.name not in ("build", "dist")}


def test_nothing_but_what_was_agreed_lies_at_the_top():
    names = {name for name in top_level(ROOT) if not name.startswith(".")}
    assert names - AGREED == set()
    assert NEEDED - names == set()
