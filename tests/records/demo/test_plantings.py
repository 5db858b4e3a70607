"""What was grown on the demonstration farm, and for how long."""

from collections import Counter, defaultdict
from itertools import combinations

import pytest

from farm import units
from records.reading.demo import nouns, plain
from records.reading.demo.diary import entries
from tests.records.demo.story import (
    IN_THE_GROUND,
    KINDS,
    LAND,
    LOTS,
    PLANTINGS,
    STORY,
    area,
    called,
    day,
    for_good,
    kinds,
    live,
    spans,
)


def test_three_years_hold_more_than_a_hundred_plantings():
    years = Counter(row["sown"][:4] for row in IN_THE_GROUND)
    assert len(IN_THE_GROUND) >= 110
    assert min(years[year] for year in ("2016", "2017", "2018")) >= 30
    buckwheat = [row for row in IN_THE_GROUND if "buckwheat" in kinds(row)]
    assert len(buckwheat) >= 40
    assert sum(row["how"] == "self sown" for row in buckwheat) >= 2


def test_every_kind_stands_in_the_catalogue():
    grown = {kind for row in PLANTINGS for kind in kinds(row)}
    assert grown | {lot["kind"] for lot in LOTS.values()} <= set(KINDS)
    assert len(grown) >= 20


def test_the_shares_of_a_mix_add_up_to_one():
    mixes = [row["seed"] for row in PLANTINGS if len(row["seed"]) > 1]
    assert len(mixes) >= 20
    for lines in mixes:
        assert sum(plain.share(line["share"]) for line in lines) == pytest.approx(1)


def test_nothing_is_seen_weighed_or_ended_before_it_was_sown_or_after_its_end():
    for row in IN_THE_GROUND:
        ends = [day(end["on"]) for end in live(row.get("ended", []))]
        seen = live(row.get("seen", [])) + live(row.get("weighed", []))
        days = [day(one["on"]) for one in seen]
        assert all(one >= day(row["sown"]) for one in ends + days), called(row)
        if for_good(row) and days:
            assert max(days) <= max(ends), called(row)


def test_nothing_is_written_before_it_happened():
    for entry in entries(STORY):
        told = entry.line.told
        happened = told.get(nouns.SHEETS[entry.line.noun].day)
        assert happened is None or entry.day >= day(happened), told


def test_a_planting_ends_on_no_more_land_than_it_has():
    for row in IN_THE_GROUND:
        told = sum(units.parse_area(e["area"]) for e in for_good(row) if "area" in e)
        assert told <= area(row) * 1.005, called(row)
        assert sum("area" not in end for end in for_good(row)) <= 1, called(row)


def test_no_more_stands_on_a_field_than_it_has_room_for():
    by_field = defaultdict(list)
    for row in IN_THE_GROUND:
        by_field[row["field"]].append(row)
    for name, rows in by_field.items():
        for (one, begun, over), (other, since, till) in combinations(spans(rows), 2):
            if max(begun, since) < min(over, till):
                assert area(one) + area(other) <= LAND[name] * 1.005, called(other)
