"""Weather files: NOAA's formats, plain tables, and everything that is refused."""

import datetime as dt
import gzip
import hashlib
import math
from pathlib import Path

import pytest
import vega_datasets
from hypothesis import given, settings
from hypothesis import strategies as st

from records.reading import weather
from records.reading.weather import (
    Caution,
    Columns,
    DateOrder,
    DayReading,
    Format,
    RainUnit,
    TempUnit,
    Trouble,
    WeatherFileError,
)
from tests.places import ROOT, shared_data

DLY = "weather/USC00118740_1981-2013.dly"
BY_STATION = "weather/USC00118740_by_station_1981-2013.csv.gz"
SEATTLE = Path(vega_datasets.__file__).parent / "_data" / "seattle-weather.csv"
CHAMPION = ROOT / "fixtures" / "weather" / "champion_nebraska.csv.gz"
PLAIN = Columns(
    date="date",
    tmin="tmin",
    tmax="tmax",
    rain="rain",
    temp_unit=TempUnit.C,
    rain_unit=RainUnit.MM,
    date_order=DateOrder.ISO,
)


def refused(data, *, columns=None, name="a.csv"):
    with pytest.raises(WeatherFileError) as caught:
        weather.read(data, name=name, columns=columns)
    return caught.value


def refused_table(*rows, **told):
    """Read rows under a plain header and return what is wrong with them."""
    text = "\n".join(["date,tmin,tmax,rain", *rows])
    return refused(text.encode(), columns=Columns(**{**vars(PLAIN), **told}))


def only(found):
    assert len(found.stations) == 1
    return found.stations[0]


def dly_line(code="TMIN", month="198101", **days):
    """One line of the fixed-width archive; d3="-33  0" sets the third day."""
    groups = "".join(f"{days.get(f'd{day}', '-9999'):<8}" for day in range(1, 32))
    return f"USC00118740{month}{code}{groups}\n"


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


