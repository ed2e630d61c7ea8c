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


def lacunar(*arguments, document=b"", seconds=60, environment=None, out=subprocess.PIPE):
    """Run the command, `document` [bytes] on its standard input; `out` is its standard output."""
    done = subprocess.run(
        [sys.executable, "-m", "lacunar.cli.main", *map(str, arguments)],
        input=document,
        stdout=out,
        stderr=subprocess.PIPE,
        timeout=seconds,
        env={**os.environ, **(environment or {})},
        check=False,
    )
    return Outcome(done.returncode, (done.stdout or b"").decode(), done.stderr.decode())
