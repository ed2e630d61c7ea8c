"""The benchmark reads what wrk prints; it is not run here, because it measures the machine."""

import pytest

from tests.bench.requests_per_second import Measured, read_report, table

# Printed by wrk 4.1.0.
REPORT = """\
Running 1s test @ http://127.0.0.1:8080/healthz
  Thread Stats   Avg      Stdev     Max   +/- Stdev
    Latency     5.35ms    5.22ms  62.33ms   89.89%
  Latency Distribution
     50%    4.17ms
     99%   25.90ms
  1733 requests in 1.00s, 1.42MB read
Requests/sec:   1731.55
"""


def test_rate_and_tail_are_read():
    assert read_report(REPORT) == Measured(1731.55, 25.9)
    assert read_report(REPORT.replace("25.90ms", "1.50s")).p99 == 1500


def test_a_run_with_refusals_measures_nothing():
    with pytest.raises(SystemExit, match="did not answer"):
        read_report(REPORT + "  Non-2xx or 3xx responses: 3\n")


def test_ratios_are_to_the_empty_request_of_the_same_round():
    found = {
        "empty": [Measured(1000, 10), Measured(2000, 10)],
        "layout": [Measured(100, 50), Measured(200, 50)],
    }
    assert list(table(found))[-1].split() == ["layout", "150", "50.0", "0.100", "5.00"]