WIDE = (
    '"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","PRCP",'
    '"PRCP_ATTRIBUTES","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"\n'
    '"USC00118740","2012-10-06","40.0839","-88.2403","219.8","URBANA, IL US",'
    '"    0","T,,0,0700","  117",",,0,0700","    0",",,0,0700"\n'
    '"USC00118740","2012-10-07","40.0839","-88.2403","219.8","URBANA, IL US",'
    '"   25",",,0,0700","  128",",,0,0700","  -11",",X,0,0700"\n'
    '"USC00118740","2012-10-09","40.0839","-88.2403","219.8","URBANA, IL US",'
    '"","","  150",",,0,0700","-9999",""\n'
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


def vars_of(missing):
    return missing.tmin, missing.tmax, missing.rain


def test_the_wide_archive_may_hold_two_stations():
    text = WIDE + WIDE.split("\n", 1)[1].replace("118740", "303184")
    assert len(weather.read(text.encode(), name="a.csv").stations) == 2


WEB = (
    '"STATION","NAME","DATE","PRCP","TAVG","TMAX","TMIN"\n'
    '"USC00118740","URBANA, IL US","2012-10-06","0.00",,"53","32"\n'
    '"USC00118740","URBANA, IL US","2012-10-08","T","","55","28"\n'
)


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


def test_seattle_has_the_yearly_rain_and_no_day_missing():
    # vega-datasets 0.9.0, sums computed with pandas
    data = SEATTLE.read_bytes()
    proposals = weather.guess(data, SEATTLE.name).proposals
    assert proposals == Columns(
        date="date",
        tmin="temp_min",
        tmax="temp_max",
        rain="precipitation",
        temp_unit=TempUnit.C,
        rain_unit=RainUnit.MM,
        date_order=DateOrder.YMD,
    )
    series = only(weather.read(data, name=SEATTLE.name, columns=proposals))
    assert series.station_id == "seattle-weather"
    assert len(series.days) == 1461
    assert vars_of(series.missing) == (0, 0, 0)
    assert series.gaps == ()
    assert series.warnings == ()
    for year, total in {2012: 1226.0, 2013: 828.0, 2014: 1232.8, 2015: 1139.2}.items():
        fell = math.fsum(d.rain_mm for d in series.days if d.date.year == year)
        assert fell == pytest.approx(total, abs=1e-9)


def test_champion_has_every_day_of_thirty_seven_years():
    data = CHAMPION.read_bytes()
    proposals = weather.guess(data, CHAMPION.name).proposals
    assert proposals is not None
    assert proposals.told
    series = only(weather.read(data, name=CHAMPION.name, columns=proposals))
    assert (series.first, series.last) == (dt.date(1982, 1, 1), dt.date(2018, 12, 31))
    assert len(series.days) == 13_514
    assert vars_of(series.missing) == (0, 0, 0)
    assert series.gaps == ()
    text = gzip.decompress(data)
    assert hashlib.sha256(text).hexdigest() == (
        "3b40e0d5d32d66063ab2f02cd9846b977cb8567f95b028aed0b0963f52717208"
    )


def test_a_table_is_read_whatever_parts_its_cells_and_decimals():
    text = "\ufefffecha;tmín (°C);tmáx (°C);lluvia (mm)\n06/10/2012;0,5;11,7;2,5\n"
    proposals = weather.guess(text.encode(), "a.csv").proposals
    assert proposals.date_order is None
    told = Columns(**{**vars(proposals), "date_order": "dmy"})
    assert told.told
    series = only(weather.read(text.encode(), name="a.csv", columns=told))
    assert series.days == (DayReading(dt.date(2012, 10, 6), 0.5, 11.7, 2.5),)


@pytest.mark.parametrize(
    ("order", "cell", "day"),
    [
        ("mdy", "10/6/2012", dt.date(2012, 10, 6)),
        ("dmy", "10/6/2012", dt.date(2012, 6, 10)),
        ("ymd", "20121006", dt.date(2012, 10, 6)),
        ("ymd", "2012/10/6", dt.date(2012, 10, 6)),
        ("iso", "2012-10-06T00:00:00", dt.date(2012, 10, 6)),
        ("iso", "2012-10-06 07:00", dt.date(2012, 10, 6)),
    ],
)
def test_a_day_is_read_in_the_order_that_was_told(order, cell, day):
    told = Columns(**{**vars(PLAIN), "date_order": order})
    text = f"date,tmin,tmax,rain\n{cell},1,2,3\n"
    series = only(weather.read(text.encode(), name="a.csv", columns=told))
    assert series.days[0].date == day


def test_an_order_of_day_and_month_is_not_proposed_even_where_it_could_be_told():
    text = "date,tmin,tmax\n10/25/2012,1,2\n"
    assert weather.guess(text.encode(), "a.csv").proposals.date_order is None


@pytest.mark.parametrize("cell", ["", " ", "NA", "nan", "M", "-9999", "-99.9", "null"])
def test_missing_stays_missing_however_it_is_written(cell):
    text = f"date,tmin,tmax,rain\n2012-10-06,{cell},2,{cell}\n"
    series = only(weather.read(text.encode(), name="a.csv", columns=PLAIN))
    assert series.days == (DayReading(dt.date(2012, 10, 6), None, 2.0, None),)


def test_a_day_with_nothing_written_is_a_gap_like_a_day_left_out():
    text = "date,tmin,tmax,rain\n2012-10-06,1,2,0\n2012-10-07,,,\n2012-10-10,1,2,0\n"
    series = only(weather.read(text.encode(), name="a.csv", columns=PLAIN))
    assert series.gaps == ((dt.date(2012, 10, 7), dt.date(2012, 10, 9)),)
    assert vars_of(series.missing) == (3, 3, 3)


def test_rows_out_of_order_are_put_in_order():
    text = "date,tmin,tmax,rain\n2012-10-07,1,2,0\n2012-10-06,3,4,0\n"
    series = only(weather.read(text.encode(), name="a.csv", columns=PLAIN))
    assert [day.date.day for day in series.days] == [6, 7]


def test_rows_of_another_station_are_refused_in_a_plain_table():
    text = "station,date,tmin,tmax,rain\nA,2012-10-06,1,2,0\nB,2012-10-06,1,2,0\n"
    error = refused(text.encode(), columns=PLAIN)
    assert (error.reason, error.line, error.found) == (Trouble.MIXED_STATIONS, 3, "B")


@pytest.mark.parametrize(
    ("rows", "told", "reason", "line"),
    [
        (["2012-10-06,1,2"], {}, Trouble.TRUNCATED, 2),
        (['2012-10-06,1,2,"0'], {}, Trouble.TRUNCATED, 2),
        (["2012-10-06,1,2,0,7"], {}, Trouble.RAGGED, 2),
        (["2012-10-06,1,2,0"] * 2, {}, Trouble.DUPLICATE_DAY, 3),
        (["2012-10-06,1,2,0", "2012-10-06,1,3,0"], {}, Trouble.DUPLICATE_DAY, 3),
        (["2012-10-06,3,2,0"], {}, Trouble.TMIN_ABOVE_TMAX, 2),
        (["2012-10-06,50,70,0"], {}, Trouble.WRONG_UNITS, 2),
        (["2012-10-06,1,2,-1"], {}, Trouble.WRONG_UNITS, 2),
        (["2012-10-06,1,2,90"], {"rain_unit": "in"}, Trouble.WRONG_UNITS, 2),
        (["2012-10-06,1.5,2,0"], {"temp_unit": "C/10"}, Trouble.WRONG_UNITS, 2),
        (["2012-10-06,1,2,0.5"], {"rain_unit": "mm/10"}, Trouble.WRONG_UNITS, 2),
        (["2012-02-30,1,2,0"], {}, Trouble.BAD_DATE, 2),
        (["10/6/2012,1,2,0"], {}, Trouble.BAD_DATE, 2),
        (["10/25/2012,1,2,0"], {"date_order": "dmy"}, Trouble.BAD_DATE, 2),
        (["10/6/12,1,2,0"], {"date_order": "mdy"}, Trouble.BAD_DATE, 2),
        (["9012-10-06,1,2,0"], {}, Trouble.BAD_DATE, 2),
        (["2012-10,1,2,0"], {}, Trouble.MONTHLY, 2),
        (["201210,1,2,0"], {"date_order": "ymd"}, Trouble.MONTHLY, 2),
        (["2012-10-06,cold,2,0"], {}, Trouble.BAD_NUMBER, 2),
        (["2012-10-06,1_0,20,0"], {}, Trouble.BAD_NUMBER, 2),
        (["2012-10-06,1e1,20,0"], {}, Trouble.BAD_NUMBER, 2),
        (["2012-10-06,T,20,0"], {}, Trouble.BAD_NUMBER, 2),
        (["2012-10-06,,,"], {}, Trouble.EMPTY, None),
        ([], {}, Trouble.EMPTY, None),
        (["2012-10-06,1,2,0"], {"tmin": "lowest"}, Trouble.NO_COLUMNS, 1),
        (["2012-10-06,1,2,0"], {"date": ""}, Trouble.COLUMNS_NEEDED, None),
    ],
)
def test_a_table_that_cannot_be_read_says_why_and_where(rows, told, reason, line):
    error = refused_table(*rows, **told)
    assert (error.reason, error.line) == (reason, line)
    assert str(error)


def test_two_columns_of_one_name_are_refused():
    text = "date,tmin,tmin,tmax,rain\n2012-10-06,1,1,2,0\n"
    assert refused(text.encode(), columns=PLAIN).reason is Trouble.NO_COLUMNS


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", Trouble.EMPTY),
        (b"\xef\xbb\xbf\r\n", Trouble.EMPTY),
        (gzip.compress(b""), Trouble.EMPTY),
        (b"PK\x03\x04\x14\x00", Trouble.BINARY),
        (b"\x89PNG\r\n\x1a\n\x00", Trouble.BINARY),
        (b"\x1f\x8bnonsense", Trouble.BINARY),
        (gzip.compress(b"date,tmin\n" * 99)[:-9], Trouble.TRUNCATED),
        ("date,tmin °C\n".encode("latin-1"), Trouble.NOT_UTF8),
        ("date,tmin\n".encode("utf-16"), Trouble.BINARY),
        (b"only one cell\n", Trouble.NO_COLUMNS),
        (b"2012-10-06,1,2\n2012-10-07,1,2\n", Trouble.NO_COLUMNS),
        (b"date,tmin\n", Trouble.EMPTY),
        (b"DATE,TMIN,TMAX\n1869-01,1,2\n", Trouble.MONTHLY),
        (b"x" * 25_000_001, Trouble.TOO_LARGE),
        (gzip.compress(b"x" * 25_000_001), Trouble.TOO_LARGE),
        (gzip.compress(b"x" * 20_000_000) * 2, Trouble.TOO_LARGE),
    ],
    ids=range(16),
)
def test_a_file_that_is_no_daily_weather_is_refused_at_the_first_look(data, reason):
    with pytest.raises(WeatherFileError) as caught:
        weather.guess(data, "a.csv")
    assert caught.value.reason is reason


