"""Outlines read, refused with a sentence, and written again."""

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from farm.outlines import OutlineError, Trouble, area_m2, as_text, read_outline
from tests.farm.outlines.rings import (
    ONE_ACRE,
    RFC_HOLE,
    RFC_OUTER,
    polygon,
    refused,
    ring,
)


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
