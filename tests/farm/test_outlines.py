"""Outlines: areas against Karney's GeographicLib and USDA, and what is refused."""

import json
import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farm.outlines import OutlineError, Trouble, area_m2, as_text, read_outline
from tests.places import shared_data

ACRE_M2 = 4046.8564224
SURVEY_ACRE_M2 = 4046.872609874252

# RFC 7946 appendix A.3
RFC_OUTER = [[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]]
RFC_HOLE = [[100.8, 0.8], [100.8, 0.2], [100.2, 0.2], [100.2, 0.8], [100.8, 0.8]]
ONE_ACRE = [
    [-77.0003894, 42.8997137],
    [-76.9996106, 42.8997137],
    [-76.9996105, 42.9002863],
    [-77.0003895, 42.9002863],
    [-77.0003894, 42.8997137],
]


def polygon(*rings):
    return json.dumps({"type": "Polygon", "coordinates": rings})


def ring(*positions):
    """Close a ring typed as (latitude, longitude), the order Karney uses."""
    lon_lat = [[lon, lat] for lat, lon in positions]
    return [*lon_lat, lon_lat[0]]


def refused(text, **options):
    with pytest.raises(OutlineError) as caught:
        read_outline(text, **options)
    return caught.value


# GeographicLib, Planimeter0 test and the documented Antarctica example
KARNEY = [
    ([(89, 0), (89, 90), (89, 180), (89, -90)], 24_952_305_678.0, 1.0),
    ([(0, -1), (-1, 0), (0, 1), (1, 0)], 24_619_419_146.0, 1.0),
    ([(90, 0), (0, 0), (0, 90)], 63_758_202_715_511.06, 1.0),
    (
        [
            *[(-63.1, -58), (-72.9, -74), (-71.9, -102), (-74.9, -102), (-74.3, -131)],
            *[(-77.5, -163), (-77.4, 163), (-71.7, 172), (-65.9, 140), (-65.7, 113)],
            *[(-66.6, 88), (-66.9, 59), (-69.8, 25), (-70.0, -4), (-71.0, -14)],
            *[(-77.3, -33), (-77.9, -46), (-74.7, -61)],
        ],
        13_662_703_680_020.1,
        1.0,
    ),
]


@pytest.mark.parametrize(("positions", "expected_m2", "within_m2"), KARNEY)
def test_the_area_is_the_one_karney_publishes(positions, expected_m2, within_m2):
    for order in (positions, positions[::-1]):
        outline = read_outline(polygon(ring(*order)))
        assert area_m2(outline) == pytest.approx(expected_m2, abs=within_m2)


def test_the_square_of_rfc_7946_has_the_documented_area_and_its_hole_taken_away():
    whole = read_outline(polygon(RFC_OUTER))
    assert area_m2(whole) == pytest.approx(12_308_778_361.469452, rel=1e-9)
    cut = read_outline(polygon(RFC_OUTER, RFC_HOLE))
    assert area_m2(cut) == pytest.approx(7_877_655_572.414, rel=1e-9)


@pytest.mark.parametrize("outer", [RFC_OUTER, RFC_OUTER[::-1]])
@pytest.mark.parametrize("hole", [RFC_HOLE, RFC_HOLE[::-1]])
def test_the_winding_of_rings_does_not_change_the_area(outer, hole):
    outline = read_outline(polygon(outer, hole))
    assert area_m2(outline) == pytest.approx(7_877_655_572.414, rel=1e-9)


def test_a_one_acre_square_measures_one_acre():
    area = area_m2(read_outline(polygon(ONE_ACRE)))
    assert area == pytest.approx(4046.5976, abs=5e-5)
    assert area / ACRE_M2 == pytest.approx(0.999936, abs=5e-7)


def test_a_square_mile_is_six_hundred_and_forty_acres():
    # half of 1609.344 m along the meridian and the parallel of 40 degrees north
    north, east = 804.672 / 111_034.6, 804.672 / 85_393.6
    corners = [(-1, -1), (-1, 1), (1, 1), (1, -1)]
    section = ring(*((40 + y * north, -88 + x * east) for y, x in corners))
    assert area_m2(read_outline(polygon(section))) / ACRE_M2 == pytest.approx(
        640, rel=1e-4
    )


