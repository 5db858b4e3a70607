"""The land drawn to scale: areas, names, scale, and the page it stands on."""

import datetime as dt
import math
import re
from itertools import combinations, pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from farm.outlines import Outline, area_m2
from farm.units import M_PER_FT, System
from records.models import Planting
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import Ground, Segment, Strip
from reports.drawings import MapPlot, farm_map
from reports.drawings.map.legend import round_length
from reports.papers.land import carried_on, map_paper
from reports.papers.season import season_paper
from tests.factories import FieldFactory, MembershipFactory
from tests.reports.test_season_paper import words

SVG = "{http://www.w3.org/2000/svg}"
TODAY = dt.date(2026, 6, 20)
YEAR = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
M_PER_DEGREE = 111_320.0


def block(lat, lon, east_m, north_m, wide_m, tall_m, turned=0.0):
    """A field of these sides, so far from a middle, turned by an angle."""
    corners = [(0, 0), (wide_m, 0), (wide_m, tall_m), (0, tall_m), (0, 0)]
    cos, sin = math.cos(turned), math.sin(turned)
    return tuple(
        (
            lon
            + (east_m + x * cos - y * sin)
            / (M_PER_DEGREE * math.cos(math.radians(lat))),
            lat + (north_m + x * sin + y * cos) / M_PER_DEGREE,
        )
        for x, y in corners
    )


def plot(number, *rings, ground=Ground.BARE, name=None):
    area = area_m2(Outline((rings,)))
    return MapPlot(number, name or f"Field {number}", area, (rings,), ground)


def drawn(*plots, system=System.US):
    return farm_map(plots, ident="land", title="The land", system=system)


def tree(drawing):
    return ElementTree.fromstring(drawing)


def shapes(drawing):
    """Each piece of land as drawn: its path and what is said of it."""
    found = tree(drawing).findall(f"{SVG}path")
    return [one for one in found if one.get("class") != "sheet"]


def drawn_area(shape):
    """By the shoelace formula, holes taken away."""
    rings = re.findall(r"M([^Z]+)Z", shape.get("d"))
    areas = []
    for ring in rings:
        corners = [tuple(map(float, one.split(","))) for one in ring.split("L")]
        pairs = pairwise([*corners, corners[0]])
        areas.append(abs(sum(a * d - c * b for (a, b), (c, d) in pairs)) / 2)
    return areas[0] - sum(areas[1:])


def told(drawing):
    return [text.text for text in tree(drawing).findall(f"{SVG}text")]


fields = st.tuples(
    st.floats(-3000, 3000),
    st.floats(-3000, 3000),
    st.floats(250, 1500),
    st.floats(250, 1500),
    st.floats(0, math.pi),
)


@given(
    lat=st.floats(-65, 65),
    lon=st.floats(-180, 180),
    sides=st.lists(fields, min_size=2, max_size=6),
)
@settings(max_examples=60, deadline=None)
def test_drawn_areas_keep_the_proportions_of_areas_on_the_ground(lat, lon, sides):
    # The ground's own areas are geodesic: Karney 2013, as test_outlines checks them.
    plots = [plot(n, block(lat, lon, *side)) for n, side in enumerate(sides, 1)]
    by_area = sorted(plots, key=lambda one: -one.area_m2)
    shares = [
        drawn_area(shape) / one.area_m2
        for shape, one in zip(shapes(drawn(*plots)), by_area, strict=True)
    ]
    assert max(shares) / min(shares) == pytest.approx(1, abs=1e-3)


def test_a_hole_is_left_out_of_the_drawn_area():
    whole = block(42, -77, 0, 0, 400, 400)
    hole = block(42, -77, 100, 100, 200, 200)
    (shape,) = shapes(drawn(plot(1, whole, hole)))
    assert shape.get("fill-rule") == "evenodd"
    (full,) = shapes(drawn(plot(1, whole)))
    assert drawn_area(shape) == pytest.approx(0.75 * drawn_area(full), rel=1e-3)


def test_a_farm_across_the_date_line_lies_together():
    west = block(10, 179.99, 0, 0, 500, 500)
    east = tuple((lon - 360, lat) for lon, lat in block(10, 180.01, 0, 0, 500, 500))
    drawing = drawn(plot(1, west), plot(2, east))
    for shape in shapes(drawing):
        assert drawn_area(shape) > 1000


