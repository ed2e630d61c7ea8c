"""The decisions of the set-up, each on a machine that is made up. Nothing is installed here."""

import ast
import os
import sys
from pathlib import Path

import pytest

from tests.architecture.sources import ROOT, SCRIPTS

sys.path.insert(0, str(ROOT / "examples"))

import fresh_machine as fresh

CAIRO = fresh.SystemNeed("libcairo2", "draws", lambda: False)
VENV = fresh.SystemNeed("python3-venv", "private environments", lambda: True)
ROOT_USER = fresh.Machine(has_apt=True, is_root=True, sudo=None)
SUDOER = fresh.Machine(has_apt=True, is_root=False, sudo=("sudo", "-n"))
NOBODY = fresh.Machine(has_apt=True, is_root=False, sudo=None)
NO_APT = fresh.Machine(has_apt=False, is_root=True, sudo=None)


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda path: path.name)
def test_an_old_python_can_read_the_scripts(script: Path):
    ast.parse(script.read_text(encoding="utf-8"), feature_version=(3, 6))


@pytest.mark.parametrize("version", [(3, 6), (3, 10)])
def test_an_old_python_is_refused_in_one_sentence(version: tuple[int, int]):
    text = fresh.refusal(version, "/usr/bin/python3")
    assert "needs Python 3.11 or newer" in text
    assert f"/usr/bin/python3 is Python 3.{version[1]}" in text
    assert text.count(". ") == 0


@pytest.mark.parametrize("version", [(3, 11), (3, 13), (4, 0)])
def test_a_python_new_enough_is_taken(version: tuple[int, int]):
    assert fresh.refusal(version, "python3") == ""


def test_the_scripts_refuse_what_the_project_refuses():
    oldest = ".".join(map(str, fresh.OLDEST_PYTHON))
    assert f'requires-python = ">={oldest}"' in (ROOT / "pyproject.toml").read_text("utf-8")


def test_only_what_is_missing_is_installed():
    assert fresh.missing_needs([CAIRO, VENV]) == [CAIRO]


def test_root_installs_as_it_is_and_others_through_sudo():
    assert fresh.words_before(ROOT_USER, [CAIRO]) == ()
    assert fresh.words_before(SUDOER, [CAIRO]) == ("sudo", "-n")


def test_one_who_may_not_install_gets_the_line_to_run():
    with pytest.raises(fresh.SetUpError) as lack:
        fresh.words_before(NOBODY, [CAIRO, VENV])
    assert str(lack.value).splitlines()[-1].strip() == (
        "apt-get update && apt-get install -y --no-install-recommends libcairo2 python3-venv"
    )


def test_a_system_without_apt_is_told_so():
    with pytest.raises(fresh.SetUpError, match="no apt-get"):
        fresh.words_before(NO_APT, [CAIRO])


def test_a_stamp_changes_with_each_thing_it_stands_for():
    stamps = {
        fresh.stamp_of([b"lock", b"project"], "3.11.2", "/home/a"),
        fresh.stamp_of([b"lock 2", b"project"], "3.11.2", "/home/a"),
        fresh.stamp_of([b"lock", b"project 2"], "3.11.2", "/home/a"),
        fresh.stamp_of([b"lockp", b"roject"], "3.11.2", "/home/a"),
        fresh.stamp_of([b"lock", b"project"], "3.12.0", "/home/a"),
        fresh.stamp_of([b"lock", b"project"], "3.11.2", "/home/b"),
    }
    assert len(stamps) == len(["first", "lock", "project", "shifted", "python", "place"])


@pytest.fixture
def environment(tmp_path: Path) -> str:
    """An environment as it is after a set-up, with a stand-in for its Python."""
    made = tmp_path / ".venv"
    (made / "bin").mkdir(parents=True)
    (made / "bin" / "python").touch()
    fresh.write_stamp(str(made), "fits")
    return str(made)


def test_an_environment_is_used_again_only_with_a_fitting_stamp(environment: str):
    assert fresh.is_complete(environment, "fits")
    assert not fresh.is_complete(environment, "another")


def test_an_environment_without_its_python_is_not_complete(environment: str):
    os.remove(fresh.python_in(environment))
    assert not fresh.is_complete(environment, "fits")


def test_a_cleared_environment_is_known_as_unfinished(environment: str):
    fresh.clear(environment)
    assert os.listdir(environment) == [fresh.STAMP_NAME]
    assert not fresh.is_complete(environment, "fits")
    fresh.clear(environment)  # as after an interruption: known again, not refused


def test_an_environment_made_by_someone_else_is_left_alone(environment: str):
    os.remove(os.path.join(environment, fresh.STAMP_NAME))
    with pytest.raises(fresh.SetUpError, match="not made by this set-up"):
        fresh.clear(environment)
    assert os.path.exists(fresh.python_in(environment))


def test_a_link_in_the_environment_is_removed_and_not_followed(environment: str, tmp_path: Path):
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere" / "keep").touch()
    os.symlink(tmp_path / "elsewhere", os.path.join(environment, "lib64"))
    fresh.clear(environment)
    assert (tmp_path / "elsewhere" / "keep").exists()


def test_other_installations_are_kept_out():
    cleaned = fresh.clean_variables({"PYTHONPATH": "/other", "PIP_USER": "1", "HOME": "/home/a"})
    assert cleaned == {"PIP_USER": "0", "HOME": "/home/a"}