def test_a_field_across_the_date_line_has_the_area_of_its_twin_elsewhere():
    across = ring((10, 179.99), (10, -179.99), (10.02, -179.99), (10.02, 179.99))
    twin = ring((10, 9.99), (10, 10.01), (10.02, 10.01), (10.02, 9.99))
    outline = read_outline(polygon(across))
    twin_m2 = area_m2(read_outline(polygon(twin)))
    assert area_m2(outline) == pytest.approx(twin_m2, rel=1e-9)
    assert outline.crossings == ()
    assert outline.as_geojson()["coordinates"][0][:2] == [[179.99, 10], [-179.99, 10]]


def test_a_hole_across_the_date_line_is_within():
    outer = ring((10, 179.9), (10, -179.9), (10.2, -179.9), (10.2, 179.9))
    hole = ring((10.05, 179.95), (10.05, -179.95), (10.1, -179.95), (10.1, 179.95))
    whole, cut = (area_m2(read_outline(polygon(*r))) for r in ([outer], [outer, hole]))
    assert 0 < cut < whole


@pytest.mark.parametrize(
    "wrap",
    [
        lambda g: g,
        lambda g: {"type": "Feature", "properties": None, "geometry": g},
        lambda g: {
            "type": "FeatureCollection",
            "features": [{"type": "Feature", "properties": {}, "geometry": g}],
        },
        lambda g: {"type": "GeometryCollection", "geometries": [g]},
        lambda g: {"type": "MultiPolygon", "coordinates": [g["coordinates"]]},
    ],
)
def test_an_area_is_found_however_it_is_wrapped(wrap):
    text = json.dumps(wrap({"type": "Polygon", "coordinates": [ONE_ACRE]}))
    assert area_m2(read_outline(text)) == pytest.approx(4046.5976, abs=5e-5)


def test_areas_of_a_collection_add_up_and_points_in_it_are_counted_as_ignored():
    features = [
        {"type": "Feature", "geometry": {"type": "Polygon", "coordinates": [ONE_ACRE]}},
        {"type": "Feature", "geometry": {"type": "Point", "coordinates": [0, 0]}},
        {"type": "Feature", "geometry": None},
        {
            "type": "Feature",
            "geometry": {
                "type": "MultiPolygon",
                "coordinates": [[RFC_OUTER, RFC_HOLE]],
            },
        },
    ]
    outline = read_outline(
        json.dumps({"type": "FeatureCollection", "features": features})
    )
    assert len(outline.polygons) == 2
    assert outline.ignored == 2
    assert area_m2(outline) == pytest.approx(4046.5976 + 7_877_655_572.414, rel=1e-9)


def test_heights_and_a_byte_order_mark_do_no_harm():
    high = [[*position, 219.8] for position in ONE_ACRE]
    outline = read_outline("\ufeff" + polygon(high))
    assert outline.polygons[0][0][0] == (-77.0003894, 42.8997137)


def test_what_is_written_is_rfc_7946_and_reads_back_the_same():
    outline = read_outline(polygon(RFC_OUTER[::-1], RFC_HOLE[::-1]))
    written = outline.as_geojson()
    assert written == {
        "type": "Polygon",
        "coordinates": [
            [[100.0, 0.0], [101.0, 0.0], [101.0, 1.0], [100.0, 1.0], [100.0, 0.0]],
            [[100.8, 0.8], [100.8, 0.2], [100.2, 0.2], [100.2, 0.8], [100.8, 0.8]],
        ],
    }
    again = read_outline(as_text(written))
    assert again.as_geojson() == written


def test_coordinates_are_written_to_seven_decimals_without_a_minus_zero():
    text = polygon(ring((0, 0), (0, 0.123456789), (0.1, 0.1), (-1e-9, -1e-9)))
    written = json.dumps(read_outline(text).as_geojson())
    assert "0.1234568" in written
    assert "-0.0" not in written


