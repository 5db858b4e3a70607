"""How much to take along: ground left after headlands, spare seed, fills, inoculant."""

from __future__ import annotations

import math
from collections.abc import Sequence


def mix_by_weight(*, rate_kg_m2: float, weights: Sequence[float]) -> tuple[float, ...]:
    """Return the rate of each kind in a mix told by weight. [kg/m²]

    Parameters
    ----------
    rate_kg_m2 : float
        Rate of the whole mix. [kg/m²] Above 0.
    weights : sequence of float
        Parts by weight, in any unit. Each 0 or more, not all 0.

    Returns
    -------
    tuple of float
        Rate of each kind. [kg/m²] They add up to ``rate_kg_m2``.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``rate * part / sum(parts)`` ([CALC]_).

    Examples
    --------
    >>> mix_by_weight(rate_kg_m2=0.01, weights=[3, 1])
    (0.0075, 0.0025)
    """
    if rate_kg_m2 <= 0 or any(part < 0 for part in weights) or not any(weights):
        raise ValueError("a rate not above 0, or parts by weight below or all 0")
    return tuple(rate_kg_m2 * part / sum(weights) for part in weights)


def after_headlands(
    *, length_m: float, width_m: float, headland_m: float, ends: int = 2
) -> float:
    """Return the ground left to sow when strips at the ends stay free. [m²]

    Parameters
    ----------
    length_m, width_m : float
        Sides of the piece, the length along the rows. [m] Above 0.
    headland_m : float
        Depth of the strip left at an end. [m] 0 or more.
    ends : int
        Ends left free. 0, 1 or 2.

    Returns
    -------
    float
        Ground to sow. [m²] 0 where the headlands take all of it.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``(length - ends * headland) * width`` ([CALC]_).

    Examples
    --------
    >>> after_headlands(length_m=100.0, width_m=20.0, headland_m=5.0)
    1800.0
    """
    if length_m <= 0 or width_m <= 0 or headland_m < 0 or ends not in (0, 1, 2):
        raise ValueError("a side, a headland or the ends outside their range")
    return max(0.0, length_m - ends * headland_m) * width_m


def with_overage(*, seed_kg: float, overage: float) -> float:
    """Return seed with some to spare. [kg]

    Parameters
    ----------
    seed_kg : float
        What is reckoned. [kg] 0 or more.
    overage : float
        Share of it taken along on top. [0–1]

    Returns
    -------
    float
        Seed to take along. [kg]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``seed * (1 + overage)`` ([CALC]_).

    Examples
    --------
    >>> with_overage(seed_kg=20.0, overage=0.05)
    21.0
    """
    if seed_kg < 0 or not 0 <= overage <= 1:
        raise ValueError("seed_kg below 0, or overage outside 0 to 1")
    return seed_kg * (1 + overage)


def fills(*, seed_kg: float, hopper_kg: float) -> tuple[int, float]:
    """Return how often a hopper is filled alike, and with how much.

    Parameters
    ----------
    seed_kg : float
        Seed to sow. [kg] Above 0.
    hopper_kg : float
        What the hopper holds of it. [kg] Above 0.

    Returns
    -------
    count : int
        Fills.
    each_kg : float
        Seed in each. [kg] At most ``hopper_kg``.

    Raises
    ------
    ValueError
        If an argument is not above 0.

    Notes
    -----
    ``ceil(seed / hopper)`` even fills ([CALC]_).

    Examples
    --------
    >>> fills(seed_kg=250.0, hopper_kg=100.0)
    (3, 83.33333333333333)
    """
    if seed_kg <= 0 or hopper_kg <= 0:
        raise ValueError("seed_kg or hopper_kg not above 0")
    # A hopper filled to the brim is one fill, whatever the last place says.
    count = max(1, math.ceil(seed_kg / hopper_kg - 1e-9))
    return count, seed_kg / count


def inoculant_kg(*, seed_kg: float, label_kg_per_kg: float) -> float:
    """Return the inoculant for seed, as its label doses it. [kg]

    Parameters
    ----------
    seed_kg : float
        Seed to treat. [kg] 0 or more.
    label_kg_per_kg : float
        Inoculant to a kilogram of seed, from the label. [kg/kg] Above 0.

    Returns
    -------
    float
        Inoculant. [kg]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``seed * dose``; the label decides ([CALC]_).

    Examples
    --------
    >>> inoculant_kg(seed_kg=50.0, label_kg_per_kg=0.004)
    0.2
    """
    if seed_kg < 0 or label_kg_per_kg <= 0:
        raise ValueError("seed_kg below 0, or label_kg_per_kg not above 0")
    return seed_kg * label_kg_per_kg
