"""Measures as growers write them, read into SI."""

import re

from farm.units.amounts import amounts, one, positive, quantity, with_default
from farm.units.factors import c_from_f
from farm.units.numbers import tidy
from farm.units.troubles import Trouble, UnitError
from farm.units.words import AREA, DEPTH, LENGTH, MASS, RAIN, TEMPS, VOLUME

_TIMES = re.compile(r"(?:x|\bby\b|\bpor\b)\s*(?=[-+0-9.])")
_SIDE = {"sq ft": "ft", "sq m": "m", "sq yd": "yd", "sq in": "in"}

_LARGEST_AREA_M2 = 1e10
_LARGEST_LENGTH_M = 1e6
_LARGEST_DEPTH_M = 3.0
_LARGEST_MASS_KG = 1e9
_LARGEST_RAIN_MM = 2000.0
_LARGEST_VOLUME_M3 = 1e7
_TEMPS_C = (-100.0, 150.0)


def parse_area(text: str, *, default_unit: str | None = None) -> float:
    """Return the area written in ``text``.

    Parameters
    ----------
    text : str
        An amount with a unit ("1 1/2 ac", "0,6 ha", "1,200 sq ft") or two sides
        ("30 x 4 ft", "30' x 48\\""). The first side may leave its unit to the second,
        never the other way round: in a bed "100 ft x 30" the 30 is often inches.
    default_unit : str, optional
        The unit of a number written alone.

    Returns
    -------
    float
        Area, above 0 and at most 1e10. [m²]

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> parse_area("1 ac")
    4046.8564224
    >>> round(parse_area("30 x 4 ft"), 9)
    11.1483648
    """
    tidied = tidy(text)
    sides = _TIMES.split(tidied)
    area_m2 = (
        quantity(tidied, AREA, default_unit)
        if len(sides) == 1
        else _rectangle(sides, tidied, default_unit)
    )
    return positive(area_m2, text, _LARGEST_AREA_M2)


def _rectangle(sides: list[str], text: str, default_unit: str | None) -> float:
    """Return the area of two sides. [m²]"""
    if len(sides) != 2:
        raise UnitError(Trouble.NOT_UNDERSTOOD, rest=text)
    words = [word for side in sides for _, word in amounts(side)]
    unit = words[1] if len(words) == 2 else ""
    if not any(words):
        unit = next(
            (u for area, u in _SIDE.items() if _is_unit(default_unit, area)), ""
        )
    length_m, width_m = (
        positive(quantity(side, LENGTH, unit), text, _LARGEST_LENGTH_M)
        for side in sides
    )
    return length_m * width_m


def _is_unit(word: str | None, unit: str) -> bool:
    """Tell whether ``word`` is another spelling of the area ``unit``."""
    return word is not None and AREA.factors.get(tidy(word)) == AREA.factors[unit]


def parse_length(
    text: str, *, default_unit: str | None = None, zero_ok: bool = False
) -> float:
    """Return the length written in ``text``, such as "30 ft" or 5' 6". [m]

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> round(parse_length("5 ft 6 in"), 9)
    1.6764
    """
    length_m = quantity(tidy(text), LENGTH, default_unit)
    return positive(length_m, text, _LARGEST_LENGTH_M, zero_ok=zero_ok)


def parse_depth(text: str, *, default_unit: str | None = None) -> float:
    """Return the depth in soil written in ``text``, from 0 (on top) to 3. [m]

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> parse_depth("1/2 in")
    0.0127
    """
    depth_m = quantity(tidy(text), DEPTH, default_unit)
    return positive(depth_m, text, _LARGEST_DEPTH_M, zero_ok=True)


def parse_mass(
    text: str, *, default_unit: str | None = None, zero_ok: bool = False
) -> float:
    """Return the mass written in ``text``, such as "50 lb" or "2 lb 3 oz". [kg]

    ``zero_ok`` lets a count of stock find nothing left.

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> parse_mass("100 lb")
    45.359237
    """
    mass_kg = quantity(tidy(text), MASS, default_unit)
    return positive(mass_kg, text, _LARGEST_MASS_KG, zero_ok=zero_ok)


def parse_temp(text: str, *, default_unit: str | None = None) -> float:
    """Return the temperature written in ``text``, from -100 to 150. [°C]

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> parse_temp("50 °F"), parse_temp("-5", default_unit="C")
    (10.0, -5.0)
    """
    degrees, word = one(with_default(tidy(text), default_unit))
    plain = re.sub(r"°|\b(?:degrees?|degs?|grados?)\b", "", word).strip()
    if not plain:
        raise UnitError(Trouble.NO_UNIT, understood=f"{degrees:g}", known=("°F", "°C"))
    if plain not in TEMPS:
        raise UnitError(
            Trouble.UNKNOWN_UNIT,
            understood=f"{degrees:g}",
            rest=plain,
            known=("°F", "°C"),
        )
    temp_c = c_from_f(degrees) if TEMPS[plain] == "F" else degrees
    if not _TEMPS_C[0] <= temp_c <= _TEMPS_C[1]:
        raise UnitError(Trouble.TOO_LARGE, understood=text.strip())
    return temp_c


def parse_rain(text: str, *, default_unit: str | None = None) -> float:
    """Return the depth of rain or irrigation written in ``text``, 0 to 2000. [mm]

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> parse_rain("1/2 in")
    12.7
    """
    rain_mm = quantity(tidy(text), RAIN, default_unit)
    return positive(rain_mm, text, _LARGEST_RAIN_MM, zero_ok=True)


def parse_volume(text: str, *, default_unit: str | None = None) -> float:
    """Return the volume written in ``text``, such as "3 cu yd" or "40 gal". [m³]

    Gallons, quarts, pints, fluid ounces and bushels are those of the United States.

    Raises
    ------
    UnitError
        With the reason and what was understood.

    Examples
    --------
    >>> parse_volume("1 gal")
    0.003785411784
    """
    volume_m3 = quantity(tidy(text), VOLUME, default_unit)
    return positive(volume_m3, text, _LARGEST_VOLUME_M3)
