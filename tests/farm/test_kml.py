"""Outlines in KML, in typed corners, and told apart by their first mark."""

import json

import pytest

from farm.outlines import (
    OutlineError,
    Trouble,
    area_m2,
    as_corners,
    as_kept,
    decoded,
    read_any,
    read_corners,
    read_kml,
    read_outline,
)
from tests.places import shared_data

SURVEY_ACRE_M2 = 4046.872609874252

# The polygon with a hole of the KML reference (OGC 07-147r2, KML 2.2, 10.8).
OUTER = """
  -77.05788457660967,38.87253259892824,100
  -77.05465973756702,38.87291016281703,100
  -77.05315536854791,38.87053267794386,100
  -77.05552622493516,38.868757801256,100
  -77.05844056290393,38.86996206506943,100
  -77.05788457660967,38.87253259892824,100
"""
HOLE = """
  -77.05668055019126,38.87154239798456,100
  -77.05542625960818,38.87167890344077,100
  -77.05485125901024,38.87076535397792,100
  -77.05577677433152,38.87008686581446,100
  -77.05691162017543,38.87054446963351,100
  -77.05668055019126,38.87154239798456,100
"""
SQUARE = "0,0 0.01,0 0.01,0.01 0,0.01 0,0"


def boundary(side, coordinates):
    ring = f"<LinearRing><coordinates>{coordinates}</coordinates></LinearRing>"
    return f"<{side}BoundaryIs>{ring}</{side}BoundaryIs>"


def polygon(outer, *holes):
    inner = "".join(boundary("inner", hole) for hole in holes)
    return f"<Polygon><extrude>1</extrude>{boundary('outer', outer)}{inner}</Polygon>"


def kml(*inside, xmlns="http://www.opengis.net/kml/2.2"):
    space = f' xmlns="{xmlns}"' if xmlns else ""
    head = '<?xml version="1.0" encoding="UTF-8"?>'
    return f"{head}\n<kml{space}><Document>{''.join(inside)}</Document></kml>"


def placemark(*inside):
    return f"<Placemark><name>A field</name>{''.join(inside)}</Placemark>"


def as_geojson(*rings):
    told = [
        [[float(n) for n in one.split(",")] for one in ring.split()] for ring in rings
    ]
    return json.dumps({"type": "Polygon", "coordinates": told})


def refused(read, text, **options):
    with pytest.raises(OutlineError) as caught:
        read(text, **options)
    return caught.value.reason, caught.value.place


def test_the_example_of_the_standard_is_the_same_land_as_in_geojson():
    told = read_kml(kml(placemark(polygon(OUTER, HOLE))))
    twin = read_outline(as_geojson(OUTER, HOLE))
    assert told == twin
    assert len(told.polygons[0]) == 2


def test_a_hole_is_taken_away():
    whole, cut = (
        area_m2(read_kml(kml(placemark(polygon(*rings)))))
        for rings in ([OUTER], [OUTER, HOLE])
    )
    hole = area_m2(read_kml(kml(placemark(polygon(HOLE)))))
    assert cut == pytest.approx(whole - hole, rel=1e-12)


@pytest.mark.parametrize(
    "xmlns",
    [
        "http://www.opengis.net/kml/2.2",
        "http://earth.google.com/kml/2.0",
        "http://earth.google.com/kml/2.1",
        "",
    ],
)
def test_any_namespace_of_kml_is_read(xmlns):
    assert read_kml(kml(placemark(polygon(SQUARE)), xmlns=xmlns)).polygons


def test_a_prefix_before_every_name_is_read():
    text = (
        '<k:kml xmlns:k="http://www.opengis.net/kml/2.2"><k:Polygon>'
        "<k:outerBoundaryIs><k:LinearRing><k:coordinates>"
        f"{SQUARE}</k:coordinates></k:LinearRing></k:outerBoundaryIs></k:Polygon></k:kml>"
    )
    assert read_kml(text).polygons


def test_every_polygon_of_several_placemarks_and_geometries_is_found():
    far = SQUARE.replace("0.01", "0.02")
    many = f"<MultiGeometry>{polygon(SQUARE)}{polygon(far)}</MultiGeometry>"
    text = kml(placemark(many), f"<Folder>{placemark(polygon(SQUARE))}</Folder>")
    assert len(read_kml(text).polygons) == 3


