"""What a rule is given: the spec, and which places in it can be judged."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from lacunar.model.faults import Fault
from lacunar.model.room import RunName
from lacunar.model.spec import CeilingSpec


@dataclass(frozen=True, slots=True)
class RuleCase:
    """A spec to be judged, and the pointers of what could not even be read."""

    spec: CeilingSpec
    unsound: frozenset[str]

    def sound(self, *pointers: str) -> bool:
        """Whether nothing unreadable lies at, above or below any of these places."""
        return not any(_touches(pointer, unread) for pointer in pointers for unread in self.unsound)

    def zones(self, name: RunName) -> int | None:
        """How many zones fixed things cut a run into; None while that cannot be told."""
        members = self.spec.room.members
        fixed = self.spec.grid.run(name).fixed_beams
        if not self.sound("/room/members", f"/grid/{name}/fixed_beams"):
            return None
        if any(member.on is None for member in members):
            return None
        return 1 + len(fixed) + sum(member.on is name for member in members)


Rule = Callable[[RuleCase], Iterator[Fault]]


def _touches(one: str, other: str) -> bool:
    return one == other or one.startswith(other + "/") or other.startswith(one + "/")


def missing(pointer: str, what: str) -> Fault:
    """The fault for something that cannot be assumed and was not said."""
    name = pointer.rpartition("/")[2]
    return Fault(
        code="name_missing",
        pointer=pointer,
        message=f"{what} is not given, and cannot be assumed.",
        remedy=f"Give {name}.",
    )
