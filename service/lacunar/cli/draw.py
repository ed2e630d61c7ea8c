"""`lacunar draw`: the sheets of one or more ceilings as files."""

import argparse
import os
import re
import tempfile
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from lacunar.cli.speaking import (
    DONE,
    ENVIRONMENT,
    FAULTS,
    USAGE,
    UnreadableSpec,
    spec_bytes,
    tell,
    tell_cautions,
    tell_faults,
)
from lacunar.drawing.painters.unavailable import DrawingUnavailable
from lacunar.model.faults import SpecRefused
from lacunar.model.limits import LEAST_DPI, MOST_DPI, USUAL_DPI
from lacunar.workflow.draw import (
    USUAL_FORMATS,
    DrawingFormat,
    PaintedFile,
    Painting,
    compose_sheets,
    paint,
)
from lacunar.workflow.prepare import Prepared, prepare

HELP = "draw a ceiling's sheets as SVG, PDF, PNG or DXF"
DESCRIPTION = """\
Draws the sheets of each ceiling into a folder: one PDF with all of them, and each as an SVG.
Every file appears whole or not at all. The names of the files made are printed, one a line.

  lacunar draw examples/ceilings/music_room.json --out sheets
  lacunar draw *.json --out sheets --format pdf
  lacunar draw den.json --out sheets --format dxf --format png --dpi 200
"""


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "draw",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument(
        "specs", nargs="+", metavar="SPEC.json", help="a ceiling; - reads one from standard input"
    )
    command.add_argument(
        "--out", required=True, metavar="DIR", help="folder for the files, made if missing"
    )
    command.add_argument(
        "--format",
        action="append",
        choices=[f.value for f in DrawingFormat],
        help="only this format; may be given several times (default: svg and pdf)",
    )
    command.add_argument(
        "--dpi",
        type=_dpi,
        default=USUAL_DPI,
        metavar="N",
        help=f"pixels to the inch of a PNG, {LEAST_DPI} to {MOST_DPI} (default: {USUAL_DPI})",
    )
    command.add_argument("--quiet", action="store_true", help="no progress and no cautions")
    command.set_defaults(run=run)


def _dpi(text: str) -> int:
    """A number of pixels to the inch that pictures are made of."""
    number = int(text)
    if not LEAST_DPI <= number <= MOST_DPI:
        raise argparse.ArgumentTypeError(f"{number} is not within {LEAST_DPI} and {MOST_DPI}")
    return number


def run(options: argparse.Namespace) -> int:
    """Draw each ceiling, going on after a failure; the highest exit code."""
    out = Path(options.out)
    alike = _same_files(options.specs)
    if alike:
        tell(f"{', '.join(alike)} would overwrite each other's sheets: draw them into two folders.")
        return USAGE
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        tell(f"Cannot make the folder {out}: {error.strerror}.")
        return ENVIRONMENT
    return max(_draw_one(name, out, options) for name in options.specs)


def _draw_one(name: str, out: Path, options: argparse.Namespace) -> int:
    """One ceiling: prepare, paint everything, then write; its exit code."""
    formats = tuple(DrawingFormat(f) for f in options.format or USUAL_FORMATS)
    stem = _stem(name)
    try:
        prepared = prepare(spec_bytes(name))
        files, missing = _painted(
            prepared, stem, Painting(formats, options.dpi), quiet=options.quiet
        )
    except UnreadableSpec as unreadable:
        tell(str(unreadable))
        return FAULTS
    except SpecRefused as refused:
        tell_faults(name, refused.faults)
        return FAULTS
    try:
        written = [write_whole(out / f"{stem}{file.suffix}", file.content) for file in files]
        left_over = _left_over(out, stem, written)
    except OSError as error:
        tell(f"Cannot write into {out}: {error.strerror}.")
        return ENVIRONMENT
    for path in written:
        print(path)
    for path in left_over:
        tell(f"{path} is left over from an earlier drawing and no part of this one.")
    if missing:
        tell(f"{stem}: not all is painted. {missing}")
        return ENVIRONMENT
    return DONE


def _stem(name: str) -> str:
    """What the files drawn from a spec are called."""
    return "ceiling" if name == "-" else Path(name).stem


def _same_files(names: Sequence[str]) -> list[str]:
    """The specs whose sheets would have the names of another's; many disks ignore upper case."""
    counts = Counter(_stem(name).casefold() for name in names)
    return [name for name in names if counts[_stem(name).casefold()] > 1]


def _left_over(out: Path, stem: str, written: Sequence[Path]) -> list[Path]:
    """Sheets of an earlier drawing of the same spec that had more of them, in the same formats."""
    kinds = "|".join({path.suffix[1:] for path in written} - {DrawingFormat.PDF.value})
    sheet = re.compile(rf"{re.escape(stem)}-Z-[0-9]+(-[0-9]+)?\.({kinds})")
    return sorted(p for p in out.iterdir() if sheet.fullmatch(p.name) and p not in written)


def _painted(
    prepared: Prepared, stem: str, painting: Painting, *, quiet: bool
) -> tuple[list[PaintedFile], str]:
    """Everything painted before anything is written, and why some is missing, if it is.

    SVG and DXF need no cairo, so they are kept when PDF and PNG cannot be painted.
    """
    sheet_set, typeface = compose_sheets(prepared)
    if not quiet:
        tell_cautions(prepared)
        for caution in sheet_set.cautions:
            tell(f"  caution: {caution.text}")

    def progress(line: str) -> None:
        if not quiet:
            tell(f"{stem}: {line}")

    files: list[PaintedFile] = []
    try:
        for file in paint(prepared, sheet_set, typeface, painting, progress):
            files.append(file)
    except DrawingUnavailable as unavailable:
        return files, str(unavailable)
    return files, ""


def write_whole(path: Path, content: bytes) -> Path:
    """Write a file whole or not at all: beside its place first, then renamed."""
    handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        # mkstemp makes files private; drawings are to be shared like any other file.
        umask = os.umask(0)
        os.umask(umask)
        os.chmod(beside, 0o666 & ~umask)
        os.replace(beside, path)
    except BaseException:
        os.unlink(beside)
        raise
    return path
