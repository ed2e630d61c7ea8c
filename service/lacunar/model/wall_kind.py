"""What can stand at a wall."""

from enum import StrEnum


class WallKind(StrEnum):
    """What stands at a wall."""

    NONE = "none"
    HALF = "half"
    FULL = "full"
    SOFFIT = "soffit"