def test_the_scale_bar_is_as_long_on_paper_as_it_says():
    # A field half a mile wide: 2,640 ft by definition of the foot.
    half_mile = plot(1, block(45, -93, 0, 0, 2640 * M_PER_FT, 300))
    drawing = drawn(half_mile)
    (shape,) = shapes(drawing)
    across = [float(x) for x in re.findall(r"[ML]([\d.]+),", shape.get("d"))]
    bars = tree(drawing).findall(f"{SVG}rect")
    long = sum(float(bar.get("width")) for bar in bars if bar.get("height") == "5")
    feet = 2640 * long / (max(across) - min(across))
    assert "500 ft" in told(drawing)
    assert feet == pytest.approx(500, rel=5e-3)


@pytest.mark.parametrize(
    ("scale", "system", "expected"),
    [
        (1.0, System.US, "500 ft"),
        (0.1, System.US, "1 mi"),
        (10.0, System.US, "50 ft"),
        (1.0, System.METRIC, "100 m"),
        (0.1, System.METRIC, "1 km"),
        (0.02, System.METRIC, "5 km"),
    ],
)
def test_the_scale_bar_is_a_round_length_in_the_farms_units(scale, system, expected):
    assert round_length(scale, system)[1] == expected


def test_north_is_up():
    south, north = block(45, 5, 0, 0, 200, 100), block(45, 5, 0, 400, 200, 100)
    drawing = drawn(plot(1, south, name="South"), plot(2, north, name="North"))
    places = {
        text.text: float(text.get("y")) for text in tree(drawing).findall(f"{SVG}text")
    }
    assert places["North"] < places["South"] < places["N"]


def test_each_piece_carries_the_texture_of_its_ground_and_the_legend_tells_it():
    grounds = [Ground.LIVING, Ground.CASH, Ground.RESIDUE, Ground.BARE, Ground.NOT_YET]
    plots = [
        plot(n, block(45, 5, 500 * n, 0, 400, 400), ground=ground)
        for n, ground in enumerate(grounds)
    ]
    drawing = drawn(*plots)
    fills = {shape.get("class"): shape.get("fill") for shape in shapes(drawing)}
    assert fills["ground living"] == "url(#land-living)"
    assert fills["ground not_yet"] == "none"
    names = {"living cover crop", "cash crop", "residue", "bare soil", "not yet"}
    assert names <= set(told(drawing))
    used = set(re.findall(r"url\(#([^)]+)\)", drawing))
    assert used <= {row.get("id") for row in tree(drawing).iter(f"{SVG}pattern")}


def test_a_part_lies_on_the_field_it_is_part_of():
    whole = plot(1, block(45, 5, 0, 0, 900, 600), ground=None, name="Whole")
    part = plot(2, block(45, 5, 50, 50, 300, 300), name="Part")
    said = [shape.find(f"{SVG}title").text for shape in shapes(drawn(part, whole))]
    assert [one.split(",")[0] for one in said] == ["Whole", "Part"]


def labels(drawing):
    """The boxes that names stand in, by their first corner and their size."""
    found = tree(drawing).findall(f"{SVG}rect")
    return [
        tuple(float(box.get(key)) for key in ("x", "y", "width", "height"))
        for box in found
        if box.get("class") == "sheet"
    ]


@pytest.mark.parametrize("beds", [3, 30])
def test_no_name_lies_on_another(beds):
    plots = [
        plot(n, block(45, 5, 12 * n, 0, 9, 120), name=f"Long bed number {n}")
        for n in range(1, beds + 1)
    ]
    plots.append(plot(99, block(45, 5, 0, 200, 800, 500), name="Home field"))
    found = labels(drawn(*plots))
    assert found
    for (x, y, w, h), (x2, y2, w2, h2) in combinations(found, 2):
        apart = x + w <= x2 + 4 or x2 + w2 <= x + 4 or y + h <= y2 or y2 + h2 <= y
        assert apart


def test_a_name_with_its_area_stands_on_its_field_where_there_is_room():
    drawing = drawn(plot(1, block(45, 5, 0, 0, 402.336, 402.336), name="Forty"))
    assert {"Forty", "40 ac"} <= set(told(drawing))


