"""What computed an answer, named in every one of them."""

from collections.abc import Mapping
from types import MappingProxyType

from lacunar.drawing.painters.engine import engine

ENGINE: Mapping[str, str] = MappingProxyType(dict(engine()))
"""Names and versions of all that the bytes of an answer depend on: fixed while a process lives."""

ENGINE_HEADER = "Lacunar-Engine"

ENGINE_TEXT = " ".join(f"{name}/{version}" for name, version in ENGINE.items())
