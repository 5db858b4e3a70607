"""Daily weather of stations, fixed in width and by station."""

import datetime as dt

import pytest

from records.reading import weather
from records.reading.weather import (
    Caution,
    DayReading,
    Format,
    Trouble,
)
from tests.places import shared_data
from tests.records.readings.files import (
    dly_line,
    only,
    refused,
)

DLY = "weather/USC00118740_1981-2013.dly"


BY_STATION = "weather/USC00118740_by_station_1981-2013.csv.gz"


def of_1981_to_2010(days):
    return [day for day in days if 1981 <= day.date.year <= 2010]


@pytest.mark.shared_data
def test_urbana_has_the_sixty_nine_flagged_values_a_second_parser_found():
    data = shared_data(DLY).read_bytes()
    assert weather.guess(data, "x.dly").format is Format.DLY
    series = only(weather.read(data, name="x.dly"))
    assert series.station_id == "USC00118740"
    assert series.dropped == 69
    assert series.dropped_by_flag == (("I", 69),)
    assert (series.first, series.last) == (dt.date(1981, 1, 1), dt.date(2013, 12, 31))


@pytest.mark.shared_data
def test_urbana_lacks_the_days_a_second_parser_found_missing_from_1981_to_2010():
    series = only(weather.read(shared_data(DLY).read_bytes(), name="x.dly"))
    days = of_1981_to_2010(series.days)
    calendar = (dt.date(2010, 12, 31) - dt.date(1981, 1, 1)).days + 1
    assert calendar - sum(day.tmin_c is not None for day in days) == 45
    assert calendar - sum(day.tmax_c is not None for day in days) == 28
    assert calendar - sum(day.rain_mm is not None for day in days) == 26


@pytest.mark.shared_data
def test_urbana_reads_the_same_from_the_fixed_width_and_the_by_station_file():
    wide = only(weather.read(shared_data(DLY).read_bytes(), name="x.dly"))
    data = shared_data(BY_STATION).read_bytes()
    assert weather.guess(data, "x.csv.gz").format is Format.BY_STATION
    tall = only(weather.read(data, name="x.csv.gz"))
    assert wide == tall


@pytest.mark.shared_data
def test_urbana_had_its_first_freezes_of_2012_on_the_days_the_paper_printed():
    # News-Gazette, 12 October 2013: 32 °F on 6 October, 28 °F on 8 October 2012
    series = only(weather.read(shared_data(DLY).read_bytes(), name="x.dly"))
    autumn = [
        day
        for day in series.days
        if day.tmin_c is not None and dt.date(2012, 8, 1) <= day.date
    ]
    assert next(d.date for d in autumn if d.tmin_c <= 0) == dt.date(2012, 10, 6)
    cold = next(d.date for d in autumn if round(d.tmin_c * 1.8 + 32) <= 28)
    assert cold == dt.date(2012, 10, 8)


@pytest.mark.shared_data
def test_urbana_tells_how_many_rainless_days_were_only_presumed_dry():
    series = only(weather.read(shared_data(DLY).read_bytes(), name="x.dly"))
    heeds = {heed.kind: heed.count for heed in series.warnings}
    assert heeds[Caution.PRESUMED_DRY] == 673
    assert heeds[Caution.VALUES_DROPPED] == 69


def test_a_trace_is_no_rain_a_flagged_value_is_missing_and_missing_is_not_zero():
    text = dly_line(d1="  -33  0", d2="  -50 I0", d3="    0  0") + dly_line(
        "PRCP", d1="    0T 0", d2="   86  0"
    )
    series = only(weather.read(text.encode(), name="x.dly"))
    assert series.days == (
        DayReading(dt.date(1981, 1, 1), -3.3, None, 0.0),
        DayReading(dt.date(1981, 1, 2), None, None, 8.6),
        DayReading(dt.date(1981, 1, 3), 0.0, None, None),
    )
    assert series.dropped_by_flag == (("I", 1),)


def test_elements_that_are_not_kept_are_passed_over():
    text = dly_line(d1="  -33  0") + dly_line("SNOW", d1="   50  0")
    assert only(weather.read(text.encode(), name="x.dly")).days[0].rain_mm is None


