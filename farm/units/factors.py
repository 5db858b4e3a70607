"""Exact factors from customary units to SI."""

from typing import Final

M_PER_IN: Final = 0.0254
M_PER_FT: Final = 0.3048
M_PER_YD: Final = 0.9144
M_PER_MI: Final = 1609.344
MM_PER_IN: Final = 25.4

M2_PER_IN2: Final = 0.00064516
M2_PER_FT2: Final = 0.09290304
M2_PER_YD2: Final = 0.83612736
# The international acre. The survey acre, 4 parts in a million larger, was
# withdrawn with the survey foot at the end of 2022 (85 FR 62698).
M2_PER_ACRE: Final = 4046.8564224
M2_PER_MI2: Final = 640 * M2_PER_ACRE
M2_PER_HA: Final = 10_000.0

M3_PER_FT3: Final = 0.028316846592
M3_PER_YD3: Final = 0.764554857984
M3_PER_US_GALLON: Final = 0.003785411784
M3_PER_US_QUART: Final = M3_PER_US_GALLON / 4
M3_PER_US_PINT: Final = M3_PER_US_GALLON / 8
M3_PER_US_FL_OZ: Final = M3_PER_US_GALLON / 128
M3_PER_US_BUSHEL: Final = 0.03523907016688

KG_PER_LB: Final = 0.45359237
KG_PER_OZ: Final = 0.028349523125
KG_PER_CWT: Final = 45.359237
KG_PER_SHORT_TON: Final = 907.18474

KG_M2_PER_LB_AC: Final = KG_PER_LB / M2_PER_ACRE
KG_M2_PER_SHORT_TON_AC: Final = KG_PER_SHORT_TON / M2_PER_ACRE
KG_M2_PER_LB_1000FT2: Final = KG_PER_LB / (1000 * M2_PER_FT2)
KG_M2_PER_OZ_100FT2: Final = KG_PER_OZ / (100 * M2_PER_FT2)
KG_M2_PER_KG_HA: Final = 1e-4
KG_M2_PER_T_HA: Final = 0.1


def c_from_f(temp_f: float) -> float:
    """Return degrees Celsius from degrees Fahrenheit.

    Parameters
    ----------
    temp_f : float
        Temperature. [°F]

    Returns
    -------
    float
        (temp_f - 32) / 1.8. [°C]

    Examples
    --------
    >>> c_from_f(50.0)
    10.0
    """
    return (temp_f - 32.0) / 1.8


def f_from_c(temp_c: float) -> float:
    """Return degrees Fahrenheit from degrees Celsius.

    Parameters
    ----------
    temp_c : float
        Temperature. [°C]

    Returns
    -------
    float
        1.8 temp_c + 32. [°F]

    Examples
    --------
    >>> f_from_c(30.0)
    86.0
    """
    return temp_c * 1.8 + 32.0
