"""Heat: degree days a day, their running total, and the day a sum is reached."""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

ROUNDING = 1e-9  # °C-day, slack for the last bit of a running total, [CALC]


class HeatMethod(StrEnum):
    """How a day's warmest and coldest reading become one sum."""

    AVERAGE = "average"
    CLAMPED = "clamped"
    SINE = "sine"


@dataclass(frozen=True, eq=False)
class RunningTotal:
    """Degree days summed from the first day, so that a span is one difference.

    Attributes
    ----------
    total : NDArray, shape (n + 1,)
        Sum before each day; the first is 0. A missing day adds nothing. [°C-day]
    missing : NDArray of int, shape (n + 1,)
        Missing days before each day; the first is 0. [d]
    """

    total: NDArray[np.float64]
    missing: NDArray[np.int64]


def degree_days(
    *,
    tmin_c: ArrayLike,
    tmax_c: ArrayLike,
    base_c: float,
    upper_c: float | None = None,
    method: HeatMethod = HeatMethod.CLAMPED,
) -> NDArray[np.float64]:
    """Return each day's degree days above a base. [°C-day]

    Parameters
    ----------
    tmin_c, tmax_c : array_like, shape (n,)
        Coldest and warmest reading of each day. [°C] NaN where not read.
    base_c : float
        Temperature below which growth stands still. [°C]
    upper_c : float, optional
        Temperature above which more warmth adds nothing. [°C] Above ``base_c``.
    method : HeatMethod
        ``AVERAGE`` takes the mean first and then sets it between the limits,
        ``CLAMPED`` sets both readings between the limits first, ``SINE`` lets the
        temperature swing through the day.

    Returns
    -------
    NDArray, shape (n,)
        Degree days, 0 or more. [°C-day] NaN where a reading is missing, or where the
        minimum stands above the maximum, which no day can do.

    Raises
    ------
    ValueError
        If the two series differ in length, or ``upper_c`` is not above ``base_c``.

    Notes
    -----
    ``max(0, (tmax + tmin) / 2 - base)`` is method 1 of [MCMASTER97]_; setting the
    readings first is its method 2, never below method 1, and the usual way with two
    limits ([UW-GDD]_, [MSU-GDD]_). Method 1 with an upper limit caps the mean, which
    is our own reading of it ([ASSUMED]_). With m the mean, a half the swing and
    theta = asin((L - m) / a), the single sine above a limit L is
    ``((m - L)(pi/2 - theta) + a cos(theta)) / pi``; the upper limit cuts it flat, so
    the sum above ``upper_c`` is taken off ([UCIPM-SINE]_). The same lines hold in °F.

    Examples
    --------
    >>> degree_days(tmin_c=[5.0], tmax_c=[25.0], base_c=10.0)
    array([7.5])
    >>> degree_days(
    ...     tmin_c=[5.0], tmax_c=[25.0], base_c=10.0, method=HeatMethod.AVERAGE
    ... )
    array([5.])
    """
    low = np.asarray(tmin_c, dtype=np.float64)
    high = np.asarray(tmax_c, dtype=np.float64)
    if low.shape != high.shape:
        raise ValueError("tmin_c and tmax_c differ in length")
    if upper_c is not None and upper_c <= base_c:
        raise ValueError("upper_c is not above base_c")
    low = np.where(low > high, np.nan, low)
    if method is HeatMethod.SINE:
        heat = _sine_above(low, high, base_c)
        if upper_c is not None:
            heat = heat - _sine_above(low, high, upper_c)
        # Rounding leaves a hair below 0 where the swing only touches the limit.
        return np.maximum(heat, 0.0)
    if method is HeatMethod.CLAMPED:
        low, high = np.clip(low, base_c, upper_c), np.clip(high, base_c, upper_c)
    return np.clip((low + high) / 2, base_c, upper_c) - base_c


def _sine_above(
    low: NDArray[np.float64], high: NDArray[np.float64], limit: float
) -> NDArray[np.float64]:
    mean, half = (high + low) / 2, (high - low) / 2
    # A flat day has no swing to divide by; it is wholly above or below the limit.
    swing = np.where(half > 0, half, 1.0)
    theta = np.arcsin(np.clip((limit - mean) / swing, -1.0, 1.0))
    part = ((mean - limit) * (np.pi / 2 - theta) + half * np.cos(theta)) / np.pi
    whole = np.where(low >= limit, mean - limit, part)
    return np.where(high <= limit, 0.0 * mean, whole)


