"""Files of weather, small and spoiled."""

import pytest

from records.reading import weather
from records.reading.weather import (
    Columns,
    DateOrder,
    RainUnit,
    TempUnit,
    WeatherFileError,
)

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


def only(found):
    assert len(found.stations) == 1
    return found.stations[0]


def dly_line(code="TMIN", month="198101", **days):
    """One line of the fixed-width archive; d3="-33  0" sets the third day."""
    groups = "".join(f"{days.get(f'd{day}', '-9999'):<8}" for day in range(1, 32))
    return f"USC00118740{month}{code}{groups}\n"


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


def vars_of(missing):
    return missing.tmin, missing.tmax, missing.rain


WEB = (
    '"STATION","NAME","DATE","PRCP","TAVG","TMAX","TMIN"\n'
    '"USC00118740","URBANA, IL US","2012-10-06","0.00",,"53","32"\n'
    '"USC00118740","URBANA, IL US","2012-10-08","T","","55","28"\n'
)
