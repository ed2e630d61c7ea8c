"""Why a plan does not fit its paper: what had no room, scale by scale."""

from fractions import Fraction


class PaperTooSmall(Exception):
    """The plan does not fit this paper at any standard scale; its text says what has no room."""


class Obstacles:
    """What had no room at each scale that was tried."""

    def __init__(self) -> None:
        self._by_ratio: dict[Fraction, str] = {}

    def note(self, ratio: Fraction, scale: str, what: str) -> None:
        """Keep what has no room at a scale."""
        self._by_ratio[ratio] = f"At {scale} {what} has no room."

    @property
    def first(self) -> str:
        """What has no room at the largest scale that the paper might hold."""
        if not self._by_ratio:
            return "At every standard scale the plan is larger than the paper."
        return self._by_ratio[min(self._by_ratio)]
