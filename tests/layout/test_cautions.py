"""What is said of a layout beside its figures."""

import pytest

from lacunar.layout.records import Caution
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run

STANDING = {
    "verify_in_field",
    "overhead_work",
    "wiring_in_ceiling",
    "detectors_and_sprinklers",
}


def cautions(spec: Spec) -> dict[str, Caution]:
    return {caution.code: caution for caution in laid_out(spec).cautions}


def along(cut: Spec, length: object = 200, **beam: object) -> Spec:
    return {
        "room": room(length, 60, 144),
        "beams": {"crosswise": box(**beam)},
        "grid": {"length": cut, "width": run(1)},
    }


def test_some_hold_for_every_ceiling_and_no_others_for_a_plain_one():
    assert cautions(along(run(3))).keys() == STANDING


def test_cautions_defer_to_the_code_and_to_licensed_practice():
    found = cautions(along(run(3)))
    assert "local code" in found["detectors_and_sprinklers"].text
    assert "licensed" in found["overhead_work"].text


def test_members_are_never_to_be_cut():
    spec = along(run([1, 2]))
    spec["room"]["members"] = [{"on": "length", "center": 80, "width": 3, "drop": 3, "cleat": 0}]
    assert "Never cut, drill, notch" in cautions(spec)["members_are_structure"].text


def test_a_beam_between_steps_names_the_step_that_would_hold_it():
    spec = along(run(3), width="4 31/32")
    spec["mark_to"] = "1/16"
    found = cautions(spec)["beam_width_between_steps"]
    assert "1/32" in found.text
    assert found.figures["width"] == inches("4 31/32")
    spec["mark_to"] = "1/32"
    assert "beam_width_between_steps" not in cautions(spec)


def test_a_beam_that_no_step_holds_has_none_proposed():
    spec = along(run(3), width="127 mm")
    assert "beam_width_between_steps" not in cautions(spec)  # 5 in
    spec = along(run(3), width="125 mm")
    assert "would hold" not in cautions(spec)["beam_width_between_steps"].text


@pytest.mark.parametrize(
    ("cut", "code"),
    [
        # 200 - 2 * 5 = 190: 38, 114, 38: a border of a third
        (run(3, weights=[1, 3, 1]), "small_border_coffer"),
        # 63 1/3, 95, ... 190 by 2:3:2 is 54 2/7 and 81 3/7: half again as large
        (run(3, weights=[2, 3, 2]), "unlike_coffers"),
        # 97 1/2 by 60 is 1.6; three of 60 by 30 would be 2
        (run(1), "long_coffers"),
    ],
)
def test_coffers_that_look_wrong(cut: Spec, code: str):
    assert code in cautions(along(cut))


def test_coffers_nearly_alike_are_not_spoken_of():
    found = cautions(along(run(3, weights=[4, 5, 4])))
    assert not found.keys() & {"small_border_coffer", "unlike_coffers", "long_coffers"}


def test_beams_that_reach_the_floor_are_a_fault_and_low_ones_a_caution():
    low = along(run(3))
    low["room"] = room(200, 60, 88, headroom=84)
    found = cautions(low)["headroom_below_limit"]
    assert found.figures["clear_height"] == inches("82 1/2")  # 88 - 5 1/2
    assert "local code governs" in found.text
