"""Runs the `lacunar` command as a shell would: a process of its own, killed after a time."""

import os
import subprocess
import sys
from dataclasses import dataclass


@dataclass(frozen=True)
class Outcome:
    code: int
    out: str
    err: str


def lacunar(*arguments, document=None, seconds=60, environment=None):
    """Run the command, `document` [bytes] on its standard input."""
    done = subprocess.run(
        [sys.executable, "-m", "lacunar.cli.main", *map(str, arguments)],
        input=document if document is not None else b"",
        capture_output=True,
        timeout=seconds,
        env={**os.environ, **(environment or {})},
        check=False,
    )
    return Outcome(done.returncode, done.stdout.decode(), done.stderr.decode())
