"""What is decided of joists and fixing, and what is refused."""

from dataclasses import replace
from fractions import Fraction

import pytest

from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.fasteners import FastenerKind
from lacunar.model.fixing import BetweenJoists
from lacunar.model.room import CeilingState, RunName
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec, FixingSpec, JoistsSpec, WoodSpec
from lacunar.model.stock import read_stock
from lacunar.model.woods import Species
from tests.model.specs import SOUND, inches, with_box, with_room

LEAST = JoistsSpec(parallel_to=RunName.WIDTH, first=inches(8))


def framed(fixing: FixingSpec | None = None, **fields: object) -> CeilingSpec:
    return replace(with_room(joists=replace(LEAST, **fields)), fixing=fixing)  # type: ignore[arg-type]


def found(spec: CeilingSpec) -> set[tuple[str, str]]:
    return {(fault.code, fault.pointer) for fault in check(spec)}


def assumed(spec: CeilingSpec) -> dict[str, object]:
    return {each.pointer: each.value for each in resolve(spec).assumptions}


@pytest.mark.parametrize(
    ("spec", "code", "pointer"),
    [
        (with_room(joists=JoistsSpec(first=inches(8))), "name_missing", "parallel_to"),
        (with_room(joists=JoistsSpec(parallel_to=RunName.WIDTH)), "name_missing", "first"),
        # 243 is the length run, along which joists along the width are measured.
        (framed(first=inches(244)), "joist_outside_room", "first"),
        (framed(spacing=inches(8), width=inches(8)), "joists_overlap", "spacing"),
        (framed(spacing=inches(5)), "length_out_of_bounds", "spacing"),
        (framed(gravity=Fraction(42)), "ratio_out_of_bounds", "gravity"),
    ],
)
def test_joists_that_cannot_be_are_refused(spec: CeilingSpec, code: str, pointer: str):
    assert (code, f"/room/joists/{pointer}") in found(spec)


@pytest.mark.parametrize(
    ("fixing", "code", "pointer"),
    [
        (FixingSpec(size="11"), "fastener_size_unknown", "size"),
        (FixingSpec(fastener=FastenerKind.NAIL, size="10"), "fastener_size_unknown", "size"),
        (FixingSpec(at_crossing=0), "fastener_count", "at_crossing"),
        (FixingSpec(at_crossing=13), "fastener_count", "at_crossing"),
        (FixingSpec(trim=WoodSpec(moisture=Fraction(12))), "ratio_out_of_bounds", "trim/moisture"),
        (FixingSpec(panel_gravity=Fraction(0)), "ratio_out_of_bounds", "panel_gravity"),
        (FixingSpec(length=inches(30)), "length_out_of_bounds", "length"),
    ],
)
def test_fixing_that_cannot_be_is_refused(fixing: FixingSpec, code: str, pointer: str):
    assert (code, f"/fixing/{pointer}") in found(replace(SOUND, fixing=fixing))


def test_blocking_cannot_be_let_in_behind_a_closed_ceiling():
    blocking = FixingSpec(between_joists=BetweenJoists.BLOCKING)
    refused = {("blocking_in_closed_ceiling", "/fixing/between_joists")}
    assert found(framed(blocking, ceiling=CeilingState.CLOSED)) == refused
    assert found(framed(blocking, ceiling=CeilingState.OPEN)) == set()
    # Left open, the ceiling is taken to be as the blocking needs it.
    assert found(framed(blocking)) == set()
    joists = resolve(framed(blocking)).ceiling.room.joists
    assert joists is not None
    assert joists.ceiling is CeilingState.OPEN


def test_the_least_there_is_to_say_of_joists_is_enough():
    spec = framed()
    assert found(spec) == set()
    made = assumed(spec)
    assert made["/room/joists/spacing"] == inches(16)
    assert made["/room/joists/width"] == inches("3/2")
    assert made["/room/joists/existing_finish"] == inches("1/2")
    assert made["/fixing/between_joists"] == "skin"


def test_nothing_is_assumed_of_what_was_not_told_of():
    pointers = assumed(SOUND).keys()
    assert not [each for each in pointers if "joists" in each or each.startswith("/fixing")]
    assert resolve(SOUND).ceiling.fixing is None


def test_fasteners_are_assumed_only_where_joists_are_known():
    made = assumed(replace(SOUND, fixing=FixingSpec())).keys()
    assert "/fixing/trim/species" in made
    assert not {"/fixing/length", "/fixing/fastener", "/fixing/between_joists"} & made


# 2x4 backing 1 1/2, finish 1/2, wished depth 1 1/2: 3 1/2 in. With 5/8 of finish 3 5/8: the next
# usual length is 4 in.
@pytest.mark.parametrize(("finish", "length"), [("1/2", "7/2"), ("5/8", "4")])
def test_the_shortest_usual_fastener_that_reaches_is_taken(finish: str, length: str):
    spec = with_box(backing=read_stock("2x4"))
    joists = replace(LEAST, existing_finish=inches(finish))
    spec = replace(spec, room=replace(spec.room, joists=joists))
    assert assumed(spec)["/fixing/length"] == inches(length)
    assert "/fixing/block_through" not in assumed(spec)


def test_a_depth_no_usual_fastener_reaches_is_taken_as_it_is():
    fixing = FixingSpec(least_penetration=inches(12), shim=Length.of_inches(0))
    assert assumed(framed(fixing))["/fixing/length"] == inches(14)  # 12 + 1 1/2 + 1/2


def test_a_told_gravity_leaves_the_species_out():
    ceiling = resolve(framed(FixingSpec(trim=WoodSpec(gravity=Fraction("0.6"))))).ceiling
    assert ceiling.fixing is not None
    assert (ceiling.fixing.trim.species, ceiling.fixing.trim.gravity) == (None, Fraction("0.6"))
    assert ceiling.fixing.backing.species is Species.DOUGLAS_FIR_LARCH
