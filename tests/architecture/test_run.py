"""Which tiers `tests/run.py` runs, and that one which cannot run is named and not passed over."""

import pytest

from tests import run

READY = run.Tier("spreadsheet", "tests/spreadsheet", lambda: "")
LACKING = run.Tier("database", "tests/database", lambda: "no database server is installed")


def test_a_further_tier_is_left_out_unless_asked_for():
    assert run.plan([READY, LACKING], asked=False) == run.Plan(
        left_out=["tests/spreadsheet", "tests/database"], not_run=[]
    )


def test_a_tier_that_lacks_its_need_is_named_with_the_reason():
    assert run.plan([READY, LACKING], asked=True) == run.Plan(
        left_out=["tests/database"],
        not_run=["NOT RUN: database: no database server is installed"],
    )


@pytest.mark.parametrize(
    ("pytest_code", "not_run", "in_ci", "code"),
    [
        (0, [], True, 0),
        (0, ["NOT RUN: …"], False, 0),
        (0, ["NOT RUN: …"], True, 1),
        (2, ["NOT RUN: …"], True, 2),
        (1, [], False, 1),
        (5, [], True, 5),  # pytest's code where it found no test
    ],
)
def test_a_tier_not_run_fails_ci_alone(
    pytest_code: int, not_run: list[str], in_ci: bool, code: int
):
    assert run.exit_code(pytest_code, not_run, in_ci) == code


def test_the_whole_suite_uses_all_cores_and_a_picked_part_is_left_alone():
    assert run.shared_out([]) == ["--numprocesses=auto", "--dist=worksteal"]
    assert run.shared_out(["-k", "division"]) == ["-k", "division"]