@pytest.mark.parametrize(
    ("text", "reason", "place"),
    [
        ("", Trouble.EMPTY, ""),
        (" \n", Trouble.EMPTY, ""),
        ("{\n  nonsense", Trouble.NOT_JSON, "line 2, column 3"),
        ("[1, 2", Trouble.NOT_JSON, "line 1, column 6"),
        ("[]", Trouble.NOT_AN_AREA, ""),
        ("7", Trouble.NOT_AN_AREA, ""),
        ('{"type": "Point", "coordinates": [1, 2]}', Trouble.NOT_AN_AREA, ""),
        ('{"type": "FeatureCollection", "features": []}', Trouble.NOT_AN_AREA, ""),
        (
            '{"type": "FeatureCollection", "features": [3]}',
            Trouble.NOT_AN_AREA,
            "area 1",
        ),
        ('{"type": "Polygon"}', Trouble.NOT_AN_AREA, ""),
        (
            '{"type": "Polygon", "coordinates": [[1]]}',
            Trouble.BAD_POSITION,
            "ring 1, position 1",
        ),
        (polygon(ONE_ACRE[:-1]), Trouble.NOT_CLOSED, "ring 1"),
        (polygon(RFC_OUTER, RFC_HOLE[:-1]), Trouble.NOT_CLOSED, "ring 2"),
        (polygon([ONE_ACRE[0], ONE_ACRE[1], ONE_ACRE[0]]), Trouble.TOO_FEW, "ring 1"),
        (polygon([[0, 0], [1, 1], [2, 2], [0, 0]]), Trouble.NO_AREA, "ring 1"),
        (polygon([[0, 0]] * 5), Trouble.NO_AREA, "ring 1"),
        (
            polygon([[0, 0], [1, "2"], [2, 2], [0, 0]]),
            Trouble.BAD_POSITION,
            "ring 1, position 2",
        ),
        (
            polygon([[0, 0], [1, True], [2, 2], [0, 0]]),
            Trouble.BAD_POSITION,
            "ring 1, position 2",
        ),
        (
            polygon([[0, 0], [1, None], [2, 2], [0, 0]]),
            Trouble.BAD_POSITION,
            "ring 1, position 2",
        ),
        (polygon([[0, 0], [1, math.nan], [2, 2], [0, 0]]), Trouble.NOT_FINITE, "NaN"),
        (
            polygon([[0, 0], [1, 10**400], [2, 2], [0, 0]]),
            Trouble.NOT_FINITE,
            "ring 1, position 2",
        ),
        (
            '{"type": "Polygon", "coordinates": [[[1e999, 0]]]}',
            Trouble.NOT_FINITE,
            "ring 1, position 1",
        ),
        ('{"x": ' + "9" * 5000 + "}", Trouble.NOT_FINITE, ""),
        (
            polygon([[42.9, -97], [42.9, -97.1], [43, -97], [42.9, -97]]),
            Trouble.SWAPPED,
            "ring 1, position 1",
        ),
        (
            polygon([[500000, 4400000], [500100, 4400000]]),
            Trouble.NOT_DEGREES,
            "ring 1, position 1",
        ),
        (
            polygon([[190, 10], [191, 10], [191, 11], [190, 10]]),
            Trouble.NOT_DEGREES,
            "ring 1, position 1",
        ),
        ("[" * 100_000, Trouble.TOO_DEEP, ""),
        (
            '{"type":"Feature","geometry":' * 9000 + "null" + "}" * 9000,
            Trouble.TOO_DEEP,
            "",
        ),
        (polygon([[0, 0]] * 20_001), Trouble.TOO_LARGE, ""),
        (" " * 5_000_001, Trouble.TOO_LARGE, ""),
        (
            polygon(RFC_OUTER, ring((5, 5), (5, 6), (6, 6))),
            Trouble.HOLE_OUTSIDE,
            "ring 2",
        ),
        (polygon(RFC_HOLE, RFC_OUTER), Trouble.HOLE_OUTSIDE, "ring 2"),
    ],
)
def test_an_outline_that_cannot_be_read_says_why_and_where(text, reason, place):
    error = refused(text)
    assert (error.reason, error.place) == (reason, place)
    assert str(error).endswith(".")


