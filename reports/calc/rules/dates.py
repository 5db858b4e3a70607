"""The days and hours that rules count out: from when, and until when."""

from __future__ import annotations

import datetime as dt

MONTHS_A_YEAR = 12


def add_months(day: dt.date, months: int) -> dt.date:
    """Return the same day of a later month; one that month lacks is the next day.

    Parameters
    ----------
    day : datetime.date
        From when.
    months : int
        How many months on, any sign. [months]

    Returns
    -------
    datetime.date
        29 February and a year is 1 March: the later day is the careful one.

    Examples
    --------
    >>> add_months(dt.date(2024, 2, 29), 36)
    datetime.date(2027, 3, 1)
    """
    years, month = divmod(day.month - 1 + months, MONTHS_A_YEAR)
    try:
        return day.replace(year=day.year + years, month=month + 1)
    except ValueError:
        return _first_of(day, months + 1)


def last_of_season(day: dt.date, *, first: dt.date) -> dt.date:
    """Return the last day of the season a day lies in.

    Parameters
    ----------
    day : datetime.date
        Any day, before or after ``first``.
    first : datetime.date
        The first day of any season of the farm: the first of a month.

    Examples
    --------
    >>> last_of_season(dt.date(2026, 2, 28), first=dt.date(2027, 3, 1))
    datetime.date(2026, 2, 28)
    """
    years = day.year - first.year
    if add_months(first, MONTHS_A_YEAR * years) <= day:
        years += 1
    return add_months(first, MONTHS_A_YEAR * years) - dt.timedelta(days=1)


def land_clean_from(last_used_on: dt.date, *, months: int) -> dt.date:
    """Return the first day that lies the whole period after a substance [CFR205]_.

    Examples
    --------
    >>> land_clean_from(dt.date(2022, 10, 15), months=36)
    datetime.date(2025, 10, 15)
    """
    return add_months(last_used_on, months)


def earliest_harvest(worked_in_on: dt.date | None, *, days: int) -> dt.date | None:
    """Return the first day of harvest after raw manure was worked in [CFR205]_.

    None where it was left on top: the interval has not begun.

    Examples
    --------
    >>> earliest_harvest(dt.date(2025, 3, 1), days=120)
    datetime.date(2025, 6, 29)
    """
    return None if worked_in_on is None else worked_in_on + dt.timedelta(days=days)


def last_ship_day(tested_on: dt.date, *, months: int) -> dt.date:
    """Return the last day a tag holds between States, by its test month [CFR201T]_.

    Examples
    --------
    >>> last_ship_day(dt.date(2025, 9, 1), months=5)
    datetime.date(2026, 2, 28)
    """
    return _first_of(tested_on, months + 1) - dt.timedelta(days=1)


def reentry_over(ended_at: dt.datetime, *, hours: float) -> dt.datetime:
    """Return when the label's re-entry interval is over.

    Examples
    --------
    >>> reentry_over(dt.datetime(2026, 5, 1, 14), hours=12)
    datetime.datetime(2026, 5, 2, 2, 0)
    """
    return ended_at + dt.timedelta(hours=hours)


def post_by(
    ended_at: dt.datetime, *, hours: float, first_entry: dt.datetime | None = None
) -> dt.datetime:
    """Return by when a treatment must be posted: before anybody goes in [CFR170]_.

    Examples
    --------
    >>> post_by(dt.datetime(2026, 5, 1, 14), hours=24)
    datetime.datetime(2026, 5, 2, 14, 0)
    """
    due = ended_at + dt.timedelta(hours=hours)
    return due if first_entry is None else min(due, first_entry)


def posted_until(
    ended_at: dt.datetime, *, reentry_hours: float, days: int
) -> dt.datetime:
    """Return until when the posting stays up after the interval [CFR170]_.

    Examples
    --------
    >>> posted_until(dt.datetime(2026, 5, 1, 14), reentry_hours=12, days=30)
    datetime.datetime(2026, 6, 1, 2, 0)
    """
    return reentry_over(ended_at, hours=reentry_hours) + dt.timedelta(days=days)


def posting_kept_until(
    ended_at: dt.datetime, *, reentry_hours: float, years: int
) -> dt.date:
    """Return until when what was posted is kept [CFR170]_.

    Examples
    --------
    >>> posting_kept_until(dt.datetime(2026, 5, 1, 14), reentry_hours=12, years=2)
    datetime.date(2028, 5, 2)
    """
    over = reentry_over(ended_at, hours=reentry_hours).date()
    return add_months(over, years * MONTHS_A_YEAR)


def recorded_by(applied_on: dt.date, *, days: int) -> dt.date:
    """Return by when a restricted-use product must be in the books [CFR110]_.

    Examples
    --------
    >>> recorded_by(dt.date(2026, 5, 1), days=14)
    datetime.date(2026, 5, 15)
    """
    return applied_on + dt.timedelta(days=days)


def terminate_by(
    planting_on: dt.date, *, days_before: int, up_on: dt.date | None = None
) -> dt.date:
    """Return the last day to end a cover ahead of the crop [RMA-TERM]_.

    ``days_before`` is below zero where the guideline lets it stand past planting,
    though never to the day ``up_on`` on which the crop was up.

    Examples
    --------
    >>> terminate_by(dt.date(2026, 5, 20), days_before=35)
    datetime.date(2026, 4, 15)
    """
    by = planting_on - dt.timedelta(days=days_before)
    return by if up_on is None else min(by, up_on - dt.timedelta(days=1))


def kept_until(*days: dt.date | None, years: int) -> dt.date:
    """Return until when a record is kept: years after the latest of its days.

    Raises
    ------
    ValueError
        If no day is given.

    Examples
    --------
    >>> kept_until(dt.date(2025, 4, 2), dt.date(2026, 1, 10), years=5)
    datetime.date(2031, 1, 10)
    """
    latest = max(day for day in days if day is not None)
    return add_months(latest, years * MONTHS_A_YEAR)


def in_season(
    sown_on: dt.date,
    ended_on: dt.date | None,
    *,
    first: dt.date,
    last: dt.date,
) -> bool:
    """Tell whether a stand is told in a season: it stood on one of its days.

    Examples
    --------
    >>> rye = dt.date(2025, 9, 20), dt.date(2026, 5, 5)
    >>> [in_season(*rye, first=dt.date(y, 1, 1), last=dt.date(y, 12, 31))
    ...  for y in (2024, 2025, 2026, 2027)]
    [False, True, True, False]
    """
    return sown_on <= last and (ended_on is None or ended_on >= first)


def _first_of(day: dt.date, months: int) -> dt.date:
    years, month = divmod(day.month - 1 + months, MONTHS_A_YEAR)
    return dt.date(day.year + years, month + 1, 1)
