"""Worked dates, counted from the texts that the rules name."""

import datetime as dt

import pytest

from reports.calc.rules import dates
from reports.calc.shapes.rules import RuleId
from tests.calc.books import day, rule

# Worked dates, counted from the texts that the rules name.


@pytest.mark.parametrize(
    ("last", "clean"),
    [("2022-10-15", "2025-10-15"), ("2024-02-29", "2027-03-01")],
)
def test_land_is_clean_three_years_after_the_last_prohibited_substance(last, clean):
    """7 CFR 205.202(b): three years immediately before harvest."""
    assert dates.land_clean_from(day(last), months=36) == day(clean)


@pytest.mark.parametrize(
    ("need", "earliest"), [(120, "2025-06-29"), (90, "2025-05-30")]
)
def test_manure_worked_in_on_1_march_lets_harvest_begin(need, earliest):
    """7 CFR 205.203(c)(1): 120 days in contact with the soil, 90 without."""
    worked = day("2025-03-01")
    assert dates.earliest_harvest(worked, days=need) == day(earliest)
    assert dates.earliest_harvest(None, days=need) is None


def test_a_test_of_september_holds_to_the_last_of_february_or_two_years_sealed():
    """7 CFR 201.30a: five calendar months after the month of the test."""
    tested = day("2025-09-01")
    assert dates.last_ship_day(tested, months=5) == day("2026-02-28")
    assert dates.last_ship_day(tested, months=24) == day("2027-09-30")


def test_a_spray_finished_at_two_with_twelve_hours_is_posted_and_taken_down():
    """40 CFR 170.311(b): 24 hours, 30 days past the interval, kept 2 years."""
    ended = dt.datetime(2026, 5, 1, 14)
    assert dates.post_by(ended, hours=24) == dt.datetime(2026, 5, 2, 14)
    first = dt.datetime(2026, 5, 2, 7)
    assert dates.post_by(ended, hours=24, first_entry=first) == first
    assert dates.reentry_over(ended, hours=12) == dt.datetime(2026, 5, 2, 2)
    down = dates.posted_until(ended, reentry_hours=12, days=30)
    assert down == dt.datetime(2026, 6, 1, 2)
    kept = dates.posting_kept_until(ended, reentry_hours=12, years=2)
    assert kept == day("2028-05-02")


def test_restricted_use_of_1_may_is_written_down_by_the_15th():
    """7 CFR 110.3: 14 days; a contractor's copy within 30."""
    assert dates.recorded_by(day("05-01"), days=14) == day("05-15")
    assert dates.recorded_by(day("05-01"), days=30) == day("05-31")


@pytest.mark.parametrize(
    ("zone", "by"), [(1, "04-15"), (2, "05-05"), (3, "05-20"), (4, "05-25")]
)
def test_a_cover_ends_before_a_crop_of_20_may_by_the_guidelines_zone(zone, by):
    """NRCS cover crop termination guidelines, 2013 and 2014."""
    timing = rule(RuleId.TERMINATION_DAY)
    before = round(timing[f"days_{zone}"])
    assert dates.terminate_by(day("05-20"), days_before=before) == day(by)


@pytest.mark.parametrize(
    ("zone", "by"), [(1, "04-15"), (2, "05-05"), (3, "05-20"), (4, "05-23")]
)
def test_a_cover_ends_before_the_crop_is_up_in_every_zone(zone, by):
    """NRCS cover crop termination guidelines, 2013 and 2014: before emergence."""
    before = round(rule(RuleId.TERMINATION_DAY)[f"days_{zone}"])
    told = {"days_before": before, "up_on": day("05-24")}
    assert dates.terminate_by(day("05-20"), **told) == day(by)


def test_a_record_is_kept_five_years_after_its_latest_day():
    """7 CFR 205.103(b), counted from the later of its days."""
    told = day("2025-04-02"), day("2026-01-10"), day("2025-12-31")
    assert dates.kept_until(*told, years=5) == day("2031-01-10")


def test_rye_over_new_year_is_told_in_both_seasons():
    rye = day("2025-09-20"), day("2026-05-05")
    for year, told in ((2024, False), (2025, True), (2026, True), (2027, False)):
        season = {"first": dt.date(year, 1, 1), "last": dt.date(year, 12, 31)}
        assert dates.in_season(*rye, **season) is told
