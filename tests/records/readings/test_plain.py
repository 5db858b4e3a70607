"""Plain tables of daily weather."""

import datetime as dt
import gzip
import hashlib
import math
from pathlib import Path

import pytest
import vega_datasets

from records.reading import weather
from records.reading.weather import (
    Columns,
    DateOrder,
    DayReading,
    RainUnit,
    TempUnit,
    Trouble,
)
from tests.places import ROOT
from tests.records.readings.files import (
    PLAIN,
    only,
    refused,
    vars_of,
)

SEATTLE = Path(vega_datasets.__file__).parent / "_data" / "seattle-weather.csv"


CHAMPION = ROOT / "fixtures" / "weather" / "champion_nebraska.csv.gz"


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
