"""Outlines to measure, read and refuse."""

import json

import pytest

from farm.outlines import OutlineError, read_outline

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
