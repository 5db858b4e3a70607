"""Seed rates put to work: mixes, broadcasting, areas and the drill check."""

from collections.abc import Sequence
from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

BROADCAST_FACTOR = 1.4  # ratio to the drilled rate, 1.2 to 1.5, [COMMON]
BROADCAST_LOW = 1.2  # ratio, [COMMON]
BROADCAST_HIGH = 1.5  # ratio, [COMMON]
SHARE_SLACK = 0.001  # share, rounding allowed in the shares of a mix, [ASSUMED]

Amount = TypeVar("Amount", float, NDArray[np.float64])


def mix_rates(
    *, full_rates_kg_m2: Sequence[float], shares: Sequence[float]
) -> tuple[float, ...]:
    """Return the rate of each kind in a mix. [kg/m²]

    Parameters
    ----------
    full_rates_kg_m2 : sequence of float
        What each kind would be sown at alone. [kg/m²] Above 0.
    shares : sequence of float
        Share of its own full rate that each kind takes. [0–1] They sum to 1.

    Returns
    -------
    tuple of float
        Rate of each kind. [kg/m²]

    Raises
    ------
    ValueError
        If the two differ in length, a figure is outside its range or the shares do
        not sum to 1.

    Notes
    -----
    ``full rate * share`` each, as seeding plans are commonly drawn up ([COMMON]_).

    Examples
    --------
    >>> mix_rates(full_rates_kg_m2=[0.010, 0.004], shares=[0.75, 0.25])
    (0.0075, 0.001)
    """
    if len(full_rates_kg_m2) != len(shares):
        raise ValueError("rates and shares differ in length")
    if any(rate <= 0 for rate in full_rates_kg_m2) or any(part < 0 for part in shares):
        raise ValueError("a rate not above 0 or a share below 0")
    if abs(sum(shares) - 1) > SHARE_SLACK:
        raise ValueError("the shares of a mix do not sum to 1")
    pairs = zip(full_rates_kg_m2, shares, strict=True)
    return tuple(rate * part for rate, part in pairs)


def broadcast_rate(
    *, drilled_kg_m2: Amount, factor: float = BROADCAST_FACTOR
) -> Amount:
    """Return the rate for broadcasting, from the rate for drilling. [kg/m²]

    Parameters
    ----------
    drilled_kg_m2 : float or NDArray, any shape
        Rate when drilled. [kg/m²] 0 or more.
    factor : float
        How much more. [unitless] 1.2 to 1.5.

    Returns
    -------
    float or NDArray, shaped as the rate
        Rate when broadcast. [kg/m²] A kind's own printed broadcast rate goes first.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``rate * 1.4`` ([COMMON]_).

    Examples
    --------
    >>> round(broadcast_rate(drilled_kg_m2=0.0056), 5)
    0.00784
    """
    _check_amount(drilled_kg_m2)
    if not BROADCAST_LOW <= factor <= BROADCAST_HIGH:
        raise ValueError("factor outside 1.2 to 1.5")
    return drilled_kg_m2 * factor


def seed_weight(*, rate_kg_m2: Amount, area_m2: float) -> Amount:
    """Return the seed for an area. [kg]

    Parameters
    ----------
    rate_kg_m2 : float or NDArray, any shape
        Rate, pure live or bulk. [kg/m²] 0 or more.
    area_m2 : float
        Area. [m²] Above 0.

    Returns
    -------
    float or NDArray, shaped as the rate
        Seed, pure live or bulk as the rate was. [kg]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``rate * area``; the same for a spreader's product ([TAMU-SPREAD]_).

    Examples
    --------
    >>> seed_weight(rate_kg_m2=0.005, area_m2=400.0)
    2.0
    """
    _check_amount(rate_kg_m2)
    if area_m2 <= 0:
        raise ValueError("area_m2 not above 0")
    return rate_kg_m2 * area_m2


def drill_catch_kg(
    *, rate_kg_m2: Amount, row_spacing_m: float, distance_m: float, rows: int = 1
) -> Amount:
    """Return the seed a drill should drop while its setting is checked. [kg]

    Parameters
    ----------
    rate_kg_m2 : float or NDArray, any shape
        Bulk rate the drill is set for. [kg/m²] 0 or more.
    row_spacing_m : float
        Between rows. [m] Above 0.
    distance_m : float
        Driven, or turned by hand at the wheel. [m] Above 0.
    rows : int
        Rows caught. 1 or more.

    Returns
    -------
    float or NDArray, shaped as the rate
        Seed caught from those rows. [kg]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``rate * spacing * distance * rows`` ([SEFP-DRILL]_).

    Examples
    --------
    >>> catch = drill_catch_kg(
    ...     rate_kg_m2=0.0056, row_spacing_m=0.19, distance_m=50.0, rows=2
    ... )
    >>> round(catch, 4)
    0.1064
    """
    _check_amount(rate_kg_m2)
    if row_spacing_m <= 0 or distance_m <= 0 or rows < 1:
        raise ValueError("row_spacing_m, distance_m or rows outside its range")
    return rate_kg_m2 * (row_spacing_m * distance_m * rows)


def _check_amount(amount: ArrayLike) -> None:
    if not np.all(np.asarray(amount) >= 0):
        raise ValueError("an amount missing or below 0")