def test_the_place_of_a_fault_names_the_area_of_the_collection():
    bad = {"type": "MultiPolygon", "coordinates": [[ONE_ACRE], [ONE_ACRE[:-1]]]}
    features = [
        {"type": "Feature", "geometry": None},
        {"type": "Feature", "geometry": bad},
    ]
    error = refused(json.dumps({"type": "FeatureCollection", "features": features}))
    assert error.place == "area 2, part 2, ring 1"


@pytest.mark.parametrize(
    "name", ["urn:ogc:def:crs:OGC:1.3:CRS84", "EPSG:4326", "urn:ogc:def:crs:EPSG::4326"]
)
def test_the_older_reference_member_is_accepted_when_it_says_wgs_84(name):
    crs = {"type": "name", "properties": {"name": name}}
    text = json.dumps({"type": "Polygon", "crs": crs, "coordinates": [ONE_ACRE]})
    assert read_outline(text).polygons


def test_any_other_reference_system_is_refused():
    crs = {"type": "name", "properties": {"name": "EPSG:26916"}}
    text = json.dumps({"type": "Polygon", "crs": crs, "coordinates": [ONE_ACRE]})
    assert refused(text).reason is Trouble.NOT_WGS84


def test_an_outline_far_from_the_farm_that_would_be_near_if_exchanged_is_swapped():
    swapped = polygon([[lat, lon] for lon, lat in ONE_ACRE])
    assert read_outline(swapped).polygons
    assert refused(swapped, near=(42.9, -77.0)).reason is Trouble.SWAPPED
    assert read_outline(polygon(ONE_ACRE), near=(42.9, -77.0)).polygons


def test_an_outline_far_from_the_farm_either_way_round_is_left_to_the_grower():
    assert read_outline(polygon(RFC_OUTER), near=(42.9, -77.0)).polygons


def test_a_bow_tie_is_read_and_its_crossing_named():
    outline = read_outline(polygon(ring((0, 0), (1, 1), (1, 0), (0, 1))))
    assert outline.crossings == ((0.5, 0.5),)


def test_a_bow_tie_with_a_corner_in_its_middle_crosses_there():
    outline = read_outline(
        polygon(ring((0, 0), (0.5, 0.5), (1, 1), (1, 0), (0.5, 0.5), (0, 1)))
    )
    assert outline.crossings == ((0.5, 0.5),)


def test_a_line_that_goes_on_through_a_wall_at_its_corner_crosses():
    through = ring((0, 0), (0, 2), (2, 2), (2, 1.5), (-1, 1.5), (-1, 1), (0, 1), (2, 0))
    assert len(read_outline(polygon(through)).crossings) >= 1


def test_a_ring_that_only_touches_itself_at_a_corner_does_not_cross():
    touching = ring((0, 0), (0, 1), (0.5, 0.5), (1, 1), (1, 0), (0.5, 0.5))
    assert read_outline(polygon(touching)).crossings == ()


def test_a_corner_that_touches_a_side_from_within_does_not_cross():
    touching = ring((0, 0), (0, 2), (2, 2), (2, 1.5), (0, 1), (2, 0.5), (2, 0))
    assert read_outline(polygon(touching)).crossings == ()


def test_a_spike_and_neighbours_with_a_common_side_do_not_cross():
    spike = ring((0, 0), (0, 1), (0, 2), (0, 1), (1, 1), (1, 0))
    assert read_outline(polygon(spike)).crossings == ()
    left, right = (
        ring((0, 0), (0, 1), (1, 1), (1, 0)),
        ring((0, 1), (0, 2), (1, 2), (1, 1)),
    )
    text = json.dumps({"type": "MultiPolygon", "coordinates": [[left], [right]]})
    assert read_outline(text).crossings == ()


def test_a_hole_that_crosses_its_outer_ring_is_named():
    hole = ring((0.5, 100.5), (0.5, 101.5), (0.6, 101.5), (0.6, 100.5))
    outline = read_outline(polygon(RFC_OUTER, hole))
    assert outline.crossings == ((101.0, 0.5), (101.0, 0.6))


