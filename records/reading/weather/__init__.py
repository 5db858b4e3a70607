"""Daily weather files: what kind a file is, and the days it holds.

``guess`` says what a file looks like; ``read`` returns its days. Files of NOAA's daily
archive describe themselves. Any other table is read only with ``Columns`` that a person
has confirmed, since most such files do not say their units.
"""

from records.reading.weather.reading import guess, read
from records.reading.weather.shapes import (
    Caution,
    Columns,
    DateOrder,
    DayReading,
    Format,
    Guess,
    Heed,
    Missing,
    RainUnit,
    Range,
    Ranges,
    StationSeries,
    TempUnit,
    Trouble,
    WeatherFile,
    WeatherFileError,
)

__all__ = [
    "Caution",
    "Columns",
    "DateOrder",
    "DayReading",
    "Format",
    "Guess",
    "Heed",
    "Missing",
    "RainUnit",
    "Range",
    "Ranges",
    "StationSeries",
    "TempUnit",
    "Trouble",
    "WeatherFile",
    "WeatherFileError",
    "guess",
    "read",
]
