"""The stand that comes by itself where a first one was let set seed."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SecondStand:
    """When a self-sown stand comes up, closes and ends; None where not known."""

    shed: dt.date
    up: dt.date
    closes: dt.date | None
    until: dt.date | None


def second_stand(
    *, ripe: dt.date, up_days: int, close_days: int | None, frost: dt.date | None
) -> SecondStand:
    """Return the days of a self-sown stand after the first was let ripen.

    Parameters
    ----------
    ripe : datetime.date
        Day on which most seed of the first stand is ripe and begins to fall.
    up_days : int
        Days from there to coming up. [d]
    close_days : int or None
        Days from there to a closed canopy. [d]
    frost : datetime.date or None
        Day of the frost that kills it, None where none is on record.

    Returns
    -------
    SecondStand
        It closes only where no frost comes first.

    Notes
    -----
    Seed that falls is taken to grow as seed that is sown on moist soil would; dry
    soil holds it up, which is not reckoned ([ASSUMED]_).

    Examples
    --------
    >>> second_stand(
    ...     ripe=dt.date(2026, 8, 1), up_days=4, close_days=21,
    ...     frost=dt.date(2026, 8, 15),
    ... ).closes is None
    True
    """
    up = ripe + dt.timedelta(up_days)
    closes = None if close_days is None else ripe + dt.timedelta(close_days)
    if closes is not None and frost is not None and frost <= closes:
        closes = None
    return SecondStand(ripe, up, closes, frost)
