"""When to cut and when to end a stand, by its flowering."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from reports.calc.shapes.ahead import Why

DAY = dt.timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Days:
    """A first and a last day, and why each."""

    opens: dt.date | None
    closes: dt.date | None
    opens_why: Why
    closes_why: Why


def bloom_day(
    *, first_flower: dt.date, full_bloom: dt.date, share: float, full_share: float
) -> dt.date:
    """Return the day on which a share of the plants is in bloom.

    Parameters
    ----------
    first_flower, full_bloom : datetime.date
        Days of the two stages, in this order.
    share : float
        Share of plants in bloom asked for. [0–1]
    full_share : float
        Share that is called full bloom. [0–1] Above 0.

    Returns
    -------
    datetime.date
        Not before first flower and not after full bloom.

    Raises
    ------
    ValueError
        If full bloom comes first, or a share is outside its range.

    Notes
    -----
    A straight line between the two stages ([ASSUMED]_).

    Examples
    --------
    >>> bloom_day(
    ...     first_flower=dt.date(2026, 7, 1), full_bloom=dt.date(2026, 7, 7),
    ...     share=0.25, full_share=0.5,
    ... )
    datetime.date(2026, 7, 4)
    """
    if full_bloom < first_flower or not 0 <= share <= 1 or not 0 < full_share <= 1:
        raise ValueError("full bloom before first flower, or a share out of range")
    part = min(share / full_share, 1.0)
    return first_flower + dt.timedelta(int((full_bloom - first_flower).days * part))


def cut_days(
    *, closed: dt.date | None, limit_on: dt.date | None, frost: dt.date | None = None
) -> Days:
    """Return the days on which a stand may be cut and will grow back.

    Parameters
    ----------
    closed : datetime.date or None
        Day its canopy closes.
    limit_on : datetime.date or None
        Day on which its bloom passes the kind's limit; None where no limit is known.
    frost : datetime.date or None
        A killing frost after which nothing grows back.

    Returns
    -------
    Days
        The last day is the one before the limit, or before the frost if that comes
        first.

    Notes
    -----
    A stand cut before it has closed has little to grow back from ([ASSUMED]_); the
    limit is the kind's own figure ([COMMON]_).

    Examples
    --------
    >>> cut_days(closed=None, limit_on=dt.date(2026, 7, 4)).closes
    datetime.date(2026, 7, 3)
    """
    last = None if limit_on is None else limit_on - DAY
    why = Why.NOT_KNOWN if last is None else Why.BLOOM_LIMIT
    if frost is not None and (last is None or frost <= last):
        last, why = frost - DAY, Why.KILLING_FROST
    opens_why = Why.NOT_KNOWN if closed is None else Why.CANOPY_CLOSED
    return Days(closed, last, opens_why, why)


def end_days(
    *,
    first_flower: dt.date | None,
    after_days: tuple[int, int] | None,
    viable_seed: dt.date | None,
    printed: tuple[dt.date, dt.date] | None = None,
    printed_why: Why = Why.SOURCE_MOWING,
) -> Days:
    """Return the days on which to end a stand so that it sets no seed.

    Parameters
    ----------
    first_flower, viable_seed : datetime.date or None
        Days of the two stages.
    after_days : tuple of int or None
        First and last day after first flower, by the kind's figure. [d]
    printed : tuple of datetime.date or None
        First and last day that a source prints for this way of ending, which then
        takes the place of days after flowering.
    printed_why : Why
        Which way of ending the source speaks of.

    Returns
    -------
    Days
        Never past the day before its seed can sprout, unless the source that prints
        the days says so.

    Notes
    -----
    From flowering by the kind's figure; a printed timetable goes before it
    ([CORN-HB-KEY]_, [OMAFRA-BW]_).

    Examples
    --------
    >>> end_days(
    ...     first_flower=dt.date(2026, 7, 1), after_days=(7, 10), viable_seed=None
    ... ).closes
    datetime.date(2026, 7, 11)
    """
    if printed is not None:
        return Days(*printed, printed_why, printed_why)
    if first_flower is None or after_days is None:
        before = None if viable_seed is None else viable_seed - DAY
        why = Why.NOT_KNOWN if before is None else Why.SEED_CAN_SPROUT
        return Days(None, before, Why.NOT_KNOWN, why)
    first = first_flower + dt.timedelta(after_days[0])
    last = first_flower + dt.timedelta(after_days[1])
    if viable_seed is not None and viable_seed <= last:
        return Days(
            min(first, viable_seed - DAY),
            viable_seed - DAY,
            Why.AFTER_FIRST_FLOWER,
            Why.SEED_CAN_SPROUT,
        )
    return Days(first, last, Why.AFTER_FIRST_FLOWER, Why.DAYS_AFTER_FLOWER_UP)
