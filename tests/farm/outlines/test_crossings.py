"""Where an outline crosses itself."""

import json
import math
import random

from hypothesis import given
from hypothesis import strategies as st

from farm.outlines import OutlineError, Trouble, read_outline
from tests.farm.outlines.rings import (
    RFC_OUTER,
    polygon,
    refused,
    ring,
)


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


CELLS = st.integers(-6, 6).map(lambda n: n / 8)


@given(st.lists(st.tuples(CELLS, CELLS), min_size=3, max_size=8))
def test_a_ring_on_a_coarse_grid_never_breaks_the_check(corners):
    try:
        outline = read_outline(polygon(ring(*corners)))
    except OutlineError as error:
        assert error.reason in {Trouble.NO_AREA, Trouble.TOO_FEW}
    else:
        assert outline.as_geojson()["type"] == "Polygon"
