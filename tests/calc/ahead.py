"""Real weather and kinds for looking ahead."""

from dataclasses import replace
from functools import cache

from reports.calc.assumptions import Assumptions
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.outlook import growing_under, outlooks
from reports.calc.shapes.ledger import Weather
from tests.calc.builders import BUCKWHEAT, figure
from tests.calc.stations import clemson, urbana

# As the handbook and our own choice print them; see the catalogue.
TENDER = replace(
    BUCKWHEAT,
    figures={
        **BUCKWHEAT.figures,
        "kill_temp": (figure("kill_temp", 0, 0, "ASSUMED"),),
        "sow_soil_temp": (figure("sow_soil_temp", 18.33, 18.33, "CORN-BW24"),),
        "work_in_window_days": (figure("work_in_window_days", 35, 45, "CORN-HB-KEY"),),
    },
)


@cache
def urbana_weather(first=1981, last=2010):
    read = urbana(first, last)
    return Weather("Urbana", read.first_day, read.tmin, read.tmax, read.rain_mm)


@cache
def clemson_weather(first=1981, last=2010):
    """Clemson has no rain on file, and reads in °F."""
    read = clemson(first, last)
    low, high = (read.tmin - 32) / 1.8, (read.tmax - 32) / 1.8
    return Weather("Clemson", read.first_day, low, high, read.rain_mm)


def under(weather, today, **wanted) -> Growing:
    return growing_under(weather, today=today, assumptions=Assumptions(), **wanted)


def outlook(planting, weather, today, **wanted):
    (found,) = outlooks([planting], under(weather, today, **wanted))
    return found
