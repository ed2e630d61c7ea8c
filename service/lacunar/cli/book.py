"""What the commands share whose answers are tables: their arguments, and where the answer goes."""

import argparse
import sys
from enum import StrEnum
from pathlib import Path

from lacunar.cli.draw import write_whole
from lacunar.exchange.query_schema import BookMedia


def add_ceilings(command: argparse.ArgumentParser) -> None:
    """Add the ceilings that are pooled."""
    command.add_argument(
        "specs", nargs="+", metavar="SPEC.json", help="a ceiling; - reads one from standard input"
    )


def add_telling(
    command: argparse.ArgumentParser, tables: type[StrEnum], usual: StrEnum, explained: str
) -> None:
    """Add how the answer is told; `usual` is the table sent as CSV where none is named."""
    command.add_argument(
        "--format",
        choices=[media.value for media in BookMedia],
        help="JSON (the default), one table as CSV, or a workbook of all",
    )
    command.add_argument(
        "--table",
        choices=[table.value for table in tables],
        help=f"which table, as CSV (default: {usual.value})",
    )
    command.add_argument("--out", metavar="FILE", help="write here instead of standard output")
    how = command.add_mutually_exclusive_group()
    how.add_argument("--explain", action="store_true", help=explained)
    how.add_argument(
        "--trace", action="store_true", help="add rule, formula and operands to each figure"
    )


def send(content: bytes, out: str | None) -> None:
    """Write an answer to standard output, or whole to a file whose name is then printed."""
    if out is None:
        sys.stdout.buffer.write(content)
    else:
        print(write_whole(Path(out), content))
