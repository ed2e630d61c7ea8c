"""Saw settings over HTTP: as JSON, as a table, and value by value."""

import csv
import io

import pytest

from tests.api.calling import client

CROWN = "corner=90&spring_from_wall=38&face=4 5/8"


def get(query):
    return client().get(f"/v1/saw-settings?{query}")


# Saw manuals print 31.6 and 33.9; a 4 5/8 crown at 38 comes down 4.625 cos 38 = 3.6445 and out
# 4.625 sin 38 = 2.8474, which is also what each end is shorter at the ceiling in a square corner.
@pytest.mark.parametrize(
    ("field", "decimal", "fraction"),
    [
        ("nested_miter", "45", "45"),
        ("flat_miter", "31.619007", "31.6"),
        ("flat_bevel", "33.862914", "33.9"),
        ("drop", "3.644550", "3 5/8"),
        ("projection", "2.847434", "2 7/8"),
        ("ceiling_edge", "2.847434", "2 7/8"),
    ],
)
def test_one_bare_value(field, decimal, fraction):
    answer = get(f"{CROWN}&field={field}")
    assert (answer.status_code, answer.content_type) == (200, "text/plain; charset=utf-8")
    # A length is snapped to 1/8000 mm, which is 0.000005 in.
    assert float(answer.text) == pytest.approx(float(decimal), abs=5e-6)
    assert get(f"{CROWN}&field={field}&as=fraction").text == fraction


def test_a_raked_run_is_told_as_value_and_as_rows():
    # 2.8284 (cos 60 + sin 60) = 3.8637: worked by hand for a square corner and a face of 4 at 45.
    raked = "corner=90&spring_from_wall=45&face=4&slope=60&rake=falls"
    assert float(get(f"{raked}&field=run_drop").text) == pytest.approx(3.8637, abs=1e-4)
    rows = csv.DictReader(io.StringIO(get(f"{raked}&format=csv").text))
    sizes = {row["kind"]: row["in"] for row in rows}
    assert {"raked_height", "apart", "run_drop", "run_face", "wider"} <= sizes.keys()
    assert float(sizes["wider"]) == pytest.approx(0.7883, abs=1e-4)
    answer = get(f"{raked}&fence_height=2").json
    assert answer["settings"]["nested_within_limits"] is False
    codes = [caution["code"] for caution in answer["cautions"]]
    assert codes == ["raked_run_does_not_meet", "crown_taller_than_fence", "cut_test_pieces"]


def test_json_tells_settings_cuts_and_cautions():
    answer = get("corner=92&spring_from_wall=52").json
    assert answer["settings"]["nested_miter"]["degrees"] == 44
    assert len(answer["settings"]["cuts"]) == 4
    assert answer["drop"] is None
    codes = [caution["code"] for caution in answer["cautions"]]
    assert codes == ["spring_from_ceiling", "cut_test_pieces"]
    assert {each["pointer"] for each in answer["assumptions"]} == {"/most_miter", "/most_bevel"}
    assert "formula" not in answer["settings"]["flat_miter"]
    traced = get("corner=92&spring_from_wall=52&trace=1").json["settings"]["flat_miter"]
    assert traced["operands"]["spring"]["degrees"] == 52


def test_the_table_has_settings_sizes_and_cuts():
    answer = get(f"{CROWN}&format=csv")
    assert answer.content_type == "text/csv; charset=utf-8"
    rows = list(csv.DictReader(io.StringIO(answer.text)))
    assert [row["kind"] for row in rows] == [
        *("corner", "spring_from_wall", "nested_miter", "flat_miter", "flat_bevel"),
        *("drop", "projection", "ceiling_edge", "cut", "cut", "cut", "cut"),
    ]
    cut = rows[-1]
    assert [cut[name] for name in ("lies", "end", "against_fence", "table", "keep")] == [
        *("flat", "right", "ceiling", "right", "left")
    ]


def test_the_saw_of_the_caller_decides_what_it_can():
    settings = get("corner=60&spring_from_wall=38&most_miter=60&most_bevel=48").json["settings"]
    # 60 degree corner: nested 60; flat 46.8 and 43.0.
    assert (settings["nested_within_limits"], settings["flat_within_limits"]) == (True, True)
    settings = get("corner=60&spring_from_wall=38").json["settings"]
    assert (settings["nested_within_limits"], settings["flat_within_limits"]) == (False, True)


@pytest.mark.parametrize(
    ("query", "status", "code", "pointer"),
    [
        ("corner=90", 400, "name_missing", "/spring_from_wall"),
        ("spring_from_wall=38", 400, "name_missing", "/corner"),
        ("corner=90&spring=38", 400, "name_unknown", "/spring"),
        ("corner=square&spring_from_wall=38", 400, "wrong_type", "/corner"),
        ("corner=90&spring_from_wall=2", 422, "angle_out_of_bounds", "/spring_from_wall"),
        ("corner=359&spring_from_wall=38", 422, "angle_out_of_bounds", "/corner"),
        ("corner=90&spring_from_wall=38&face=40", 422, "length_out_of_bounds", "/face"),
        ("corner=90&spring_from_wall=38&field=drop", 422, "value_not_one", "/face"),
        (f"{CROWN}&field=run_face", 422, "value_not_one", "/slope"),
        ("corner=90&spring_from_wall=38&slope=70", 422, "angle_out_of_bounds", "/slope"),
        (
            "corner=90&spring_from_wall=38&fence_height=4",
            422,
            "fence_height_alone",
            "/fence_height",
        ),
        ("corner=90&spring_from_wall=38&rake=falls", 422, "rake_without_slope", "/rake"),
        (f"{CROWN.replace('90', '180')}&field=ceiling_edge", 422, "value_not_one", "/corner"),
    ],
)
def test_what_cannot_be_set_is_refused_with_its_place(query, status, code, pointer):
    answer = get(query)
    assert answer.status_code == status
    assert (code, pointer) in {(e["code"], e["pointer"]) for e in answer.json["errors"]}
    told = get(f"{query}&on_error=text")
    assert (told.status_code, told.text[:5]) == (200, "#ERR ")
