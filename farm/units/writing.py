"""Measures written for a reader, in US or metric units."""

import math
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from enum import StrEnum

from farm.units import factors

# Room for any float in full, so that nothing is ever written as a power of ten.
_ROOMY = Context(prec=700)


class System(StrEnum):
    """The family of units a farm reads."""

    US = "us"
    METRIC = "metric"


@dataclass(frozen=True, slots=True)
class Written:
    """A number and its unit, ready to be shown; the number is plain ASCII."""

    number: str
    unit: str

    def __str__(self) -> str:
        return f"{self.number} {self.unit}"


def write_area(area_m2: float, system: System) -> Written:
    """Write an area: beds in sq ft or m², from a tenth of an acre or hectare in those.

    Parameters
    ----------
    area_m2 : float
        Area. [m²]
    system : System
        The units to write in.

    Returns
    -------
    Written
        Three figures, or all whole units from 100 up.

    Raises
    ------
    ValueError
        If the area is not a finite number.

    Examples
    --------
    >>> str(write_area(6070.28, System.US)), str(write_area(11.148, System.US))
    ('1.5 ac', '120 sq ft')
    """
    large, small = (
        ((factors.M2_PER_ACRE, "ac"), (factors.M2_PER_FT2, "sq ft"))
        if system is System.US
        else ((factors.M2_PER_HA, "ha"), (1.0, "m²"))
    )
    factor, unit = large if abs(area_m2) >= 0.1 * large[0] else small
    return Written(_figures(area_m2 / factor, system), unit)


def write_length(length_m: float, system: System) -> Written:
    """Write a length [m]: under a foot in inches, under a metre in centimetres.

    Examples
    --------
    >>> str(write_length(9.144, System.US)), str(write_length(0.75, System.METRIC))
    ('30 ft', '75 cm')
    """
    large, small = (
        ((factors.M_PER_FT, "ft"), (factors.M_PER_IN, "in"))
        if system is System.US
        else ((1.0, "m"), (0.01, "cm"))
    )
    factor, unit = large if abs(length_m) >= large[0] else small
    return Written(_figures(length_m / factor, system), unit)


def write_depth(depth_m: float, system: System) -> Written:
    """Write a depth in soil [m], in inches or centimetres.

    Examples
    --------
    >>> str(write_depth(0.0127, System.US)), str(write_depth(0.0127, System.METRIC))
    ('0.5 in', '1.27 cm')
    """
    factor, unit = (factors.M_PER_IN, "in") if system is System.US else (0.01, "cm")
    return Written(_figures(depth_m / factor, system), unit)


def write_mass(mass_kg: float, system: System) -> Written:
    """Write a mass [kg]: under a pound in ounces, under a kilogram in grams.

    Examples
    --------
    >>> str(write_mass(1088.6216880, System.US)), str(write_mass(0.25, System.METRIC))
    ('2,400 lb', '250 g')
    """
    large, small = (
        ((factors.KG_PER_LB, "lb"), (factors.KG_PER_OZ, "oz"))
        if system is System.US
        else ((1.0, "kg"), (0.001, "g"))
    )
    # Nothing stands in the unit of its neighbours: "0 lb", not "0 oz".
    # What is a pound but for the rounding of a sum is no sixteen ounces.
    least = large[0] * (1 - 1e-5)
    factor, unit = large if not mass_kg or abs(mass_kg) >= least else small
    return Written(_figures(mass_kg / factor, system), unit)


def write_rate(rate_kg_m2: float, system: System, *, bed: bool = False) -> Written:
    """Write a mass on land [kg m⁻²] per acre or hectare, for a bed per 100 sq ft or m².

    Examples
    --------
    >>> str(write_rate(0.0056, System.US)), str(write_rate(0.0056, System.METRIC))
    ('50 lb/ac', '56 kg/ha')
    """
    factor, unit = {
        (System.US, False): (factors.KG_M2_PER_LB_AC, "lb/ac"),
        (System.US, True): (factors.KG_M2_PER_OZ_100FT2, "oz/100 sq ft"),
        (System.METRIC, False): (factors.KG_M2_PER_KG_HA, "kg/ha"),
        (System.METRIC, True): (0.001, "g/m²"),
    }[system, bed]
    return Written(_figures(rate_kg_m2 / factor, system), unit)


def write_density(density_kg_m2: float, system: System) -> Written:
    """Write dry matter on land [kg m⁻²] in lb/ac or t/ha.

    Examples
    --------
    >>> str(write_density(0.504, System.US)), str(write_density(0.504, System.METRIC))
    ('4,497 lb/ac', '5.04 t/ha')
    """
    factor, unit = (
        (factors.KG_M2_PER_LB_AC, "lb/ac")
        if system is System.US
        else (factors.KG_M2_PER_T_HA, "t/ha")
    )
    return Written(_figures(density_kg_m2 / factor, system), unit)


def write_temp(temp_c: float, system: System) -> Written:
    """Write a temperature [°C] to a tenth of a degree.

    Examples
    --------
    >>> str(write_temp(-2.2222, System.US)), str(write_temp(-0.04, System.METRIC))
    ('28 °F', '0 °C')
    """
    if system is System.US:
        return Written(_fixed(factors.f_from_c(temp_c), 1, system), "°F")
    return Written(_fixed(temp_c, 1, system), "°C")


def write_rain(rain_mm: float, system: System) -> Written:
    """Write rain [mm] to a hundredth of an inch or a tenth of a millimetre.

    Examples
    --------
    >>> str(write_rain(12.7, System.US)), str(write_rain(12.7, System.METRIC))
    ('0.5 in', '12.7 mm')
    """
    if system is System.US:
        return Written(_fixed(rain_mm / factors.MM_PER_IN, 2, system), "in")
    return Written(_fixed(rain_mm, 1, system), "mm")


def write_volume(volume_m3: float, system: System) -> Written:
    """Write a volume [m³] in US gallons or litres.

    Examples
    --------
    >>> str(write_volume(0.1514, System.US)), str(write_volume(0.04, System.METRIC))
    ('40 gal', '40 L')
    """
    factor, unit = (
        (factors.M3_PER_US_GALLON, "gal") if system is System.US else (0.001, "L")
    )
    return Written(_figures(volume_m3 / factor, system), unit)


def write_count_per_area(count_m2: float, system: System) -> Written:
    """Write seeds or plants on land [m⁻²] per sq ft or m²; the unit is the land alone.

    Examples
    --------
    >>> str(write_count_per_area(322.917, System.US))
    '30 per sq ft'
    """
    if system is System.US:
        return Written(_figures(count_m2 * factors.M2_PER_FT2, system), "per sq ft")
    return Written(_figures(count_m2, system), "per m²")


def _figures(value: float, system: System) -> str:
    """Write three figures, or every whole unit from 100 up."""
    if value == 0:
        return "0"
    if not math.isfinite(value):
        raise ValueError("only a finite number can be written")
    return _fixed(value, max(0, 2 - Decimal(repr(value)).adjusted()), system)


def _fixed(value: float, places: int, system: System) -> str:
    """Write ``value`` to ``places`` decimals, without idle zeros or a minus on zero."""
    if not math.isfinite(value):
        raise ValueError("only a finite number can be written")
    rounded = Decimal(repr(float(value))).quantize(
        Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP, context=_ROOMY
    )
    written = f"{rounded:,f}" if system is System.US else f"{rounded:f}"
    if "." in written:
        written = written.rstrip("0").rstrip(".")
    return "0" if written in ("-0", "") else written
