"""How many requests a second the service answers, as ratios to an empty one in the same run.

python3 tests/bench/requests_per_second.py [seconds for each measurement]

Starts the service on loopback, loads it with wrk, prints a table, and stops by itself. Figures in
requests a second say as much about the machine and about what else runs on it as about the service;
the ratios say what a division or a layout costs beside the cost of any request.
"""

import contextlib
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median

ROUNDS = 3
CONNECTIONS = 8
MOST_SECONDS = 30
SPEC = {"room": {"length": "15' 2 1/2\"", "width": "12' 4\"", "height": "8' 10\""}}


@dataclass(frozen=True)
class Load:
    """One kind of request; a document makes it a POST."""

    name: str
    path: str
    document: str = ""


@dataclass(frozen=True)
class Measured:
    """What wrk saw: requests a second, and the latency 99 of 100 keep to [ms]."""

    rate: float
    p99: float


EMPTY = Load("empty", "/healthz")
LOADS = (
    EMPTY,
    Load("division", "/v1/division?span=244&beam_width=6&coffers=4"),
    Load("one value", "/v1/division?span=244&beam_width=6&coffers=4&field=opening"),
    Load("layout", "/v1/layouts", json.dumps(SPEC)),
)
_UNIT = {"us": 0.001, "ms": 1.0, "s": 1000.0, "m": 60_000.0}


def read_report(report: str) -> Measured:
    """Turn what wrk prints into figures; an answer that is no success makes them worthless."""
    if "Non-2xx" in report or "Socket errors" in report:
        raise SystemExit(f"The service did not answer every request:\n{report}")
    rate = re.search(r"Requests/sec:\s+([\d.]+)", report)
    p99 = re.search(r"99%\s+([\d.]+)(us|ms|s|m)\b", report)
    if rate is None or p99 is None:
        raise SystemExit(f"wrk printed what is not understood:\n{report}")
    return Measured(float(rate[1]), float(p99[1]) * _UNIT[p99[2]])


def measure(load: Load, port: int, seconds: int, folder: Path) -> Measured:
    """Load the service with one kind of request for some seconds."""
    command = ["wrk", "-t1", f"-c{CONNECTIONS}", f"-d{seconds}s", "--latency"]
    if load.document:
        script = folder / "post.lua"
        script.write_text(
            'wrk.method = "POST"\n'
            'wrk.headers["Content-Type"] = "application/json"\n'
            f"wrk.body = [==[{load.document}]==]\n"
        )
        command += ["-s", str(script)]
    address = f"http://127.0.0.1:{port}{load.path}"
    done = subprocess.run(
        [*command, address], capture_output=True, text=True, check=True, timeout=seconds + 30
    )
    return read_report(done.stdout)


@contextlib.contextmanager
def service() -> Iterator[int]:
    """The service on a free port of loopback, stopped at the end whatever happens."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    process = subprocess.Popen(
        [sys.executable, "-m", "lacunar.cli.main", "serve", "--port", str(port)],
        stderr=subprocess.DEVNULL,
    )
    try:
        for _ in range(300):
            time.sleep(0.1)
            with (
                contextlib.suppress(OSError),
                urllib.request.urlopen(f"http://127.0.0.1:{port}/readyz", timeout=5),
            ):
                break
        yield port
    finally:
        process.send_signal(signal.SIGTERM)
        try:
            process.wait(40)
        except subprocess.TimeoutExpired:
            process.kill()


def table(found: dict[str, list[Measured]]) -> Iterator[str]:
    """The medians of all rounds, and their ratios to the empty request of the same rounds."""
    yield f"{'':10} {'req/s':>9} {'p99 ms':>8} {'req/s : empty':>14} {'p99 : empty':>12}"
    empty = found[EMPTY.name]
    for name, rounds in found.items():
        rate = median(each.rate for each in rounds)
        p99 = median(each.p99 for each in rounds)
        pairs = list(zip(rounds, empty, strict=True))
        rates = median(one.rate / other.rate for one, other in pairs)
        tails = median(one.p99 / other.p99 for one, other in pairs)
        yield f"{name:10} {rate:9.0f} {p99:8.1f} {rates:14.3f} {tails:12.2f}"


def main() -> int:
    """Measure every load in turn, several rounds of it, and print the table."""
    if shutil.which("wrk") is None:
        print("NOT RUN: wrk is not installed (apt-get install wrk)")
        return 0
    seconds = min(int(sys.argv[1]) if sys.argv[1:] else 4, MOST_SECONDS)
    found: dict[str, list[Measured]] = {load.name: [] for load in LOADS}
    with service() as port, tempfile.TemporaryDirectory() as folder:
        for _ in range(ROUNDS):
            for load in LOADS:
                found[load.name].append(measure(load, port, seconds, Path(folder)))
    cores = os.cpu_count()
    print(f"{ROUNDS} rounds of {seconds} s each, {CONNECTIONS} connections, {cores} cores")
    print("\n".join(table(found)))
    return 0


if __name__ == "__main__":
    sys.exit(main())
