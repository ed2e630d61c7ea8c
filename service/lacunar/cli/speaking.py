"""What the commands share: exit codes, reading a spec, and telling a person what is wrong."""

import sys
from collections.abc import Sequence
from pathlib import Path

from lacunar.exchange.fault_json import fault_lines
from lacunar.model.faults import Fault
from lacunar.model.limits import DOCUMENT_BYTES
from lacunar.workflow.prepare import Prepared

DONE = 0
FAULTS = 1
USAGE = 2
ENVIRONMENT = 3
FINDINGS = 4


class UnreadableSpec(Exception):
    """The named file cannot be read; the text says why."""


def tell(line: str) -> None:
    """A line for the person at the terminal, never mixed into machine output."""
    print(line, file=sys.stderr, flush=True)


def spec_bytes(name: str) -> bytes:
    """The bytes of a spec file, or of standard input for `-`; never more than can be accepted.

    One byte beyond the limit is read, so that the reader can tell a document that is too long.
    Errors: `UnreadableSpec`.
    """
    try:
        if name == "-":
            return sys.stdin.buffer.read(DOCUMENT_BYTES + 1)
        with Path(name).open("rb") as file:
            return file.read(DOCUMENT_BYTES + 1)
    except OSError as error:
        raise UnreadableSpec(f"Cannot read {name}: {error.strerror}.") from None


def tell_faults(name: str, faults: Sequence[Fault]) -> None:
    """Every fault of a spec: place, sentence, figures, remedy."""
    count = f"{len(faults)} fault{'s' if len(faults) != 1 else ''}"
    tell(f"{name}: {count}; nothing was made from it.")
    for fault in faults:
        for line in fault_lines(fault):
            tell(f"  {line}")


def tell_query_faults(faults: Sequence[Fault]) -> None:
    """Every fault of what was asked on the command line."""
    for fault in faults:
        for line in fault_lines(fault):
            tell(line)


def tell_cautions(prepared: Prepared) -> None:
    """The layout's cautions, a line each."""
    for caution in prepared.layout.cautions:
        tell(f"  caution: {caution.text}")
