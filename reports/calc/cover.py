"""Cover: how much soil is hidden by residue and living leaf, and for how long."""

from collections.abc import Sequence
from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

AREA_LEAST = 1.9  # m²/kg, the records' lowest, 1.972, rounded out, [UPGM]
AREA_MOST = 5.3  # m²/kg, the records' highest, 5.228, rounded out, [UPGM]
CRITICAL_SHARE = 0.30  # share, the line of conservation tillage, [UNL-G20]
CLOSURE_SHARE = 0.80  # share, cover at which a canopy counts as closed, [ASSUMED]
TRUSTED_LEFT = 0.40  # share of mass, below it residue cover is uncertain, [ASSUMED]

Amount = TypeVar("Amount", float, NDArray[np.float64])


def ground_cover(*, mass_kg_m2: Amount, area_m2_per_kg: float) -> Amount:
    """Return the share of soil hidden by flat residue. [0–1]

    Parameters
    ----------
    mass_kg_m2 : float or NDArray, any shape
        Dry matter on the surface. [kg/m²] 0 or more.
    area_m2_per_kg : float
        Soil that a kilogram would hide if nothing overlapped. [m²/kg] 1.9 to 5.3.

    Returns
    -------
    float or NDArray, shaped as the mass
        Cover. [0–1] Several residues lie over each other: give each to
        :func:`combine`, which is the same as summing their exponents.

    Raises
    ------
    ValueError
        If the mass is below 0 or the factor outside the range on record.

    Notes
    -----
    ``1 - exp(-A M)`` ([GREGORY82]_, A from the crop records of [UPGM]_). A belongs to
    fresh residue; see :func:`cover_is_trusted`.

    Examples
    --------
    >>> f"{ground_cover(mass_kg_m2=0.5604, area_m2_per_kg=5.228):.4f}"
    '0.9466'
    """
    _check_area(area_m2_per_kg)
    if np.any(np.asarray(mass_kg_m2) < 0):
        raise ValueError("mass below 0")
    cover: Amount = -np.expm1(-area_m2_per_kg * mass_kg_m2)
    return cover


def mass_for_cover(*, cover: float, area_m2_per_kg: float) -> float:
    """Return the residue that hides a share of the soil. [kg/m²]

    Parameters
    ----------
    cover : float
        Share of soil hidden. [0–1] Below 1.
    area_m2_per_kg : float
        As in :func:`ground_cover`. [m²/kg] 1.9 to 5.3.

    Returns
    -------
    float
        Dry matter. [kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``-ln(1 - cover) / A``, the inverse of [GREGORY82]_.

    Examples
    --------
    >>> f"{mass_for_cover(cover=0.30, area_m2_per_kg=5.228):.5f}"
    '0.06822'
    """
    _check_area(area_m2_per_kg)
    if not 0 <= cover < 1:
        raise ValueError("cover outside 0 to 1")
    return float(-np.log1p(-cover) / area_m2_per_kg)


def cover_is_trusted(
    *, share_left: ArrayLike, least: float = TRUSTED_LEFT
) -> NDArray[np.bool_]:
    """Return whether residue cover may still be told from its mass.

    Parameters
    ----------
    share_left : array_like, any shape
        Share of the mass at the kill that is left. [0–1]
    least : float
        Share below which it may not. [0–1] 0.40 unless the farm says otherwise.

    Returns
    -------
    NDArray of bool, same shape
        False below ``least``: stems hide less soil a kilogram than fresh residue,
        so the page must caveat the cover.

    Notes
    -----
    The line is a choice of ours ([ASSUMED]_).

    Examples
    --------
    >>> cover_is_trusted(share_left=[0.8, 0.3])
    array([ True, False])
    """
    return np.asarray(share_left, dtype=np.float64) >= least