def test_the_map_has_a_name_and_a_description_and_cannot_be_written_into():
    square = block(45, 5, 0, 0, 400, 400)
    root = tree(drawn(plot(1, square, name="<script>x</script>")))
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "land-title land-desc"
    assert root.find(f"{SVG}title").text == "The land"
    assert root.find(f"{SVG}script") is None


def test_a_map_is_the_same_every_time_and_nothing_without_land():
    one = plot(1, block(45, 5, 0, 0, 400, 400))
    assert drawn(one) == drawn(one)
    assert drawn() == ""


def test_what_a_field_carries_is_told_by_share_the_largest_first():
    strip = Strip(
        (
            Segment(dt.date(2026, 1, 1), dt.date(2026, 6, 30), Ground.LIVING, 0.3),
            Segment(dt.date(2026, 1, 1), dt.date(2026, 6, 30), Ground.BARE, 0.697),
            Segment(dt.date(2026, 1, 1), dt.date(2026, 6, 30), Ground.CASH, 0.003),
            Segment(dt.date(2026, 7, 1), dt.date(2026, 12, 31), Ground.NOT_YET, 1.0),
        ),
        (),
    )
    assert carried_on(strip, TODAY) == ((Ground.BARE, 0.697), (Ground.LIVING, 0.3))
    assert carried_on(strip, dt.date(2026, 8, 1)) == ((Ground.NOT_YET, 1.0),)


PAGE = "/farms/alder-hill/reports/map/"


def outlined(world, name="Bottom", **more):
    outline = Outline(((block(42.7, -76.6, 0, 0, 200, 150),),))
    return FieldFactory(
        farm=world.farm,
        written_by=world.owner,
        name=name,
        area_m2=area_m2(outline),
        measured="outline",
        outline=outline.as_geojson(),
        **more,
    )


def test_the_page_draws_what_has_an_outline_and_lists_what_has_none(
    world, owner_client
):
    outlined(world)
    page = owner_client.get(PAGE).content.decode()
    assert "<svg" in page and "Bottom" in page
    assert "No outline yet:" in page and "North" in page
    assert page.count("<table") == page.count("<caption") == 1
    assert "/records/fields/outlines.geojson" in page
    assert " style=" not in page and "<script>" not in page


def test_a_farm_without_outlines_or_without_fields_gets_a_page(
    world, owner_client, as_person
):
    assert "No field has an outline yet" in owner_client.get(PAGE).content.decode()
    member = MembershipFactory(farm__slug="bare", farm__name="Bare")
    page = as_person(member.user).get("/farms/bare/reports/map/").content.decode()
    assert "No field is written down yet" in page


def test_an_outline_kept_past_the_form_does_not_break_the_map(world, owner_client):
    outlined(world).__class__.objects.filter(name="North").update(outline={"x": 1})
    assert owner_client.get(PAGE).status_code == 200


def test_the_land_as_it_is_today_is_living_where_a_cover_stands(world):
    Planting.objects.update(sown_on=TODAY - dt.timedelta(days=15))
    land = map_paper(world.farm, today=TODAY)["land"]
    (north,) = (row for row in land.rows if row.plot.name == "North")
    assert north.carried[0][0] is Ground.LIVING
    assert land.on == TODAY


@pytest.mark.parametrize("more", [0, 25])
def test_the_map_takes_the_same_queries_for_one_field_or_many(
    more, world, django_assert_num_queries
):
    for number in range(more):
        outlined(world, f"Plot {number}")
    with django_assert_num_queries(17):
        map_paper(world.farm, today=TODAY)


def test_the_season_report_shows_the_land_once_there_is_an_outline(world, owner_client):
    address = "/farms/alder-hill/reports/season/2026"
    assert 'id="land"' not in owner_client.get(f"{address}/").content.decode()
    outlined(world)
    assert 'id="land"' in owner_client.get(f"{address}/").content.decode()
    assert "The land as it was on" in words(owner_client.get(f"{address}.pdf").content)


def test_a_season_that_is_over_shows_the_land_on_its_last_day(world):
    outlined(world)
    late = season_paper(world.farm, 2026, today=dt.date(2027, 8, 1))
    early = season_paper(world.farm, 2026, today=TODAY)
    assert (late["land"].on, early["land"].on) == (YEAR.last, TODAY)