def test_letters_that_are_not_utf8_are_found_on_their_line():
    with pytest.raises(WeatherFileError) as caught:
        weather.guess(b"date,tmin\n2012-10-06,1\xb0\n", "a.csv")
    assert caught.value.line == 2


def season(low, high):
    """A year of days whose highest run from one figure to the other and back."""
    first = dt.date(2011, 1, 1)
    return [
        (first + dt.timedelta(days=n), low + (high - low) * (1 - abs(n - 182) / 183))
        for n in range(365)
    ]


@pytest.mark.parametrize(
    ("header", "values", "unit"),
    [
        ("tmax", [f"{t:.1f}" for _, t in season(-5, 35)], TempUnit.C),
        ("tmax", [f"{t:.0f}" for _, t in season(20, 95)], TempUnit.F),
        ("tmax", [f"{t:.0f}" for _, t in season(-50, 350)], TempUnit.TENTH_C),
        ("tmax_f", [f"{t:.1f}" for _, t in season(-5, 35)], TempUnit.F),
        ("Tmax (deg C)", ["60"], TempUnit.C),
        ("tmax", ["20.5"], None),
    ],
)
def test_a_unit_is_proposed_only_from_the_header_or_a_whole_year(header, values, unit):
    first = dt.date(2011, 1, 1)
    rows = [f"{first + dt.timedelta(days=n)},{v}" for n, v in enumerate(values)]
    text = "\n".join([f"date,{header}", *rows])
    assert weather.guess(text.encode(), "a.csv").proposals.temp_unit is unit


