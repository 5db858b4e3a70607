"""What is left of residue, on top of the soil or worked in."""

from bisect import bisect_left

import numpy as np
from numpy.typing import ArrayLike, NDArray

LEAF_FACTOR = 3.0  # ratio, rot of leaf to rot of stem, [WEPS]
K_QUICKEST = 0.0536  # per decomposition day, highest rate on record, [UPGM]
RANGE_SLOW = 0.7  # ratio, slow end of the rate shown, [ASSUMED]
RANGE_FAST = 1.4  # ratio, fast end of the rate shown, [ASSUMED]
SURFACE_HALF_LIFE_D = 65.0  # d, humid summer, without weather, [ASSUMED]
BURIED_HALF_LIFE_D = 35.0  # d, humid summer, without weather, [ASSUMED]


def step_running_log(*, dd: ArrayLike, k_per_dd: float) -> NDArray[np.float64]:
    """Return the running logarithm of what is left after each day's step.

    Parameters
    ----------
    dd : array_like, shape (n,)
        Decomposition days of each day. [0–1]
    k_per_dd : float
        Share lost in one decomposition day. [1/decomposition day] Above 0, up to
        0.2251: the quickest stem on record, as leaf, at the fast end of the range.

    Returns
    -------
    NDArray, shape (n + 1,)
        Sum of ``log(1 - k dd)`` before each day, the first 0. [unitless]

    Raises
    ------
    ValueError
        If a rate or a decomposition day is outside its range.

    Notes
    -----
    The day's step is ``M(t) = M(t-1) (1 - k DD)`` ([WEPS]_), so what is left between
    two days is the exponential of one difference. Rates come from the crop records
    of [UPGM]_.

    Examples
    --------
    >>> log = step_running_log(dd=[1.0, 0.5], k_per_dd=0.02)
    >>> np.exp(log).round(4)
    array([1.    , 0.98  , 0.9702])
    """
    days = np.asarray(dd, dtype=np.float64)
    if not 0 < k_per_dd <= LEAF_FACTOR * K_QUICKEST * RANGE_FAST:
        raise ValueError("k_per_dd outside the rates on record")
    if not np.all((days >= 0) & (days <= 1)):
        raise ValueError("a decomposition day outside 0 to 1")
    return np.concatenate(([0.0], np.cumsum(np.log1p(-k_per_dd * days))))


