"""The lock fixes every library by hash, names no address, and fits what the project asks for."""

import re
import tomllib

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.architecture.sources import ROOT

LOCK = (ROOT / "requirements.lock").read_text(encoding="utf-8")
HASH = re.compile(r"--hash=sha256:[0-9a-f]{64}")


def entries(lock: str) -> list[str]:
    """Return the lock's entries, each on one line with its hashes."""
    lines = [line for line in lock.splitlines() if not line.startswith("#")]
    return [entry for entry in "\n".join(lines).replace("\\\n", " ").splitlines() if entry.strip()]


def requirement(entry: str) -> Requirement:
    """Return an entry without its hashes."""
    return Requirement(HASH.sub("", entry).strip())


def unfit(entry: str) -> str:
    """Return what is wrong with an entry; empty where nothing is."""
    if not HASH.search(entry):
        return f"no hash: {entry}"
    if not re.fullmatch(r"==[^,*]+", str(requirement(entry).specifier)):
        return f"no single version: {entry}"
    return ""


def addresses(lock: str) -> list[str]:
    """Return the lines that name a place to install from: that is the machine's to say."""
    told = re.compile(r"://|\bfile:|\B--?(index|extra-index|find-links|trusted-host|i|f)\b|@")
    return [line for line in lock.splitlines() if told.search(line)]


def asked_for() -> list[Requirement]:
    """Return what the project asks for directly: to run, to test, to lint, to build."""
    with (ROOT / "pyproject.toml").open("rb") as stream:
        project = tomllib.load(stream)
    groups = [project["project"]["dependencies"], *project["dependency-groups"].values()]
    groups.append(project["build-system"]["requires"])
    return [Requirement(line) for group in groups for line in group]


def unmet(lock: str, wanted: list[Requirement]) -> list[str]:
    """Return the requirements that the lock's versions do not meet."""
    locked = {}
    for entry in map(requirement, entries(lock)):
        (only,) = entry.specifier
        locked[canonicalize_name(entry.name)] = only.version

    def is_met(one: Requirement) -> bool:
        version = locked.get(canonicalize_name(one.name))
        return version is not None and one.specifier.contains(version)

    return [str(one) for one in wanted if not is_met(one)]


def test_every_entry_is_one_version_with_a_hash():
    assert [fault for fault in map(unfit, entries(LOCK)) if fault] == []


def test_no_address_is_named():
    assert addresses(LOCK) == []


def test_what_the_project_asks_for_is_locked_at_a_fitting_version():
    assert len(asked_for()) > len({"run", "test", "lint", "build"})
    assert unmet(LOCK, asked_for()) == []


def test_planted_faults_are_found():
    good = "a==1 \\\n    --hash=sha256:" + "0" * 64 + "\n"
    assert [unfit(entry) for entry in entries(good)] == [""]
    assert unfit("a==1").startswith("no hash")
    assert unfit("a>=1 --hash=sha256:" + "0" * 64).startswith("no single version")
    assert addresses("--index-url somewhere\na @ file:x\n" + good) == [
        "--index-url somewhere",
        "a @ file:x",
    ]
    assert unmet(good, [Requirement("a>1"), Requirement("b"), Requirement("A>=1")]) == ["a>1", "b"]
