"""What is told of ceilings that are not flat, beside the worked cases."""

from tests.layout.laying_out import Spec, box, laid_out, room, run

STATIONS = [
    {"length": 120, "width": width, "above_line": line}
    for width, line in ((0, 21), (60, 20), (60.5, 20.5), (180, 20.25))
]


def spec(**more: object) -> Spec:
    return {
        "room": {**room(240, 180), "stations": STATIONS},
        "grid": {"length": run(2), "width": run(1)},
        **more,
    }


def codes(layout_spec: Spec) -> set[str]:
    return {caution.code for caution in laid_out(layout_spec).cautions}


def test_beams_without_a_station_are_named_and_told_nothing():
    levels = laid_out({**spec(), "grid": {"length": run(3), "width": run(1)}}).levels
    assert levels is not None
    assert levels.beams == ()
    assert levels.not_measured == ("XB-1", "XB-2")
    assert "beams_not_measured" in codes({**spec(), "grid": {"length": run(3), "width": run(1)}})


def test_a_station_counts_within_the_reach_of_a_beams_face():
    # Faces of a beam of 5 in about 120 are 117.5 and 122.5.
    for off, beams in (("122.5", ("XB-1",)), ("123.5", ("XB-1",)), ("123.75", ())):
        stations = [{"length": off, "width": 90, "above_line": 20}]
        told = {**room(240, 180), "stations": stations, "leveling": {"reach": 1}}
        levels = laid_out(spec(room=told, beams={"crosswise": box()})).levels
        assert levels is not None
        assert levels.stations[0].beams == beams


def test_places_beyond_the_last_station_have_its_rise():
    stations = [{"length": 120, "width": w, "above_line": h} for w, h in ((30, 20), (90, 20.5))]
    levels = laid_out(spec(room={**room(240, 180), "stations": stations})).levels
    assert levels is not None
    (beam,) = levels.beams
    assert [place.known for place in beam.places] == ["beyond", "measured", "measured", "beyond"]
    assert beam.places[0].rise.value == beam.places[1].rise.value
    assert beam.places[-1].rise.value == beam.places[-2].rise.value


def test_two_stations_at_one_place_leave_the_higher():
    two = [
        {"length": at, "width": 60, "above_line": line} for at, line in ((119, 20), (121, "20 1/2"))
    ]
    levels = laid_out(spec(room={**room(240, 180), "stations": two})).levels
    assert levels is not None
    assert [p.station for p in levels.beams[0].places if p.known == "measured"] == ["H2"]


def test_flat_beams_below_a_ceiling_that_rises_are_cautioned():
    flat = {"crosswise": {"profile": "flat", "bottom": "1x8"}}
    assert "flat_beams_below_rise" in codes(spec(beams=flat))
    assert "flat_beams_below_rise" not in codes(spec())


def test_heights_from_the_floor_are_only_as_level_as_the_floor():
    assert "heights_follow_floor" not in codes(spec())
    from_floor = [
        {"length": 120, "width": width, "height": height} for width, height in ((0, 121), (60, 120))
    ]
    told = {**room(240, 180), "stations": from_floor}
    assert "heights_follow_floor" in codes(spec(room=told))


def test_packing_that_is_less_than_the_rise_is_cautioned():
    assert "shim_less_than_rise" in codes(spec(fixing={"shim": "1/2"}))
    assert "shim_less_than_rise" not in codes(spec(fixing={}))
