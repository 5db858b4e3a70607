"""How long it takes to look ahead over many fields and years.

Run ``python -m tests.bench.forecast``.
"""

import datetime as dt
import statistics
import time
from dataclasses import replace

import numpy as np

from reports.calc.assumptions import Assumptions
from reports.calc.season.ahead.outlook import growing_under, outlooks
from reports.calc.shapes.ledger import Weather
from tests.calc.ahead import TENDER
from tests.calc.builders import planting

FIELDS, YEARS, MOST_S, LAPS = 1000, 30, 2.0, 5
TODAY = dt.date(2026, 7, 1)


def made_up(years):
    """Seasons as a wave with a little of everything, the same every run."""
    first = dt.date(TODAY.year - years, 1, 1)
    days = np.arange((TODAY - first).days + 1)
    wave = 11 - 14 * np.cos(2 * np.pi * (days - 15) / 365.25) + 4 * np.sin(days * 1.7)
    rain = np.where(days % 3 == 0, 6.0, 0.0)
    return Weather("Made up", first, wave - 6, wave + 6, rain)


def main():
    weather = made_up(YEARS)
    stands = [
        replace(
            planting(TODAY + dt.timedelta(field % 120 - 60), kinds=[TENDER]), id=field
        )
        for field in range(FIELDS)
    ]
    laps = []
    for _ in range(LAPS):
        start = time.perf_counter()
        growing = growing_under(weather, today=TODAY, assumptions=Assumptions())
        found = outlooks(stands, growing)
        laps.append(time.perf_counter() - start)
    seconds = statistics.median(laps)
    verdict = "met" if seconds <= MOST_S else "MISSED"
    told = len(found)
    print(
        f"forecast, {told:,} fields, {YEARS} years: "
        f"{seconds:.3f} s, at most {MOST_S}: {verdict}"
    )


if __name__ == "__main__":
    main()
