"""Nitrogen: how much of it residue gives back to the next crop, and when."""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reports.calc.shapes.ledger import Residue

N_LEAST = 0.015  # share of dry matter, below it none is freed, [PNW636]
N_FREED = 0.875  # kg/kg above that share (17.5 lb/ton per percent), [PNW636]
N_FREED_MOST = 0.02  # kg/kg (40 lb/ton), reached at 3.8 % nitrogen, [PNW636]
N_HIGHEST = 0.07  # share of dry matter, no stand holds more, [ASSUMED]
ON_TOP_WARM = 0.8  # ratio to worked in, 0.40 over 0.50 of the total, [NCSU-BIO]
ON_TOP_COOL = 0.5  # ratio to worked in, a quarter over a half, [MCCP3-N]
RELEASE_D = 42.0  # d, most is freed in 4 to 6 weeks after the kill, [PNW636]
ROUGH_HALF = 0.5  # share of total nitrogen, worked in or warm, [MCCP3-N]
ROUGH_QUARTER = 0.25  # share of total nitrogen, on top and cool, [MCCP3-N]
BALANCED_RATIO = 24.0  # C:N, the ideal; above it soil nitrogen is tied up, [NRCS-CN]

Amount = TypeVar("Amount", float, NDArray[np.float64])


class Climate(StrEnum):
    """Whether residue on top rots in a warm, humid season or a cool one."""

    WARM = "warm"
    COOL = "cool"


class NitrogenNote(StrEnum):
    """What to say beside an amount of nitrogen."""

    NONE_MAY_TIE_UP = "none_may_tie_up"
    SOME_FREED = "some_freed"
    MOST_FREED = "most_freed"


@dataclass(frozen=True)
class OnTop:
    """Nitrogen freed on top, as a ratio to worked in; a farm may set its own.

    Attributes
    ----------
    warm, cool : float
        Ratio by climate. [unitless] Above 0, at most 1.
    """

    warm: float = ON_TOP_WARM
    cool: float = ON_TOP_COOL


DEFAULT_ON_TOP = OnTop()


def plant_available_n(
    *,
    nitrogen_share: float,
    mass_kg_m2: Amount,
    placement: Residue,
    climate: Climate,
    on_top: OnTop = DEFAULT_ON_TOP,
) -> Amount:
    """Return the nitrogen that the next crop can use. [kg/m²]

    Parameters
    ----------
    nitrogen_share : float
        Nitrogen in the dry matter. [kg/kg] 0 to 0.07.
    mass_kg_m2 : float or NDArray, any shape
        Dry matter at the kill. [kg/m²] 0 or more.
    placement : Residue
        Left on top or worked in.
    climate : Climate
        Matters only on top.
    on_top : OnTop
        The farm's own ratios, where it has them.

    Returns
    -------
    float or NDArray, shaped as the mass
        Nitrogen freed, most of it within six weeks. [kg/m²] Say
        :func:`nitrogen_note` beside it.

    Raises
    ------
    ValueError
        If the share or the mass is outside its range, or the residue is neither on
        top nor worked in.

    Notes
    -----
    ``M * 0.875 * (N - 0.015)`` worked in, none below 1.5 % nitrogen and 40 lb a ton
    at most ([PNW636]_, winter covers west of the Cascades; elsewhere a stand-in). On
    top, times 0.8 where warm and humid ([NCSU-BIO]_) or 0.5 where cool ([MCCP3-N]_).

    Examples
    --------
    >>> available = plant_available_n(
    ...     nitrogen_share=0.03,
    ...     mass_kg_m2=0.5,
    ...     placement=Residue.WORKED_IN,
    ...     climate=Climate.COOL,
    ... )
    >>> f"{available:.6f}"
    '0.006562'
    """
    _check_nitrogen(nitrogen_share)
    _check_mass(mass_kg_m2)
    freed = min(max(N_FREED * (nitrogen_share - N_LEAST), 0.0), N_FREED_MOST)
    if _lies_on_top(placement):
        freed *= on_top.warm if climate is Climate.WARM else on_top.cool
    return mass_kg_m2 * freed