def test_points_and_lines_are_left_out_and_counted():
    point = "<Point><coordinates>1,2</coordinates></Point>"
    line = "<LineString><coordinates>1,2 3,4</coordinates></LineString>"
    outline = read_kml(
        kml(placemark(point), placemark(line), placemark(polygon(SQUARE)))
    )
    assert (len(outline.polygons), outline.ignored) == (1, 2)


def test_a_space_after_the_comma_does_no_harm():
    assert read_kml(kml(polygon(SQUARE.replace(",", ", ")))).polygons


def test_a_file_of_any_common_encoding_is_read():
    text = kml(placemark(polygon(SQUARE))).replace("A field", "Äcker")
    for encoding in ("utf-8", "utf-8-sig", "utf-16", "latin-1"):
        assert read_any(decoded(text.encode(encoding))).polygons


@pytest.mark.parametrize(
    ("text", "reason", "place"),
    [
        ("", Trouble.EMPTY, ""),
        ("<kml><Polygon>", Trouble.NOT_KML, "line 1, column 15"),
        ("<kml>&nothing;</kml>", Trouble.NOT_KML, "line 1, column 6"),
        ("<k:kml></k:kml>", Trouble.NOT_KML, "line 1, column 1"),
        ("<html><p>Sign in</p></html>", Trouble.NOT_AN_AREA, ""),
        (kml(placemark("<Polygon/>")), Trouble.NOT_AN_AREA, "area 1"),
        (
            kml(placemark(f"<Polygon>{boundary('inner', SQUARE)}</Polygon>")),
            Trouble.NOT_AN_AREA,
            "area 1",
        ),
        (kml(polygon("")), Trouble.NOT_AN_AREA, "ring 1"),
        (
            kml(placemark(polygon(SQUARE)), placemark(polygon("0,0 1,1 0,1"))),
            Trouble.TOO_FEW,
            "area 2, ring 1",
        ),
        (kml(polygon("0,0 1,0 1,1 0,1")), Trouble.NOT_CLOSED, "ring 1"),
        (kml(polygon("0,0 1,x 1,1 0,0")), Trouble.BAD_POSITION, "ring 1, position 2"),
        (kml(polygon("0,0 1 1,1 0,0")), Trouble.BAD_POSITION, "ring 1, position 2"),
        (kml(polygon("0,0 1,1e999 1,1 0,0")), Trouble.NOT_FINITE, "ring 1, position 2"),
        (kml(polygon("0,0 1,nan 1,1 0,0")), Trouble.BAD_POSITION, "ring 1, position 2"),
        (kml(polygon("42,-97 42,-96 43,-96 42,-97")), Trouble.SWAPPED, None),
        (kml(polygon(SQUARE, "5,5 5,6 6,6 5,5")), Trouble.HOLE_OUTSIDE, "ring 2"),
        (kml("<a>" * 101 + "</a>" * 101), Trouble.TOO_DEEP, ""),
        (kml(polygon("0,0 " * 20_001)), Trouble.TOO_LARGE, ""),
        (" " * 5_000_001, Trouble.TOO_LARGE, ""),
    ],
)
def test_kml_that_cannot_be_read_says_why_and_where(text, reason, place):
    found = refused(read_kml, text)
    assert found[0] is reason
    assert place is None or found[1] == place


@pytest.mark.parametrize(
    "declared",
    [
        '<!DOCTYPE kml [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;">]>',
        '<!DOCTYPE kml [<!ENTITY a SYSTEM "file:///etc/passwd">]>',
        '<!DOCTYPE kml SYSTEM "http://example.org/kml.dtd">',
        "<!DOCTYPE html>",
    ],
)
def test_a_document_type_is_refused_before_anything_of_it_is_used(declared):
    text = f"{declared}<kml>{polygon(SQUARE)}</kml>"
    assert refused(read_kml, text)[0] is Trouble.HAS_DOCTYPE


def test_a_wide_gap_between_coordinates_is_read_at_once():
    gap = " " * 1_000_000
    assert read_kml(kml(polygon(SQUARE.replace(" ", gap, 1)))).polygons


def test_a_bow_tie_in_kml_names_its_crossing():
    outline = read_kml(kml(polygon("0,0 1,1 1,0 0,1 0,0")))
    assert outline.crossings == ((0.5, 0.5),)


