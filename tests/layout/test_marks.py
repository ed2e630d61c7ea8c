"""Running marks: what is marked, in which order, rounded how."""

from lacunar.layout.records import Layout, MarkKind
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run


def spec(cut: Spec, **more: object) -> Spec:
    """Beams 5 wide, bottoms of 3 1/2, play of 1/8, marks to 1/16."""
    return {
        "mark_to": "1/16",
        "beams": {"crosswise": box(allowance="1/8")},
        "grid": {"length": cut, "width": run(1)},
        "room": room(100, 60, **more),
    }


def told(layout: Layout) -> list[tuple[str, str, str, str]]:
    """Kind, of, side and exact place of the marks of the length run."""
    return [
        (str(mark.kind), mark.of, mark.side, str(mark.exact.value.inches))
        for mark in layout.marks[0].marks
    ]


def test_faces_backing_and_centers_in_order_from_the_datum():
    # Half beams 2 1/2: backing to 2 1/2 - 3/4 - 1/8 = 1 5/8. (100 - 5 - 5)/2 = 45: faces 47 1/2 and
    # 52 1/2, backing 3/4 + 1/16 inside them.
    assert told(laid_out(spec(run(2, "half")))) == [
        ("wall", "W1", "at", "0"),
        ("backing", "WB-1", "far", "13/8"),
        ("face", "WB-1", "far", "5/2"),
        ("face", "XB-1", "near", "95/2"),
        ("backing", "XB-1", "near", "773/16"),
        ("center", "XB-1", "at", "50"),
        ("backing", "XB-1", "far", "827/16"),
        ("face", "XB-1", "far", "105/2"),
        ("face", "WB-2", "near", "195/2"),
        ("backing", "WB-2", "near", "787/8"),
        ("wall", "W3", "at", "100"),
    ]


def test_a_soffit_has_a_face_and_no_backing_and_a_beam_on_it_has_both():
    marks = told(laid_out(spec(run(1, {"soffit": 12, "then": "half"}))))
    assert [mark for mark in marks if mark[1] in ("WB-1", "WB-2")] == [
        ("face", "WB-1", "far", "12"),
        ("backing", "WB-2", "far", "109/8"),  # 14 1/2 - 7/8
        ("face", "WB-2", "far", "29/2"),
    ]


def test_a_cased_beam_has_its_member_marked_in_place_of_backing():
    member = {"on": "length", "center": 40, "width": 2, "drop": 2, "clearance": "1/4", "cleat": 0}
    marks = told(laid_out(spec(run([1, 1]), members=[member])))
    assert [mark for mark in marks if mark[1] == "XB-1"] == [
        ("face", "XB-1", "near", "75/2"),
        ("member", "XB-1", "near", "39"),
        ("center", "XB-1", "at", "40"),
        ("member_center", "XB-1", "at", "40"),
        ("member", "XB-1", "far", "41"),
        ("face", "XB-1", "far", "85/2"),
    ]


def test_each_mark_is_rounded_once_and_a_tie_goes_away_from_the_datum():
    # thirds: (100 - 10)/3 = 30; a beam face at 30 1/32 by a fixed beam centered at 32 17/32
    layout = laid_out(spec(run([1, 1], fixed_beams=[{"center": "32 17/32"}])))
    near = next(mark for mark in layout.marks[0].marks if mark.side == "near")
    assert (near.exact.value, near.mark) == (inches("30 1/32"), inches("30 1/16"))


def test_from_framing_is_known_where_the_finish_is():
    cut = run(2)
    assert all(m.mark_from_framing is None for m in laid_out(spec(cut)).marks[0].marks)
    layout = laid_out(spec(cut, wall_finish={"W1": "5/8", "W2": 0, "W3": 1, "W4": "1/2"}))
    starts = {"length": inches("5/8"), "width": inches("1/2")}
    for marks in layout.marks:
        for mark in marks.marks:
            assert mark.from_framing is not None
            assert mark.from_framing.value == mark.exact.value + starts[str(marks.run)]


def test_both_ends_of_both_runs_are_marked():
    layout = laid_out(spec(run(2)))
    assert [(str(marks.run), marks.end) for marks in layout.marks] == [
        ("length", "start"),
        ("length", "end"),
        ("width", "start"),
        ("width", "end"),
    ]
    assert layout.marks[0].marks == layout.marks[1].marks
    assert {mark.kind for mark in layout.marks[2].marks} == {MarkKind.WALL}