def test_a_crossing_across_the_date_line_is_named_in_usual_longitudes():
    outline = read_outline(
        polygon(ring((0, 179.5), (1, -179.5), (1, 179.5), (0, -179.5)))
    )
    assert [abs(lon) for lon, _ in outline.crossings] == [180.0]


def test_an_outline_of_twenty_thousand_corners_is_checked():
    turn = 2 * math.pi / 19_999
    corners = [
        (42 + math.sin(i * turn) / 100, -77 + math.cos(i * turn) / 100)
        for i in range(19_999)
    ]
    outline = read_outline(polygon(ring(*corners)))
    assert outline.crossings == ()


def test_a_long_straight_edge_of_many_short_lines_is_checked():
    shake = random.Random(1)
    edge = [(42 + i / 1e6, -77 + shake.uniform(-1e-7, 1e-7)) for i in range(9_990)]
    corners = [*edge, (42.01, -77.01), (42, -77.01)]
    assert read_outline(polygon(ring(*corners))).crossings == ()


def test_a_scribble_is_refused_rather_than_compared_for_minutes():
    shake = random.Random(1)
    corners = [(shake.uniform(0, 1), shake.uniform(0, 1)) for _ in range(15_000)]
    assert refused(polygon(ring(*corners))).reason is Trouble.TOO_INTRICATE


@pytest.mark.shared_data
def test_usda_field_outlines_measure_the_acres_usda_publishes():
    # USDA NASS Crop Sequence Boundaries 2016-2023; CSBACRES in US survey acres
    text = shared_data("land/usda-crop-sequence-boundaries.geojson").read_text()
    features = json.loads(text)["features"]
    assert len(features) == 15
    for feature in features:
        outline = read_outline(json.dumps(feature))
        published_m2 = feature["properties"]["CSBACRES"] * SURVEY_ACRE_M2
        assert area_m2(outline) == pytest.approx(published_m2, rel=1e-6)
        assert outline.crossings == ()


@pytest.mark.shared_data
def test_usda_outlines_read_together_add_up():
    text = shared_data("land/usda-crop-sequence-boundaries.geojson").read_text()
    acres = [f["properties"]["CSBACRES"] for f in json.loads(text)["features"]]
    total_m2 = area_m2(read_outline(text))
    assert total_m2 == pytest.approx(sum(acres) * SURVEY_ACRE_M2, rel=1e-6)


NUMBERS = st.one_of(st.integers(-200, 200), st.floats(), st.none(), st.text(max_size=2))
POSITIONS = st.lists(NUMBERS, max_size=3)
THINGS = st.recursive(
    st.one_of(NUMBERS, POSITIONS, st.lists(POSITIONS, max_size=6)),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4),
        st.fixed_dictionaries(
            {
                "type": st.sampled_from(
                    [
                        "Polygon",
                        "MultiPolygon",
                        "Feature",
                        "Point",
                        "FeatureCollection",
                        "GeometryCollection",
                    ]
                )
            },
            optional={
                "coordinates": inner,
                "geometry": inner,
                "features": inner,
                "geometries": inner,
                "crs": inner,
            },
        ),
    ),
    max_leaves=12,
)


@given(st.one_of(st.text(max_size=60), THINGS.map(json.dumps)))
def test_any_text_is_either_read_or_refused_with_a_sentence(text):
    try:
        assert area_m2(read_outline(text)) >= 0
    except OutlineError as error:
        assert str(error).endswith(".")


CELLS = st.integers(-6, 6).map(lambda n: n / 8)


@given(st.lists(st.tuples(CELLS, CELLS), min_size=3, max_size=8))
def test_a_ring_on_a_coarse_grid_never_breaks_the_check(corners):
    try:
        outline = read_outline(polygon(ring(*corners)))
    except OutlineError as error:
        assert error.reason in {Trouble.NO_AREA, Trouble.TOO_FEW}
    else:
        assert outline.as_geojson()["type"] == "Polygon"
