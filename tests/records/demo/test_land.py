"""The land of the demonstration farm."""

from collections import Counter

import pytest
from geographiclib.geodesic import Geodesic

from farm import units
from tests.records.demo.story import (
    FIELDS,
    LAND,
    STORY,
)


def test_the_land_runs_from_a_bed_of_64_square_feet_to_a_field_of_40_acres():
    assert len(FIELDS) >= 24
    assert min(LAND.values()) == pytest.approx(64 * units.M2_PER_FT2)
    assert max(LAND.values()) == pytest.approx(40 * units.M2_PER_ACRE)
    assert {"field", "block", "strip", "bed", "tunnel"} == {
        field["kind"] for field in FIELDS.values()
    }
    status = Counter(field["status"] for field in FIELDS.values())
    assert status["transitional"] == status["buffer"] == 1
    assert status["organic"] == len(FIELDS) - 2


def test_each_outline_holds_the_acres_told_and_lies_by_the_farm():
    home = STORY["farm"]["latitude"], STORY["farm"]["longitude"]
    outlined = [field for field in FIELDS.values() if "outline" in field]
    assert len(outlined) >= 8
    for field in outlined:
        told = units.parse_area(field["told"])
        assert LAND[field["name"]] == pytest.approx(told, rel=0.005), field["name"]
        for lon, lat in field["outline"]:
            assert Geodesic.WGS84.Inverse(*home, lat, lon)["s12"] < 3000


def test_the_parts_of_a_field_fit_into_it():
    parts = Counter()
    for name, field in FIELDS.items():
        if "part_of" in field:
            parts[field["part_of"]] += LAND[name]
    assert len(parts) >= 3
    for whole, covered in parts.items():
        assert covered <= LAND[whole] * 1.001, whole
