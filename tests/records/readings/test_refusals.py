"""Tables of weather that cannot be read."""

import gzip

import pytest

from records.reading import weather
from records.reading.weather import (
    Columns,
    Trouble,
    WeatherFileError,
)
from tests.records.readings.files import (
    PLAIN,
    refused,
)


def refused_table(*rows, **told):
    """Read rows under a plain header and return what is wrong with them."""
    text = "\n".join(["date,tmin,tmax,rain", *rows])
    return refused(text.encode(), columns=Columns(**{**vars(PLAIN), **told}))


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