@pytest.mark.shared_data
def test_usda_field_outlines_as_kml_measure_the_acres_usda_publishes():
    # USDA NASS Crop Sequence Boundaries 2016-2023; CSBACRES in US survey acres
    text = shared_data("land/usda-crop-sequence-boundaries.geojson").read_text()
    for feature in json.loads(text)["features"]:
        parts = [
            polygon(*(" ".join(f"{x!r},{y!r}" for x, y in ring) for ring in rings))
            for rings in feature["geometry"]["coordinates"]
        ]
        told = read_kml(
            kml(placemark(f"<MultiGeometry>{''.join(parts)}</MultiGeometry>"))
        )
        published_m2 = feature["properties"]["CSBACRES"] * SURVEY_ACRE_M2
        assert area_m2(told) == pytest.approx(published_m2, rel=1e-6)


# The acre of tests/farm/outlines/test_areas.py, walked round: latitude first.
ACRE = """
42.8997137, -77.0003894
42.8997137, -76.9996106
42.9002863, -76.9996105
42.9002863, -77.0003895
"""


@pytest.mark.parametrize(
    "text",
    [
        ACRE,
        ACRE + "42.8997137, -77.0003894\n",
        ACRE.replace(", ", "\t"),
        ACRE.replace(", ", ";"),
        ACRE.replace(".", ",").replace(", ", "; "),
        ACRE.strip().replace(", -", "° N, ").replace("\n", "° W\n") + " w",
        ACRE.strip().replace("\n", ",\r\n"),
    ],
)
def test_an_acre_typed_corner_by_corner_measures_one_acre(text):
    assert area_m2(read_corners(text)) == pytest.approx(4046.5976, abs=5e-5)


def test_south_and_west_are_below_nought():
    outline = read_corners("33.5 S 70.6 W\n33.5 S 70.5 W\n33.4 S 70.5 W")
    assert outline.polygons[0][0][0] == (-70.6, -33.5)


@pytest.mark.parametrize(
    ("text", "reason", "place"),
    [
        ("north corner by the oak", Trouble.NOT_A_CORNER, "line 1"),
        (ACRE + "42.9\n", Trouble.NOT_A_CORNER, "line 6"),
        (ACRE + "42.9, -77, 3\n", Trouble.NOT_A_CORNER, "line 6"),
        (ACRE + "-42.9 S, 77 W\n", Trouble.NOT_A_CORNER, "line 6"),
        (ACRE + "42" + " " * 100_000 + "x", Trouble.NOT_A_CORNER, "line 6"),
        (ACRE + "142.9, 177\n", Trouble.NOT_DEGREES, "line 6"),
        ("-101.5, 40.1\n-101.4, 40.1\n-101.4, 40.2", Trouble.SWAPPED_CORNERS, "line 1"),
        ("1, 2\n3, 4", Trouble.TOO_FEW_CORNERS, ""),
        ("1, 2\n3, 4\n1, 2\n3, 4", Trouble.TOO_FEW_CORNERS, ""),
        ("1, 1\n2, 2\n3, 3", Trouble.NO_AREA, ""),
    ],
)
def test_corners_that_cannot_be_read_say_why_and_on_which_line(text, reason, place):
    assert refused(read_corners, text) == (reason, place)


def test_corners_far_from_the_farm_that_would_be_near_if_exchanged_are_swapped():
    text = "10, 45\n10, 45.01\n10.01, 45.01"
    assert read_corners(text).polygons
    assert refused(read_corners, text, near=(45, 10)) == (Trouble.SWAPPED_CORNERS, "")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (ACRE, read_corners(ACRE)),
        (kml(polygon(SQUARE)), read_kml(kml(polygon(SQUARE)))),
        (as_geojson(OUTER, HOLE), read_outline(as_geojson(OUTER, HOLE))),
        ("\ufeff \n" + as_geojson(SQUARE), read_outline(as_geojson(SQUARE))),
    ],
)
def test_each_shape_is_known_by_its_first_mark(text, expected):
    assert read_any(text) == expected


def test_a_packed_file_says_that_it_is_packed():
    assert refused(decoded, b"PK\x03\x04and so on")[0] is Trouble.ZIPPED


def test_a_single_ring_is_shown_as_corners_and_reads_back_the_same():
    outline = read_outline(as_geojson(OUTER))
    kept = as_kept(outline.as_geojson())
    again = read_corners(as_corners(kept))
    assert again.as_geojson() == outline.as_geojson()


def test_what_has_a_hole_cannot_be_shown_as_corners():
    assert as_corners(read_outline(as_geojson(OUTER, HOLE))) is None


@pytest.mark.parametrize(
    "odd", [None, {}, [], {"type": "Point", "coordinates": [1, 2]}]
)
def test_what_was_kept_past_the_form_and_is_no_area_counts_as_none(odd):
    assert as_kept(odd) is None
