"""Rules about mouldings: each fault by its code and place; and what is assumed of crown."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from lacunar.measure.angle import Angle
from lacunar.measure.units import Units
from lacunar.model.assumptions import resolve
from lacunar.model.moulding import CrownMethod, CrownSpec, FlatMouldingSpec, FlatPlace
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec
from tests.model.specs import SOUND, inches

degrees = Angle.of_degrees


def crowned(**fields: Any) -> CeilingSpec:
    return replace(SOUND, crown=CrownSpec(**fields))


def with_flats(*flats: FlatMouldingSpec) -> CeilingSpec:
    return replace(SOUND, flat_mouldings=flats)


def found(spec: CeilingSpec) -> set[tuple[str, str]]:
    return {(fault.code, fault.pointer) for fault in check(spec)}


def flat(width: str | int, at: FlatPlace | None = None) -> FlatMouldingSpec:
    return FlatMouldingSpec(at, inches(1), inches(width))


@pytest.mark.parametrize(
    "fields",
    [
        {},
        {"face": inches("13/4")},
        {"face": inches("13/4"), "spring_from_wall": degrees(45)},
        {"drop": inches(3), "projection": inches(2)},
        {"face": inches(4), "drop": inches(3)},
        {"face": inches(4), "projection": inches(3)},
        # sqrt(9 + 4) = 3.606: a tape reads 3 5/8
        {"face": inches("29/8"), "drop": inches(3), "projection": inches(2)},
        {"spring_from_wall": degrees(38), "drop": inches(3), "projection": inches(2)},
    ],
)
def test_what_sizes_a_crown_is_sound(fields: dict[str, Any]):
    assert check(crowned(**fields)) == ()


@pytest.mark.parametrize(
    ("fields", "fault"),
    [
        ({"drop": inches(3)}, ("name_missing", "/crown/face")),
        ({"projection": inches(3)}, ("name_missing", "/crown/face")),
        (
            {"drop": inches(3), "spring_from_wall": degrees(38)},
            ("name_missing", "/crown/face"),
        ),
        ({"face": inches(3), "drop": inches(3)}, ("crown_face_too_narrow", "/crown/drop")),
        (
            {"face": inches(3), "projection": inches(4)},
            ("crown_face_too_narrow", "/crown/projection"),
        ),
        # 3, 4, 5: a face of 5 1/8 is read by a tape, one of 5 1/4 is another moulding.
        (
            {"face": inches("21/4"), "drop": inches(3), "projection": inches(4)},
            ("crown_sizes_contradict", "/crown/face"),
        ),
        (
            {"face": inches("19/4"), "drop": inches(3), "projection": inches(4)},
            ("crown_sizes_contradict", "/crown/face"),
        ),
        ({"spring_from_wall": degrees(4)}, ("angle_out_of_bounds", "/crown/spring_from_wall")),
        ({"spring_from_wall": degrees(86)}, ("angle_out_of_bounds", "/crown/spring_from_wall")),
        ({"most_miter": degrees(91)}, ("angle_out_of_bounds", "/crown/most_miter")),
        ({"most_bevel": degrees(91)}, ("angle_out_of_bounds", "/crown/most_bevel")),
        ({"face": inches(25)}, ("length_out_of_bounds", "/crown/face")),
        ({"fit_total": inches(2)}, ("length_out_of_bounds", "/crown/fit_total")),
    ],
)
def test_what_no_crown_can_be_is_a_fault(fields: dict[str, Any], fault: tuple[str, str]):
    assert found(crowned(**fields)) == {fault}


def test_a_face_is_read_with_a_tape():
    legs = {"drop": inches(3), "projection": inches(4)}
    assert check(crowned(face=inches("41/8"), **legs)) == ()
    assert check(crowned(face=inches("39/8"), **legs)) == ()


def test_thickness_and_width_of_a_flat_cannot_be_assumed():
    assert found(with_flats(FlatMouldingSpec())) == {
        ("name_missing", "/flat_mouldings/0/thickness"),
        ("name_missing", "/flat_mouldings/0/width"),
    }


def test_a_flat_bears_on_the_one_before_it_at_its_place():
    wide, narrow, low = flat(5), flat(3), flat(9, FlatPlace.BOTTOM_EDGE)
    assert check(with_flats(wide, low, narrow)) == ()
    assert found(with_flats(narrow, low, wide)) == {
        ("moulding_without_bearing", "/flat_mouldings/2/width")
    }


def test_rules_are_silent_about_what_could_not_be_read():
    spec = crowned(drop=inches(3))
    assert check(spec, frozenset({"/crown/face"})) == ()
    assert check(crowned(spring_from_wall=degrees(1)), frozenset({"/crown"})) == ()


# --- What is assumed.


def assumed(spec: CeilingSpec) -> dict[str, object]:
    made = resolve(spec).assumptions
    return {each.pointer: each.value for each in made if "crown" in each.pointer}


def test_no_crown_is_assumed_where_none_is_asked_for():
    resolution = resolve(SOUND)
    assert resolution.ceiling.crown is None
    assert resolution.ceiling.flat_mouldings == ()
    assert not [each for each in resolution.assumptions if "mould" in each.pointer]


def test_crown_alone_is_a_usual_one_and_all_of_it_is_listed():
    made = assumed(crowned())
    assert made["/crown/face"] == inches("13/4")
    assert made["/crown/spring_from_wall"] == "38°"
    assert made["/crown/method"] == "bench_frame"
    assert made["/crown/fit_total"] == inches("1/16")
    assert "/crown/sprung_allowance" not in made  # nothing is sprung in
    assert "/crown/land" not in made  # it stands as it is milled


def test_what_measured_sizes_give_is_not_assumed():
    made = assumed(crowned(drop=inches(3), projection=inches(2)))
    assert not {"/crown/face", "/crown/spring_from_wall", "/crown/land"} & made.keys()
    # With a spring it may stand off it, and then the width of its flats matters.
    milled = crowned(drop=inches(3), projection=inches(2), spring_from_wall=degrees(38))
    assert assumed(milled)["/crown/land"] == inches("3/8")


def test_coped_crown_has_an_allowance_and_no_fit():
    made = assumed(crowned(method=CrownMethod.COPED_IN_PLACE))
    assert made["/crown/sprung_allowance"] == inches("1/32")
    assert "/crown/fit_total" not in made


def test_metric_crown_is_of_metric_sizes():
    spec = replace(crowned(), units=Units.MILLIMETER)
    assert assumed(spec)["/crown/face"].millimeters == 80  # type: ignore[attr-defined]


def test_flats_go_by_their_number_and_behind_the_crown():
    ceiling = resolve(with_flats(flat(5), flat(3))).ceiling
    assert [each.name for each in ceiling.flat_mouldings] == ["Flat moulding 1", "Flat moulding 2"]
    assert {each.at for each in ceiling.flat_mouldings} == {FlatPlace.CEILING}


def test_a_spring_is_kept_exactly():
    spec = crowned(spring_from_wall=degrees(Fraction(77, 2)), face=inches(3))
    crown = resolve(spec).ceiling.crown
    assert crown is not None
    assert crown.spring_from_wall == degrees(Fraction(77, 2))
