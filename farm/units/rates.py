"""Amounts on land as growers write them, read into SI."""

import re

from farm.units.amounts import one, positive, quantity, with_default
from farm.units.numbers import tidy
from farm.units.troubles import Trouble, UnitError
from farm.units.words import AREA, MASS, THINGS

_PER = re.compile(r"(?<![0-9\s])\s*/|/\s*(?![0-9\s])|\bper\b|\bpor\b|\bcada\b")

_LARGEST_LAND_M2 = 1e10
_LARGEST_RATE_KG_M2 = 1e3
_LARGEST_COUNT_M2 = 1e6


def parse_rate(
    text: str, *, default_unit: str | None = None, zero_ok: bool = False
) -> float:
    """Return the mass on an area of land written in ``text``. [kg m⁻²]

    Parameters
    ----------
    text : str
        A mass, then "/", "per" or "por", then an area with or without a number:
        "50 lb/ac", "1 lb/500 sq ft", "2 lb per 1000 sq ft".
    default_unit : str, optional
        The unit of a number written alone, as a rate: "lb/ac".
    zero_ok : bool
        Let the rate be 0, as for no seed of one kind in a mix.

    Returns
    -------
    float
        Rate, at most 1000. [kg m⁻²]

    Raises
    ------
    UnitError
        ``NO_AREA`` when only a mass is written.

    Examples
    --------
    >>> round(parse_rate("56 kg/ha"), 12)
    0.0056
    """
    amount, land_m2 = _per(text, default_unit)
    rate_kg_m2 = quantity(amount, MASS, None) / land_m2
    return positive(rate_kg_m2, text, _LARGEST_RATE_KG_M2, zero_ok=zero_ok)


def parse_count_per_area(text: str, *, default_unit: str | None = None) -> float:
    """Return how many seeds or plants stand on an area, as written. [m⁻²]

    Accepts "25 seeds/sq ft", "25 per sq ft", "30,000 plants/ac".

    Raises
    ------
    UnitError
        ``NO_AREA`` when only a number is written.

    Examples
    --------
    >>> round(parse_count_per_area("30 seeds/sq ft"), 4)
    322.9173
    """
    amount, land_m2 = _per(text, default_unit)
    count, word = one(amount)
    if word and word not in THINGS:
        raise UnitError(
            Trouble.UNKNOWN_UNIT, understood=f"{count:g}", rest=word, known=("seeds",)
        )
    return positive(count / land_m2, text, _LARGEST_COUNT_M2)


def _per(text: str, default_unit: str | None) -> tuple[str, float]:
    """Part "2 lb per 1000 sq ft" into "2 lb" and its land. [m²]"""
    tidied = with_default(tidy(text), default_unit)
    amount, *lands = _PER.split(tidied, maxsplit=1)
    if not lands:
        raise UnitError(Trouble.NO_AREA, understood=tidied, known=AREA.shown)
    land = lands[0].strip()
    if not land:
        raise UnitError(Trouble.NO_AREA, understood=amount.strip(), known=AREA.shown)
    sized = land if re.match(r"[-+0-9.,]", land) else f"1 {land}"
    return amount.strip(), positive(quantity(sized, AREA, None), land, _LARGEST_LAND_M2)
