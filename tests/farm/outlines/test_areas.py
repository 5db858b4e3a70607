"""Areas of outlines, against published ones."""

import json

import pytest

from farm.outlines import area_m2, read_outline
from tests.farm.outlines.rings import (
    ONE_ACRE,
    RFC_HOLE,
    RFC_OUTER,
    polygon,
    ring,
)
from tests.places import shared_data

ACRE_M2 = 4046.8564224


SURVEY_ACRE_M2 = 4046.872609874252


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
