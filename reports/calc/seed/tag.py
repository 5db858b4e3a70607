"""Seed tags and counts: pure live seed, and rates by weight and by number."""

from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

Amount = TypeVar("Amount", float, NDArray[np.float64])


def pls(*, purity: float, germination: float, hard: float = 0.0) -> float:
    """Return the share of a lot that is pure live seed. [0–1]

    Parameters
    ----------
    purity : float
        Seed of the kind in the lot. [0–1] Above 0.
    germination : float
        Pure seed that sprouted in the test. [0–1]
    hard : float
        Pure seed that is alive but hard or dormant. [0–1] ``germination + hard`` is
        above 0 and at most 1.

    Returns
    -------
    float
        Pure live seed. [0–1] Above 0.

    Raises
    ------
    ValueError
        If a share is outside its range, as it is when given in percent.

    Notes
    -----
    ``purity * (germination + hard)`` ([TXDOT-PLS]_, [ERNST-PLS]_). Where hard seed
    will not come up this year, leave it out.

    Examples
    --------
    >>> round(pls(purity=0.85, germination=0.75), 4)
    0.6375
    """
    alive = germination + hard
    if not 0 < purity <= 1:
        raise ValueError("purity not above 0, or above 1")
    if germination < 0 or hard < 0 or not 0 < alive <= 1:
        raise ValueError("germination and hard seed outside 0 to 1 together")
    return purity * alive


def bulk_for(*, pls_amount: Amount, pls_share: float) -> Amount:
    """Return the seed out of the bag that holds an amount of pure live seed.

    Parameters
    ----------
    pls_amount : float or NDArray, any shape
        Pure live seed, as a weight or a rate. [kg or kg/m²] 0 or more.
    pls_share : float
        From :func:`pls`. [0–1] Above 0.

    Returns
    -------
    float or NDArray, shaped as the amount
        Seed to weigh out, in the unit of ``pls_amount``. [kg or kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``pls / share`` ([PENN-ES]_, [DUIKER-PLS]_).

    Examples
    --------
    >>> round(bulk_for(pls_amount=100.0, pls_share=0.54), 1)
    185.2
    """
    _check_amount(pls_amount)
    if not 0 < pls_share <= 1:
        raise ValueError("pls_share not above 0, or above 1")
    return pls_amount / pls_share


def seeds_per_kg(*, count: int, sample_kg: float) -> float:
    """Return the seeds in a kilogram from a counted sample. [1/kg]

    Parameters
    ----------
    count : int
        Seeds counted. Above 0.
    sample_kg : float
        Their weight. [kg] Above 0.

    Returns
    -------
    float
        Seeds in a kilogram. [1/kg]

    Raises
    ------
    ValueError
        If an argument is not above 0.

    Notes
    -----
    ``count / weight``. For a kind not counted, [CFR201.46]_ prints the seeds in a
    gram (2015 edition, amended since).

    Examples
    --------
    >>> seeds_per_kg(count=45, sample_kg=0.001)
    45000.0
    """
    if count <= 0 or sample_kg <= 0:
        raise ValueError("count or sample_kg not above 0")
    return count / sample_kg


def seeds_per_m2(*, rate_kg_m2: Amount, seeds_per_kg: float) -> Amount:
    """Return how many seeds a rate puts on a square metre. [1/m²]

    Parameters
    ----------
    rate_kg_m2 : float or NDArray, any shape
        Seeding rate. [kg/m²] 0 or more.
    seeds_per_kg : float
        Seeds in a kilogram. [1/kg] Above 0.

    Returns
    -------
    float or NDArray, shaped as the rate
        Seeds. [1/m²] Pure live seeds if the rate is pure live seed.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``rate * seeds`` ([UKY-SEEDS]_).

    Examples
    --------
    >>> round(seeds_per_m2(rate_kg_m2=0.005604, seeds_per_kg=45000), 1)
    252.2
    """
    _check_amount(rate_kg_m2)
    if seeds_per_kg <= 0:
        raise ValueError("seeds_per_kg not above 0")
    return rate_kg_m2 * seeds_per_kg


def rate_for_seeds(*, seeds_m2: Amount, seeds_per_kg: float) -> Amount:
    """Return the rate that puts a number of seeds on a square metre. [kg/m²]

    Parameters
    ----------
    seeds_m2 : float or NDArray, any shape
        Seeds wanted. [1/m²] 0 or more.
    seeds_per_kg : float
        Seeds in a kilogram. [1/kg] Above 0.

    Returns
    -------
    float or NDArray, shaped as the number
        Rate. [kg/m²]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``seeds / seeds a kilogram`` ([UKY-SEEDS]_).

    Examples
    --------
    >>> rate_for_seeds(seeds_m2=360.0, seeds_per_kg=36000.0)
    0.01
    """
    _check_amount(seeds_m2)
    if seeds_per_kg <= 0:
        raise ValueError("seeds_per_kg not above 0")
    return seeds_m2 / seeds_per_kg


def _check_amount(amount: ArrayLike) -> None:
    if not np.all(np.asarray(amount) >= 0):
        raise ValueError("an amount missing or below 0")
