"""`lacunar serve` as a process of its own, called as the README says."""

import contextlib
import http.client
import re
import shutil
import signal
import socket
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from tests.api.calling import CEILINGS, THREE_NUMBERS, on_few_sheets
from tests.cli.command import lacunar_process

CHECKOUT = Path(__file__).parents[2]
README = (CHECKOUT / "README.md").read_text(encoding="utf-8")
CALLS = re.findall(r"^curl .*", README, flags=re.MULTILINE)
SECONDS_TO_START = 30
SECONDS_TO_STOP = 40


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def request(port, method, path, body=None, headers=None):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    with contextlib.closing(connection):
        connection.request(method, path, body, headers or {})
        answer = connection.getresponse()
        return answer.status, answer.read(), answer.headers


def wait_until_it_answers(port, process):
    for _ in range(SECONDS_TO_START * 10):
        with contextlib.suppress(OSError):
            if request(port, "GET", "/readyz")[0] == 200:
                return
        assert process.poll() is None, process.stderr.read()
        time.sleep(0.1)
    raise AssertionError("the service does not answer")


@pytest.fixture(scope="module")
def port():
    """The port of a running service, which is stopped as a supervisor stops it."""
    number = free_port()
    process = subprocess.Popen(
        [sys.executable, "-m", "lacunar.cli.main", "serve", "--port", str(number), "--workers=2"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    try:
        wait_until_it_answers(number, process)
        yield number
        process.send_signal(signal.SIGTERM)
        out, err = process.communicate(timeout=SECONDS_TO_STOP)
        assert process.returncode == 0, err
        assert out == ""
        assert "Traceback" not in err
    finally:
        process.kill()
        process.wait()


def test_the_readme_calls_every_kind_of_answer():
    told = " ".join(CALLS)
    for part in ("layouts", "format=pdf", "format=svg", "format=zip", "division", "format=csv"):
        assert part in told


@pytest.mark.skipif(shutil.which("curl") is None, reason="curl is not on this machine")
@pytest.mark.parametrize("line", CALLS, ids=range(len(CALLS)))
def test_a_call_of_the_readme_answers(line, port, tmp_path):
    (tmp_path / "den.json").write_bytes(THREE_NUMBERS)
    (tmp_path / "examples").symlink_to(CHECKOUT / "examples")
    here = line.replace("curl ", "curl --fail ", 1).replace(":8080", f":{port}")
    done = subprocess.run(["sh", "-c", here], cwd=tmp_path, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr
    made = [path for path in tmp_path.iterdir() if path.name not in ("den.json", "examples")]
    assert done.stdout or len(made) == 1


def test_sheets_drawn_at_once_by_threads_and_processes_are_the_same_bytes(port):
    documents = [on_few_sheets(path) for path in CEILINGS[:2]]
    headers = {"Content-Type": "application/json"}

    def draw(number):
        document = documents[number % len(documents)]
        return request(port, "POST", "/v1/drawings?format=pdf", document, headers)

    with ThreadPoolExecutor(6) as pool:
        answers = list(pool.map(draw, range(12)))
    assert {status for status, _, _ in answers} == {200}
    for first in range(len(documents)):
        same = answers[first :: len(documents)]
        assert len({body for _, body, _ in same}) == 1
        assert len({headers["ETag"] for _, _, headers in same}) == 1


def test_a_header_beyond_its_bound_is_refused(port):
    assert request(port, "GET", "/healthz", headers={"X-Long": "x" * 20_000})[0] == 431


def test_a_document_beyond_its_bound_is_refused_before_it_is_sent(port):
    headers = {"Content-Type": "application/json", "Content-Length": str(9 * 10**9)}
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=20)
    with contextlib.closing(connection):
        connection.putrequest("POST", "/v1/layouts")
        for name, value in headers.items():
            connection.putheader(name, value)
        connection.endheaders()
        assert connection.getresponse().status == 413


def test_a_head_over_the_wire_has_no_content(port):
    path = "/v1/division?span=244&beam_width=6&coffers=4"
    status, body, headers = request(port, "HEAD", path)
    assert (status, body) == (200, b"")
    assert headers["ETag"] == request(port, "GET", path)[2]["ETag"]


@pytest.mark.parametrize("host", ["0.0.0.0", "::", "192.0.2.1", "example.org", ""])
def test_other_addresses_than_loopback_are_refused(host):
    outcome = lacunar_process("serve", "--host", host, "--port", free_port(), seconds=20)
    assert outcome.code == 2
    assert "loopback" in outcome.err


def test_a_port_that_is_taken_is_told(port):
    outcome = lacunar_process("serve", "--port", port, seconds=20)
    assert outcome.code == 3
    assert f"port {port}" in outcome.err
    assert "Traceback" not in outcome.err


def test_no_other_command_loads_the_web():
    script = (
        "import sys; from lacunar.cli.main import main; code = main(sys.argv[1:]);"
        "loaded = {name.split('.')[0] for name in sys.modules};"
        "print(sorted(loaded & {'flask', 'werkzeug', 'gunicorn', 'jinja2'})); sys.exit(code)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, "check", str(CEILINGS[0])],
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout.splitlines()[-1]) == (0, "[]")
