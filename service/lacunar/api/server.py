"""The service on gunicorn, run from this program: nothing else to install or to start."""

from collections.abc import Mapping
from dataclasses import dataclass
from ipaddress import ip_address
from typing import Any

from gunicorn.app.base import BaseApplication

from lacunar.api.app import create_app


@dataclass(frozen=True, slots=True)
class Place:
    """Where the service listens, and with how many processes."""

    host: str
    port: int
    workers: int


def is_loopback(host: str) -> bool:
    """Whether an address can be reached from this machine alone.

    >>> is_loopback("127.0.0.1"), is_loopback("::1"), is_loopback("localhost")
    (True, True, True)
    >>> is_loopback("0.0.0.0"), is_loopback("example.org")
    (False, False)
    """
    if host == "localhost":
        return True
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return False


def settings(place: Place) -> Mapping[str, Any]:
    """What gunicorn is told.

    Threads wait for slow clients; processes compute. A worker is replaced after some thousands of
    requests, so that memory that should leak does not grow for ever, each at another time.
    """
    host = f"[{place.host}]" if ":" in place.host else place.host
    return {
        "bind": f"{host}:{place.port}",
        "worker_class": "gthread",
        "workers": place.workers,
        "threads": 4,
        "max_requests": 20_000,
        "max_requests_jitter": 2_000,
        "timeout": 120,
        "graceful_timeout": 30,
        "limit_request_line": 8190,
        "limit_request_field_size": 8190,
        "limit_request_fields": 64,
        "control_socket_disable": True,
        "proc_name": "lacunar",
        "loglevel": "warning",
    }


class _Server(BaseApplication):  # type: ignore[misc]
    """Gunicorn with its settings from here and from nowhere else."""

    def __init__(self, told: Mapping[str, Any]) -> None:
        self._told = told
        super().__init__()

    def load_config(self) -> None:
        """Take over the settings."""
        for name, value in self._told.items():
            self.cfg.set(name, value)

    def load(self) -> Any:
        """The application, made anew in each worker."""
        return create_app()


def serve(place: Place) -> None:
    """Answer requests until told to stop; raises SystemExit when gunicorn has stopped."""
    _Server(settings(place)).run()