def running_total(daily: ArrayLike) -> RunningTotal:
    """Return the running total of daily degree days, and of the days missing.

    Parameters
    ----------
    daily : array_like, shape (n,)
        Degree days of each day, 0 or more. [°C-day] NaN where missing.

    Returns
    -------
    RunningTotal
        Two arrays of shape (n + 1,). A missing day adds 0 and is counted.

    Raises
    ------
    ValueError
        If a day's sum is below 0.

    Notes
    -----
    ``total[i] = sum(daily[:i])``. Plain addition ([CALC]_).

    Examples
    --------
    >>> heat = running_total([7.5, float("nan"), 5.0])
    >>> heat.total, heat.missing
    (array([ 0. ,  7.5,  7.5, 12.5]), array([0, 0, 1, 1]))
    """
    days = np.asarray(daily, dtype=np.float64)
    if np.any(days < 0):
        raise ValueError("degree days below 0")
    gone = np.isnan(days)
    total = np.concatenate(([0.0], np.cumsum(np.where(gone, 0.0, days))))
    missing = np.concatenate(([0], np.cumsum(gone))).astype(np.int64)
    return RunningTotal(total=total, missing=missing)


def sum_between(running: RunningTotal, *, start: int, stop: int) -> float:
    """Return the degree days of the days from ``start`` up to ``stop``. [°C-day]

    Parameters
    ----------
    running : RunningTotal
        From :func:`running_total`, over n days.
    start, stop : int
        First day counted and the day after the last. [d] 0 ≤ start ≤ stop ≤ n.

    Returns
    -------
    float
        Sum over the half-open span. [°C-day] Missing days add nothing.

    Raises
    ------
    ValueError
        If the span does not lie inside the record.

    Notes
    -----
    ``total[stop] - total[start]`` ([CALC]_).

    Examples
    --------
    >>> sum_between(running_total([7.5, 2.0, 5.0]), start=1, stop=3)
    7.0
    """
    _check_span(running, start, stop)
    return float(running.total[stop] - running.total[start])


def missing_between(running: RunningTotal, *, start: int, stop: int) -> int:
    """Return how many days of a span have no reading. [d]

    Parameters
    ----------
    running : RunningTotal
        From :func:`running_total`, over n days.
    start, stop : int
        First day counted and the day after the last. [d] 0 ≤ start ≤ stop ≤ n.

    Returns
    -------
    int
        Days missing. [d]

    Raises
    ------
    ValueError
        If the span does not lie inside the record.

    Notes
    -----
    ``missing[stop] - missing[start]`` ([CALC]_).

    Examples
    --------
    >>> missing_between(running_total([7.5, float("nan"), 5.0]), start=0, stop=3)
    1
    """
    _check_span(running, start, stop)
    return int(running.missing[stop] - running.missing[start])


def day_reaching(running: RunningTotal, *, start: int, target: float) -> int | None:
    """Return the first day by whose end the sum since ``start`` meets the target.

    Parameters
    ----------
    running : RunningTotal
        From :func:`running_total`, over n days.
    start : int
        First day counted. [d] 0 ≤ start ≤ n.
    target : float
        Degree days wanted. [°C-day] 0 or more.

    Returns
    -------
    int or None
        Index of the day, ``start`` at the earliest; None if the record ends first.

    Raises
    ------
    ValueError
        If ``start`` is outside the record or ``target`` is below 0.

    Notes
    -----
    Least i with ``total[i + 1] - total[start] >= target``, found by halving the
    record ([CALC]_).

    Examples
    --------
    >>> day_reaching(running_total([7.5, 2.0, 5.0]), start=0, target=9.5)
    1
    """
    _check_span(running, start, len(running.total) - 1)
    if target < 0:
        raise ValueError("target below 0")
    goal = running.total[start] + target - ROUNDING
    day = max(int(np.searchsorted(running.total, goal)) - 1, start)
    return day if day < len(running.total) - 1 else None


def _check_span(running: RunningTotal, start: int, stop: int) -> None:
    if not 0 <= start <= stop < len(running.total):
        raise ValueError("the span does not lie inside the record")
