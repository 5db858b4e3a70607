"""Spoiled files of weather."""

import gzip

from hypothesis import given, settings
from hypothesis import strategies as st

from records.reading import weather
from records.reading.weather import (
    Columns,
    Trouble,
    WeatherFileError,
)
from tests.records.readings.files import (
    PLAIN,
    WEB,
    WIDE,
    dly_line,
)

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