def rough_available_n(
    *,
    nitrogen_share: float,
    mass_kg_m2: Amount,
    placement: Residue,
    climate: Climate,
) -> Amount:
    """Return the nitrogen that the next crop can use, by a rule of thumb. [kg/m²]

    Parameters
    ----------
    nitrogen_share, mass_kg_m2, placement, climate
        As in :func:`plant_available_n`.

    Returns
    -------
    float or NDArray, shaped as the mass
        Half of all nitrogen; a quarter on top where cool. [kg/m²] A second opinion
        for stands rich in nitrogen; too much for grasses.

    Raises
    ------
    ValueError
        As in :func:`plant_available_n`.

    Notes
    -----
    ``M * N / 2``, or ``M * N / 4`` ([MCCP3-N]_, [NCSU-BIO]_).

    Examples
    --------
    >>> rough_available_n(
    ...     nitrogen_share=0.04,
    ...     mass_kg_m2=0.5,
    ...     placement=Residue.ON_TOP,
    ...     climate=Climate.COOL,
    ... )
    0.005
    """
    _check_nitrogen(nitrogen_share)
    _check_mass(mass_kg_m2)
    quarter = _lies_on_top(placement) and climate is Climate.COOL
    return mass_kg_m2 * (nitrogen_share * (ROUGH_QUARTER if quarter else ROUGH_HALF))


def nitrogen_note(
    *, nitrogen_share: float, carbon_nitrogen: float | None = None
) -> NitrogenNote:
    """Return what to say beside the nitrogen of a residue.

    Parameters
    ----------
    nitrogen_share : float
        Nitrogen in the dry matter. [kg/kg] 0 to 0.07.
    carbon_nitrogen : float, optional
        Measured C:N. [kg/kg] Above 0.

    Returns
    -------
    NitrogenNote
        ``NONE_MAY_TIE_UP`` below 1.5 % nitrogen or above a C:N of 24; ``MOST_FREED``
        where the published line ends and more nitrogen frees no more.

    Raises
    ------
    ValueError
        If a figure is outside its range.

    Notes
    -----
    Little or none is freed below 1.5 % ([PNW636]_); soil life is in balance near 24
    ([NRCS-CN]_).

    Examples
    --------
    >>> nitrogen_note(nitrogen_share=0.012).value
    'none_may_tie_up'
    """
    _check_nitrogen(nitrogen_share)
    if carbon_nitrogen is not None and carbon_nitrogen <= 0:
        raise ValueError("carbon_nitrogen is not above 0")
    tied = carbon_nitrogen is not None and carbon_nitrogen > BALANCED_RATIO
    if tied or nitrogen_share <= N_LEAST:
        return NitrogenNote.NONE_MAY_TIE_UP
    if N_FREED * (nitrogen_share - N_LEAST) >= N_FREED_MOST:
        return NitrogenNote.MOST_FREED
    return NitrogenNote.SOME_FREED


def released_by_day(
    *, total_kg_m2: float, days: ArrayLike, release_d: float = RELEASE_D
) -> NDArray[np.float64]:
    """Return the nitrogen freed by each day after the kill. [kg/m²]

    Parameters
    ----------
    total_kg_m2 : float
        Nitrogen freed in all. [kg/m²] 0 or more.
    days : array_like, any shape
        Days since the kill, or since the residue was worked in. [d] 0 or more.
    release_d : float
        Days over which it is freed. [d] Above 0; 42 unless the farm says otherwise.

    Returns
    -------
    NDArray, shaped as ``days``
        Freed so far. [kg/m²] The whole total from ``release_d`` on.

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``total * min(1, days / 42)``: most is freed within 4 to 6 weeks ([PNW636]_); the
    straight line is ours ([ASSUMED]_).

    Examples
    --------
    >>> released_by_day(total_kg_m2=0.006, days=[0, 21, 60])
    array([0.   , 0.003, 0.006])
    """
    since = np.asarray(days, dtype=np.float64)
    if total_kg_m2 < 0 or release_d <= 0 or not np.all(since >= 0):
        raise ValueError("the total, the days or release_d outside its range")
    freed: NDArray[np.float64] = total_kg_m2 * np.minimum(since / release_d, 1.0)
    return freed


def _lies_on_top(placement: Residue) -> bool:
    if placement not in (Residue.ON_TOP, Residue.WORKED_IN):
        raise ValueError("the residue is neither on top nor worked in")
    return placement is Residue.ON_TOP


def _check_nitrogen(nitrogen_share: float) -> None:
    if not 0 <= nitrogen_share <= N_HIGHEST:
        raise ValueError("nitrogen_share outside 0 to 0.07; is it a percentage?")


def _check_mass(mass: ArrayLike) -> None:
    if not np.all(np.asarray(mass) >= 0):
        raise ValueError("mass missing or below 0")
