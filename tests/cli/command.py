"""Runs the `lacunar` command as a shell would.

Most tests run it in their own process, with standard streams of its own: starting a Python takes
longer than most commands. What is about the process itself (its environment, its time, a broken
standard output) runs in one of its own, killed after a time.
"""

import os
import subprocess
import sys
from dataclasses import dataclass
from io import BytesIO, TextIOWrapper
from unittest.mock import patch

from lacunar.cli.main import main


@dataclass(frozen=True)
class Outcome:
    code: int
    out: str
    err: str


def lacunar(*arguments, document=b""):
    """Run the command in this process, `document` [bytes] on its standard input."""
    out, err = (TextIOWrapper(BytesIO(), encoding="utf-8") for _ in range(2))
    given = TextIOWrapper(BytesIO(document), encoding="utf-8")
    with patch.multiple(sys, stdin=given, stdout=out, stderr=err):
        try:
            code = main(list(map(str, arguments)))
        except SystemExit as stop:
            code = stop.code
        out.flush()
        err.flush()
    return Outcome(code, *(stream.buffer.getvalue().decode() for stream in (out, err)))


def lacunar_process(*arguments, document=b"", seconds=60, environment=None, out=subprocess.PIPE):
    """Run the command in a process of its own; `out` is its standard output."""
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
