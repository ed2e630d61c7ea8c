"""`lacunar serve`: the HTTP service on this machine."""

import argparse
import os
import socket
from typing import Any

from lacunar.cli.speaking import ENVIRONMENT, USAGE, tell

HELP = "answer over HTTP"
DESCRIPTION = """\
Serves the HTTP interface until it is interrupted. Nothing else has to be installed or started.
Its description is at /openapi.json, a page to read and try it at /docs.

  lacunar serve
  curl --json @examples/ceilings/music_room.json http://127.0.0.1:8080/v1/layouts
  curl --json @examples/ceilings/music_room.json http://127.0.0.1:8080/v1/drawings -o sheets.pdf

Callers are not asked who they are yet, so only loopback addresses are served. Before others are
let in, put a proxy in front that asks them, encrypts, and buffers slow clients.
"""
LARGEST_PORT = 65_535


def add_to(commands: Any) -> None:
    """Add this command's arguments."""
    command = commands.add_parser(
        "serve",
        help=HELP,
        description=DESCRIPTION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    command.add_argument("--host", default="127.0.0.1", help="loopback address (default 127.0.0.1)")
    command.add_argument("--port", type=_port, default=8080, help="port (default 8080)")
    command.add_argument(
        "--workers",
        type=_workers,
        default=os.cpu_count() or 1,
        help="processes that compute (default: one to each core)",
    )
    command.set_defaults(run=run)


def run(options: argparse.Namespace) -> int:
    """Serve until interrupted; the exit code."""
    # The web is loaded only here: every other command runs without it.
    from lacunar.api.server import Place, is_loopback, serve

    if not is_loopback(options.host):
        tell(
            f"{options.host} can be reached from other machines, and callers are not asked who they"
            " are yet: give a loopback address such as 127.0.0.1."
        )
        return USAGE
    lack = _why_not_free(options.host, options.port)
    if lack:
        tell(f"Cannot listen on {options.host} port {options.port}: {lack}.")
        return ENVIRONMENT
    tell(f"Lacunar answers on {options.host} port {options.port}; Ctrl-C stops it.")
    serve(Place(options.host, options.port, options.workers))
    return 0


def _why_not_free(host: str, port: int) -> str:
    """Why a port cannot be had, said once here instead of again and again by the server."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    with socket.socket(family, socket.SOCK_STREAM) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((host, port))
        except OSError as error:
            return error.strerror or str(error)
    return ""


def _port(text: str) -> int:
    return _whole(text, 1, LARGEST_PORT)


def _workers(text: str) -> int:
    return _whole(text, 1, 256)


def _whole(text: str, least: int, most: int) -> int:
    if text.isascii() and text.isdigit() and least <= int(text) <= most:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} is no whole number from {least} to {most}")
