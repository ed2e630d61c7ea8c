"""Runs a few lines of Python in a process of their own, where nothing is imported or set up yet."""

import os
import subprocess
import sys


def popen(code: str, **environment: str) -> subprocess.Popen[bytes]:
    """Start the code with this process' import path and with the environment variables given."""
    return subprocess.Popen(
        [sys.executable, "-c", code],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), **environment},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )


def output(process: subprocess.Popen[bytes]) -> bytes:
    """What the process wrote, once it has ended well; a failure shows what it complained of."""
    written, complaint = process.communicate(timeout=120)
    assert process.returncode == 0, complaint.decode()
    return written


def run(code: str, **environment: str) -> bytes:
    """Start the code, wait, and return what it wrote."""
    return output(popen(code, **environment))