def test_units_that_two_headers_contradict_are_not_proposed():
    text = "date,tmin_c,tmax_f\n2012-10-06,1,50\n"
    assert weather.guess(text.encode(), "a.csv").proposals.temp_unit is None


def test_a_role_that_two_columns_could_fill_is_not_proposed():
    text = "date,tmin,low,tmax\n2012-10-06,1,1,2\n"
    proposals = weather.guess(text.encode(), "a.csv").proposals
    assert (proposals.tmin, proposals.tmax) == (None, "tmax")


def test_a_table_without_days_proposes_nothing():
    text = "when,how warm\n2012-10-06,1\n"
    assert weather.guess(text.encode(), "a.csv").proposals is None


def test_a_year_that_never_gets_warm_is_pointed_out():
    rows = [f"{day},,{t:.1f}," for day, t in season(1, 9)]
    text = "\n".join(["date,tmin,tmax,rain", *rows])
    series = only(weather.read(text.encode(), name="a.csv", columns=PLAIN))
    assert [heed.kind for heed in series.warnings] == [Caution.LOOKS_COLD]


GOOD = [
    (WIDE.encode(), None),
    (
        WEB.encode(),
        Columns(
            **{
                **vars(PLAIN),
                "date": "DATE",
                "tmin": "TMIN",
                "tmax": "TMAX",
                "rain": "PRCP",
                "temp_unit": "F",
            }
        ),
    ),
    (dly_line(d1="  -33  0", d2="  -50 I0").encode(), None),
    (b"USC00118740,19810101,TMIN,-33,,,0,\nUSC00118740,19810102,TMAX,33,,,0,\n", None),
    (b"date,tmin,tmax,rain\n2012-10-06,1,2,0\n2012-10-07,1,2,0\n", PLAIN),
    (gzip.compress(b"date,tmin,tmax,rain\n2012-10-06,1,2,0\n", mtime=0), PLAIN),
]


@st.composite
def spoiled(draw):
    """A good file with bytes cut, doubled, changed or put in."""
    data, columns = draw(st.sampled_from(GOOD))
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(data)))
        end = draw(st.integers(start, min(len(data), start + 30)))
        put = draw(
            st.one_of(
                st.binary(max_size=8),
                st.sampled_from(
                    [b"", b",", b"\n", b'"', b"-", b"9999999", b"\r", b";"]
                ),
                st.just(data[start:end] * 2),
            )
        )
        data = data[:start] + put + data[end:]
    return data, columns


@settings(max_examples=600, deadline=None)
@given(st.one_of(spoiled(), st.tuples(st.binary(max_size=200), st.just(PLAIN))))
def test_a_spoiled_file_is_read_or_refused_and_never_breaks_the_reader(spoilt):
    data, columns = spoilt
    for act in (
        lambda: weather.guess(data, "a.csv"),
        lambda: weather.read(data, name="a.csv"),
        lambda: weather.read(data, name="a.csv", columns=columns or PLAIN),
    ):
        try:
            act()
        except WeatherFileError as error:
            assert isinstance(error.reason, Trouble)
