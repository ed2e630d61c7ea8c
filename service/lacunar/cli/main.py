"""`lacunar`: draw, layout, options, take-off, estimate, check, and the others its help lists.

Exit codes: 0 done, 1 faults in the input, 2 wrong usage, 3 the machine lacks something, 4 the
checker found something on a sheet.
"""

import argparse
import io
import os
import sys
from collections.abc import Sequence

from lacunar import __version__
from lacunar.cli import (
    boards,
    check,
    cutting_plan,
    draw,
    estimate,
    layout,
    material_list,
    options,
    saw_settings,
    serve,
    take_off,
)
from lacunar.cli.speaking import DONE, ENVIRONMENT, tell
from lacunar.drawing.painters.fonts import font_license
from lacunar.drawing.painters.unavailable import DrawingUnavailable

DESCRIPTION = """\
Lays out coffered ceilings exactly and plots their shop drawings.

A ceiling is a JSON file. Three numbers are enough to begin:

  {"room": {"length": "20' 3 1/2\\"", "width": "14' 10\\"", "height": "9' 1\\""}}

Everything it leaves open is decided sensibly and listed. Lengths are read in any notation
(48 1/16, 12'-0 3/16", 144.1875, 1220.8 mm); bare ones are in the ceiling's "units", in or mm.
"""

EPILOG = """\
exit codes: 0 done, 1 faults in the input (each with its place and remedy), 2 wrong usage,
3 the machine lacks something (cairo, the typeface, a folder to write to), 4 checker findings
"""


class _FontLicense(argparse.Action):
    """Prints the licence the typeface's source is published under."""

    def __call__(self, top: argparse.ArgumentParser, *_: object) -> None:
        print(font_license())
        top.exit()


def parser() -> argparse.ArgumentParser:
    """The command's arguments and its teaching help."""
    top = argparse.ArgumentParser(
        prog="lacunar",
        description=DESCRIPTION,
        epilog=EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    top.add_argument("--version", action="version", version=f"lacunar {__version__}")
    top.add_argument(
        "--font-license",
        action=_FontLicense,
        nargs=0,
        help="print the licence of the typeface that the sheets carry, and exit",
    )
    commands = top.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for command in (
        draw,
        layout,
        options,
        take_off,
        material_list,
        estimate,
        check,
        boards,
        cutting_plan,
        saw_settings,
        serve,
    ):
        command.add_to(commands)
    return top


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; its exit code."""
    _speak_utf8()
    asked = parser().parse_args(arguments)
    try:
        code: int = asked.run(asked)
        sys.stdout.flush()
    except DrawingUnavailable as unavailable:
        tell(str(unavailable))
        code = ENVIRONMENT
    except BrokenPipeError:
        # Whoever was reading has seen enough.
        _hush_stdout()
        code = DONE
    except OSError as error:
        _hush_stdout()
        tell(f"The machine cannot read or write what it must: {error.strerror or error}.")
        code = ENVIRONMENT
    except KeyboardInterrupt:
        tell("Interrupted; nothing is half written.")
        code = 130
    return code


def _speak_utf8() -> None:
    """JSON is UTF-8 (RFC 8259 section 8.1) and names may hold any letter, whatever the locale."""
    for stream, unknown in ((sys.stdout, "surrogateescape"), (sys.stderr, "backslashreplace")):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors=unknown)


def _hush_stdout() -> None:
    """Python must not fail again over what is left unwritten when it closes standard output."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


if __name__ == "__main__":
    sys.exit(main())