def combine(first: Amount, *others: Amount) -> Amount:
    """Return the cover of several layers, living or dead, taken together. [0–1]

    Parameters
    ----------
    first, *others : float or NDArray, shapes that broadcast
        Cover of each layer. [0–1]

    Returns
    -------
    float or NDArray
        Share of soil hidden by at least one layer. [0–1]

    Raises
    ------
    ValueError
        If a cover is missing or outside 0 to 1.

    Notes
    -----
    ``1 - (1 - c1)(1 - c2)...``: layers fall on each other at random, as the sum of
    exponents in [GREGORY82]_ has it.

    Examples
    --------
    >>> combine(0.5, 0.5)
    0.75
    """
    _shares(first)
    bare = 1 - first
    for layer in others:
        _shares(layer)
        bare = bare * (1 - layer)
    return 1 - bare


def soil_cover_days(daily: ArrayLike) -> float:
    """Return the days of full cover that a spell of daily cover amounts to. [d]

    Parameters
    ----------
    daily : array_like, shape (n,)
        Cover of each day, living and dead together. [0–1]

    Returns
    -------
    float
        Sum of the daily cover: two days half covered make one. [d]

    Raises
    ------
    ValueError
        If a day's cover is missing or outside 0 to 1.

    Notes
    -----
    ``sum(cover)`` ([AGROSCOPE-SAEDN]_, [BUCHI16]_).

    Examples
    --------
    >>> soil_cover_days([1.0, 0.5, 0.5])
    2.0
    """
    return float(_shares(daily).sum())


def days_at_least(daily: ArrayLike, share: float = CRITICAL_SHARE) -> int:
    """Return the days on which at least a share of the soil is covered. [d]

    Parameters
    ----------
    daily : array_like, shape (n,)
        Cover of each day. [0–1]
    share : float
        The line. [0–1] 0.30 unless said otherwise.

    Returns
    -------
    int
        Days at or above the line. [d]

    Raises
    ------
    ValueError
        If a day's cover or the line is missing or outside 0 to 1.

    Notes
    -----
    30 % is the line of conservation tillage ([UNL-G20]_) and the critical line of
    [BUCHI16]_.

    Examples
    --------
    >>> days_at_least([0.2, 0.3, 0.9])
    2
    """
    if not 0 <= share <= 1:
        raise ValueError("share outside 0 to 1")
    return int(np.count_nonzero(_shares(daily) >= share))


def live_cover(
    *, days: ArrayLike, knots: Sequence[tuple[float, float]]
) -> NDArray[np.float64]:
    """Return living cover that runs straight from one known day to the next. [0–1]

    Parameters
    ----------
    days : array_like, any shape
        Days to tell, counted from any day. [d]
    knots : sequence of (day, cover)
        Known cover by day: 0 at emergence, ``CLOSURE_SHARE`` at canopy closure, then
        whatever was observed. [d, 0–1] Days must rise.

    Returns
    -------
    NDArray, shaped as ``days``
        Cover. [0–1] 0 before the first knot; the last knot's cover after it.

    Raises
    ------
    ValueError
        If there is no knot, days do not rise or a cover is outside 0 to 1.

    Notes
    -----
    Straight lines between knots, and 80 % at closure, are ours ([ASSUMED]_).

    Examples
    --------
    >>> live_cover(days=[0, 5, 15, 40], knots=[(5, 0.0), (25, 0.8)])
    array([0. , 0. , 0.4, 0.8])
    """
    if not knots:
        raise ValueError("no knots")
    known_days, covers = np.array(knots, dtype=np.float64).T
    if np.any(np.diff(known_days) <= 0):
        raise ValueError("the days of the knots do not rise")
    at = np.asarray(days, dtype=np.float64)
    return np.asarray(np.interp(at, known_days, _shares(covers), left=0.0))


def _check_area(area_m2_per_kg: float) -> None:
    if not AREA_LEAST <= area_m2_per_kg <= AREA_MOST:
        raise ValueError("area_m2_per_kg outside the factors on record")


def _shares(values: ArrayLike) -> NDArray[np.float64]:
    shares = np.asarray(values, dtype=np.float64)
    if not np.all((shares >= 0) & (shares <= 1)):
        raise ValueError("cover missing or outside 0 to 1")
    return shares