def pools_left(
    *,
    stem_log: NDArray[np.float64],
    leaf_log: NDArray[np.float64],
    leaf_share: float,
    start: int,
    stop: ArrayLike,
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return the leaf and the stem left, as shares of the mass at the start. [0–1]

    Parameters
    ----------
    stem_log, leaf_log : NDArray, shape (n + 1,)
        From :func:`step_running_log` with k and with ``LEAF_FACTOR`` times k.
    leaf_share : float
        Share of leaf in the mass at the start. [0–1]
    start : int
        Index of the first day that rots. 0 ≤ start ≤ n.
    stop : int or array_like of int
        Index after the last day. start ≤ stop ≤ n.

    Returns
    -------
    tuple of NDArray
        Leaf and stem, each shaped as ``stop``. [0–1] When residue is worked in later,
        start again from the leaf share of what is left.

    Raises
    ------
    ValueError
        If the leaf share or an index is outside its range.

    Notes
    -----
    ``leaf = f exp(dL)``, ``stem = (1 - f) exp(dS)``; two pools of [WEPS]_.

    Examples
    --------
    >>> stem = step_running_log(dd=[1.0] * 20, k_per_dd=0.02)
    >>> leaf = step_running_log(dd=[1.0] * 20, k_per_dd=0.06)
    >>> pools = pools_left(
    ...     stem_log=stem, leaf_log=leaf, leaf_share=0.5, start=0, stop=20
    ... )
    >>> [round(float(pool), 4) for pool in pools]
    [0.1451, 0.3338]
    """
    ends = np.asarray(stop)
    if not 0 <= leaf_share <= 1:
        raise ValueError("leaf_share outside 0 to 1")
    if start < 0 or np.any(ends < start) or np.any(ends >= len(stem_log)):
        raise ValueError("the span does not lie inside the record")
    leaf = leaf_share * np.exp(leaf_log[ends] - leaf_log[start])
    stem = (1 - leaf_share) * np.exp(stem_log[ends] - stem_log[start])
    return np.asarray(leaf), np.asarray(stem)


def share_left(
    *,
    stem_log: NDArray[np.float64],
    leaf_log: NDArray[np.float64],
    leaf_share: float,
    start: int,
    stop: ArrayLike,
) -> NDArray[np.float64]:
    """Return the share of the residue left. [0–1]

    Parameters
    ----------
    stem_log, leaf_log, leaf_share, start, stop
        As in :func:`pools_left`.

    Returns
    -------
    NDArray, shaped as ``stop``
        Share of the mass at ``start``. [0–1] A number has shape ().

    Raises
    ------
    ValueError
        If the leaf share or an index is outside its range.

    Notes
    -----
    ``f exp(dL) + (1 - f) exp(dS)`` ([WEPS]_).

    Examples
    --------
    >>> stem = step_running_log(dd=[1.0] * 20, k_per_dd=0.02)
    >>> leaf = step_running_log(dd=[1.0] * 20, k_per_dd=0.06)
    >>> share_left(
    ...     stem_log=stem, leaf_log=leaf, leaf_share=0.5, start=0, stop=[0, 20]
    ... ).round(6)
    array([1.      , 0.478857])
    """
    leaf, stem = pools_left(
        stem_log=stem_log,
        leaf_log=leaf_log,
        leaf_share=leaf_share,
        start=start,
        stop=stop,
    )
    return leaf + stem


def half_life_day(
    *,
    stem_log: NDArray[np.float64],
    leaf_log: NDArray[np.float64],
    leaf_share: float,
    start: int,
    share: float = 0.5,
) -> int | None:
    """Return the days until no more than a share of the residue is left. [d]

    Parameters
    ----------
    stem_log, leaf_log, leaf_share, start
        As in :func:`pools_left`.
    share : float
        Share of the mass at ``start``. [0–1] One half unless said otherwise.

    Returns
    -------
    int or None
        Days after ``start``. [d] None if the record ends first.

    Raises
    ------
    ValueError
        If a share or the start is outside its range.

    Notes
    -----
    What is left never grows, so the day is found by halving the record ([CALC]_).

    Examples
    --------
    >>> stem = step_running_log(dd=[1.0] * 40, k_per_dd=0.02)
    >>> leaf = step_running_log(dd=[1.0] * 40, k_per_dd=0.06)
    >>> half_life_day(stem_log=stem, leaf_log=leaf, leaf_share=0.5, start=0)
    19
    """
    if not 0 < share <= 1:
        raise ValueError("share outside 0 to 1")

    def share_gone(stop: int) -> float:
        left = share_left(
            stem_log=stem_log,
            leaf_log=leaf_log,
            leaf_share=leaf_share,
            start=start,
            stop=stop,
        )
        return 1.0 - float(left)

    stops = range(start, len(stem_log))
    found = bisect_left(stops, 1.0 - share, key=share_gone)
    return found if found < len(stops) else None


def closed_form(*, dd_sum: float, k_per_dd: float, leaf_share: float) -> float:
    """Return the share left after a sum of decomposition days, without steps. [0–1]

    Parameters
    ----------
    dd_sum : float
        Decomposition days summed. [decomposition day] 0 or more.
    k_per_dd : float
        Rate of the stem. [1/decomposition day] Above 0, up to 0.075.
    leaf_share : float
        Share of leaf in the mass at the start. [0–1]

    Returns
    -------
    float
        Share left, a little more than the daily step leaves. [0–1]

    Raises
    ------
    ValueError
        If an argument is outside its range.

    Notes
    -----
    ``f exp(-3 k D) + (1 - f) exp(-k D)``, the limit of the [WEPS]_ step ([CALC]_).

    Examples
    --------
    >>> round(closed_form(dd_sum=20, k_per_dd=0.025, leaf_share=0.30), 6)
    0.491511
    """
    if dd_sum < 0 or not 0 < k_per_dd <= K_QUICKEST * RANGE_FAST:
        raise ValueError("dd_sum or k_per_dd outside its range")
    if not 0 <= leaf_share <= 1:
        raise ValueError("leaf_share outside 0 to 1")
    leaf = leaf_share * np.exp(-LEAF_FACTOR * k_per_dd * dd_sum)
    return float(leaf + (1 - leaf_share) * np.exp(-k_per_dd * dd_sum))


def share_left_without_weather(*, days: float, half_life_d: float) -> float:
    """Return the share left where no weather is known, a rough stand-in. [0–1]

    Parameters
    ----------
    days : float
        Days since the kill. [d] 0 or more, in the warm half of the year.
    half_life_d : float
        Time for half to go. [d] Above 0; ``SURFACE_HALF_LIFE_D`` on top and
        ``BURIED_HALF_LIFE_D`` worked in, or the farm's own.

    Returns
    -------
    float
        Share left. [0–1] The page must say that no weather went into it.

    Raises
    ------
    ValueError
        If ``days`` is below 0 or ``half_life_d`` not above it.

    Notes
    -----
    ``0.5 ** (days / half-life)``, half-life 65 d on top and 35 d worked in: what the
    weather model gives in a humid summer ([ASSUMED]_).

    Examples
    --------
    >>> share_left_without_weather(days=70, half_life_d=BURIED_HALF_LIFE_D)
    0.25
    """
    if days < 0 or half_life_d <= 0:
        raise ValueError("days below 0 or half_life_d not above 0")
    return float(0.5 ** (days / half_life_d))