def test_two_stations_in_one_archive_file_stay_apart():
    text = dly_line(d1="  -33  0") + dly_line(d1="   44  0").replace("118740", "303184")
    found = weather.read(text.encode(), name="x.dly")
    assert [one.station_id for one in found.stations] == ["USC00118740", "USC00303184"]


def test_a_station_without_any_reading_is_left_out_and_named():
    text = dly_line(d1="  -33  0") + dly_line().replace("118740", "303184")
    found = weather.read(text.encode(), name="x.dly")
    assert [one.station_id for one in found.stations] == ["USC00118740"]
    assert found.warnings[0].kind is Caution.STATION_LEFT_OUT
    assert found.warnings[0].detail == "USC00303184"


def test_trailing_blanks_that_an_editor_took_away_do_not_matter():
    text = dly_line(d1="  -33  0").rstrip() + "\r\n"
    assert only(weather.read(text.encode(), name="x.dly")).days[0].tmin_c == -3.3


@pytest.mark.parametrize(
    ("text", "reason", "line"),
    [
        (dly_line(d1="  -33  0")[:150], Trouble.TRUNCATED, 1),
        (dly_line(d1="  -33  0") + "USC001187", Trouble.TRUNCATED, 2),
        (dly_line(d1="  -33  0") * 2, Trouble.DUPLICATE_DAY, 2),
        (dly_line(month="198113", d1="  -33  0"), Trouble.BAD_DATE, 1),
        (dly_line(month="198102", d30="  -33  0"), Trouble.BAD_DATE, 1),
        (dly_line(d1="  -3x  0"), Trouble.BAD_NUMBER, 1),
        (dly_line(d1=" 9999  0"), Trouble.WRONG_UNITS, 1),
        (dly_line("PRCP", d1="99999  0"), Trouble.WRONG_UNITS, 1),
        (dly_line("PRCP", d1="   -5  0"), Trouble.WRONG_UNITS, 1),
        (
            dly_line(d1="   50  0") + dly_line("TMAX", d1="   40  0"),
            Trouble.TMIN_ABOVE_TMAX,
            2,
        ),
        (dly_line(), Trouble.EMPTY, None),
        (dly_line("SNOW", d1="   50  0"), Trouble.EMPTY, None),
    ],
)
def test_a_fixed_width_file_that_cannot_be_read_says_why_and_where(text, reason, line):
    error = refused(text.encode(), name="x.dly")
    assert (error.reason, error.line) == (reason, line)


@pytest.mark.parametrize(
    ("text", "reason", "line"),
    [
        ("USC00118740,19810101,TMIN,-33,,,0\n", Trouble.TRUNCATED, 1),
        ("USC00118740,19810101,TMIN,-33,,,0,\nUSC00118", Trouble.TRUNCATED, 2),
        ("USC00118740,19810101,TMIN,-33,,,0,,\n", Trouble.RAGGED, 1),
        ("USC00118740,19810101,TMIN,-33,,,0,\n" * 2, Trouble.DUPLICATE_DAY, 2),
        ("USC00118740,19810231,TMIN,-33,,,0,\n", Trouble.BAD_DATE, 1),
        ("USC00118740,19810101,TMIN,x,,,0,\n", Trouble.BAD_NUMBER, 1),
        ("USC00118740,19810101,TMIN,-3.3,,,0,\n", Trouble.BAD_NUMBER, 1),
        ("USC00118740,19810101,TMIN,5,,I,0,\n", Trouble.EMPTY, None),
    ],
)
def test_a_by_station_file_that_cannot_be_read_says_why_and_where(text, reason, line):
    error = refused(text.encode())
    assert (error.reason, error.line) == (reason, line)


def test_a_by_station_file_with_a_header_is_read_all_the_same():
    text = (
        "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n"
        "USC00118740,19810101,TMIN,-33,,,0,0700\n"
    )
    assert only(weather.read(text.encode(), name="a.csv")).days[0].tmin_c == -3.3
