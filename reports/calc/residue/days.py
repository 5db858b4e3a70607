"""Decomposition days: what the weather of a day does to residue."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

OPTIMUM_C = 32.0  # °C, warmth at which rot is quickest, [WEPS]
FULL_RAIN_MM = 4.0  # mm, water that wets flat residue through, [WEPS] [WEPP9]
KEPT_WET = 0.4  # share, wetness carried to the next day, 0 to 1, [WEPS]
DRYING_DAYS = 4  # d, days after water before residue is dry, [WEPS]
SOIL_WATER_DAYS = 15  # d, days of water that stand for soil water, [ASSUMED]
SOIL_WATER_MM = 66.0  # mm, water in those days that makes soil moist, [ASSUMED]
FROM_BELOW = 0.2  # share, soil wetness felt by flat residue, [ASSUMED]
BURIED_LEAST_WET = 0.3  # share, wetness buried residue never falls below, [ASSUMED]


@dataclass(frozen=True, eq=False)
class DecompositionDays:
    """Decomposition days of each day, by where the residue lies.

    Attributes
    ----------
    surface, buried : NDArray, shape (n,)
        Share of a day at ideal warmth and moisture. [0–1]
    missing : NDArray of bool, shape (n,)
        Where a temperature or the water of the day was not read.
    """

    surface: NDArray[np.float64]
    buried: NDArray[np.float64]
    missing: NDArray[np.bool_]


def temperature_factor(temp_c: ArrayLike) -> NDArray[np.float64]:
    """Return how far warmth lets residue rot. [0–1]

    Parameters
    ----------
    temp_c : array_like, any shape
        Temperature. [°C] NaN stays NaN.

    Returns
    -------
    NDArray, same shape
        Factor, 1 at 32 °C; 0 at 0 °C and below, and 0 again from 45.3 °C up. [0–1]

    Notes
    -----
    ``(2 T**2 To**2 - T**4) / To**4`` with ``To = 32``, the curve of [WEPS]_, which is
    defined as 0 outside that span.

    Examples
    --------
    >>> temperature_factor([-5, 10, 32]).round(6)
    array([0.      , 0.185776, 1.      ])
    """
    warm = np.maximum(np.asarray(temp_c, dtype=np.float64), 0.0) ** 2
    best = OPTIMUM_C**2
    curve: NDArray[np.float64] = (2 * warm * best - warm**2) / best**2
    return np.clip(curve, 0.0, 1.0)


def rain_wetness(water_mm: ArrayLike) -> NDArray[np.float64]:
    """Return the wetness that rain and irrigation leave in flat residue. [0–1]

    Parameters
    ----------
    water_mm : array_like, shape (n,)
        Rain, irrigation and melted snow of each day. [mm] 0 or more; NaN counts as
        dry here, and is reported by :func:`decomposition_days`.

    Returns
    -------
    NDArray, shape (n,)
        Wetness of the residue. [0–1]

    Raises
    ------
    ValueError
        If a day's water is below 0.

    Notes
    -----
    A wet day gives ``min(1, water / 4 + 0.4 * yesterday)``; each of the next 4 dry
    days keeps 0.4 of the day before; then it is dry ([WEPS]_). The 4 mm that wet
    residue through stand in [WEPP9]_ too.

    Examples
    --------
    >>> rain_wetness([2, 0, 0, 3, 0, 0]).round(4)
    array([0.5   , 0.2   , 0.08  , 0.782 , 0.3128, 0.1251])
    """
    wetness: list[float] = []
    now, dry_days = 0.0, DRYING_DAYS
    for water in _known_water(water_mm).tolist():
        if water > 0:
            now, dry_days = min(1.0, water / FULL_RAIN_MM + KEPT_WET * now), 0
        else:
            dry_days += 1
            now = KEPT_WET * now if dry_days <= DRYING_DAYS else 0.0
        wetness.append(now)
    return np.array(wetness)


def soil_wetness(water_mm: ArrayLike) -> NDArray[np.float64]:
    """Return a stand-in for how moist the topsoil is. [0–1]

    Parameters
    ----------
    water_mm : array_like, shape (n,)
        Rain, irrigation and melted snow of each day. [mm] 0 or more; NaN as dry.

    Returns
    -------
    NDArray, shape (n,)
        Wetness. [0–1] The first 14 days know less than 15 days of water and come out
        too dry: let a record begin at least 15 days before the day that matters.

    Raises
    ------
    ValueError
        If a day's water is below 0.

    Notes
    -----
    ``min(1, water of the last 15 days / 66 mm)``, today included. The tool keeps no
    soil-water account; both figures were fitted to the one-year losses of
    [GHIDEY93]_ and are a calibration, not a measurement ([ASSUMED]_).

    Examples
    --------
    >>> soil_wetness([33.0, 0.0, 44.0])
    array([0.5, 0.5, 1. ])
    """
    total = np.concatenate(([0.0], np.cumsum(_known_water(water_mm))))
    last = np.arange(1, len(total))
    window = total[last] - total[np.maximum(last - SOIL_WATER_DAYS, 0)]
    return np.minimum(1.0, window / SOIL_WATER_MM)


def _known_water(water_mm: ArrayLike) -> NDArray[np.float64]:
    water = np.nan_to_num(np.asarray(water_mm, dtype=np.float64), nan=0.0)
    if np.any(water < 0):
        raise ValueError("water below 0")
    return water


def decomposition_days(
    *, tmin_c: ArrayLike, tmax_c: ArrayLike, water_mm: ArrayLike
) -> DecompositionDays:
    """Return the decomposition days of each day, on the surface and buried.

    Parameters
    ----------
    tmin_c, tmax_c : array_like, shape (n,)
        Coldest and warmest air temperature. [°C] NaN where not read.
    water_mm : array_like, shape (n,)
        Rain, irrigation and melted snow. [mm] 0 or more, NaN where not read.

    Returns
    -------
    DecompositionDays
        Arrays of shape (n,). A day without a temperature rots nothing, a day without
        a water reading is taken as dry; both are marked ``missing``.

    Raises
    ------
    ValueError
        If the series differ in length or a day's water is below 0.

    Notes
    -----
    ``surface = min(max(W, 0.2 S), [f(tmax) + f(tmin)] / 2)`` and
    ``buried = min(max(0.3, S), f((tmax + tmin) / 2))`` with f from
    :func:`temperature_factor`, W from :func:`rain_wetness`, S from
    :func:`soil_wetness`. The lesser of warmth and moisture rules ([WEPS]_,
    [WEPP9]_); 0.2 and 0.3 are fitted ([ASSUMED]_) so that buried residue loses
    ground to flat residue as in [GHIDEY93]_, and [SW97-045]_ is a second check.

    Examples
    --------
    >>> day = decomposition_days(tmin_c=[18.0], tmax_c=[30.0], water_mm=[12.0])
    >>> day.surface.round(4), day.buried.round(4)
    (array([0.759]), array([0.3]))
    """
    low = np.asarray(tmin_c, dtype=np.float64)
    high = np.asarray(tmax_c, dtype=np.float64)
    water = np.asarray(water_mm, dtype=np.float64)
    if not low.shape == high.shape == water.shape:
        raise ValueError("the weather series differ in length")
    soil = soil_wetness(water)
    flat = np.maximum(rain_wetness(water), FROM_BELOW * soil)
    air = (temperature_factor(high) + temperature_factor(low)) / 2
    ground = temperature_factor((high + low) / 2)
    return DecompositionDays(
        surface=np.nan_to_num(np.minimum(flat, air), nan=0.0),
        buried=np.nan_to_num(
            np.minimum(np.maximum(BURIED_LEAST_WET, soil), ground), nan=0.0
        ),
        missing=np.isnan(low) | np.isnan(high) | np.isnan(water),
    )
