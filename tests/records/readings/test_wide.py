"""The wide archive, and what is ordered on the web."""

import datetime as dt

import pytest

from records.reading import weather
from records.reading.weather import (
    Caution,
    Columns,
    DateOrder,
    DayReading,
    Format,
    Trouble,
)
from tests.records.readings.files import (
    WEB,
    WIDE,
    only,
    refused,
    vars_of,
)


def test_the_wide_archive_is_read_in_tenths_with_its_flags():
    assert weather.guess(WIDE.encode(), "a.csv").format is Format.WIDE_ARCHIVE
    found = weather.read(WIDE.encode(), name="a.csv")
    series = only(found)
    assert found.format is Format.WIDE_ARCHIVE
    assert series.name == "URBANA, IL US"
    assert (series.latitude, series.longitude) == (40.0839, -88.2403)
    assert series.elevation_m == 219.8
    assert series.days == (
        DayReading(dt.date(2012, 10, 6), 0.0, 11.7, 0.0),
        DayReading(dt.date(2012, 10, 7), None, 12.8, 2.5),
        DayReading(dt.date(2012, 10, 9), None, 15.0, None),
    )
    assert series.dropped_by_flag == (("X", 1),)
    assert series.gaps == ((dt.date(2012, 10, 8), dt.date(2012, 10, 8)),)
    assert vars_of(series.missing) == (3, 1, 2)


def test_the_wide_archive_may_hold_two_stations():
    text = WIDE + WIDE.split("\n", 1)[1].replace("118740", "303184")
    assert len(weather.read(text.encode(), name="a.csv").stations) == 2


def test_a_web_order_proposes_its_columns_but_no_units():
    guess = weather.guess(WEB.encode(), "order.csv")
    assert guess.format is Format.GENERAL
    assert guess.proposals == Columns(
        date="DATE", tmin="TMIN", tmax="TMAX", rain="PRCP", date_order=DateOrder.ISO
    )
    assert not guess.proposals.told


def test_a_web_order_is_never_read_before_its_units_are_told():
    assert refused(WEB.encode()).reason is Trouble.COLUMNS_NEEDED
    open_units = Columns(date="DATE", tmin="TMIN", date_order="iso")
    assert refused(WEB.encode(), columns=open_units).reason is Trouble.COLUMNS_NEEDED


def test_fahrenheit_and_inches_as_told_by_a_form_are_converted():
    told = Columns(
        date="DATE",
        tmin="TMIN",
        tmax="TMAX",
        rain="PRCP",
        temp_unit="F",
        rain_unit="in",
        date_order="iso",
    )
    series = only(weather.read(WEB.encode(), name="order.csv", columns=told))
    assert series.days[0].tmin_c == 0
    assert series.days[0].tmax_c == pytest.approx(11.6667, abs=1e-4)
    assert series.days[1].tmin_c == pytest.approx(-2.2222, abs=1e-4)
    assert series.days[1].rain_mm == 0
    assert series.station_id == "USC00118740"
    assert series.ranges.tmax_c.high == pytest.approx(12.7778, abs=1e-4)
    assert {heed.kind for heed in series.warnings} == {Caution.GAPS, Caution.FEW_DAYS}


def test_a_web_order_with_marks_but_whole_units_is_not_taken_for_tenths():
    text = (
        "STATION,DATE,TMAX,TMAX_ATTRIBUTES,PRCP,PRCP_ATTRIBUTES\n"
        'US1,2012-10-06,53,",,0",0.12,",,0"\n'
        'US1,2012-10-07,55,",G,0",0.00,",,0"\n'
    )
    assert weather.guess(text.encode(), "a.csv").format is Format.GENERAL
    told = Columns(date="DATE", tmax="TMAX", temp_unit="F", date_order="iso")
    series = only(weather.read(text.encode(), name="a.csv", columns=told))
    assert series.dropped_by_flag == (("G", 1),)
