"""How a window stands on a day: open, opening, closing, missed or later."""

from __future__ import annotations

import datetime as dt

from reports.calc.shapes.ahead import WindowState

SOON_D = 7  # d, a window that opens or closes within it is told, [ASSUMED]
MISSED_D = 21  # d, so long a missed window is told, [ASSUMED]


def state_of(
    opens: dt.date | None, closes: dt.date | None, *, today: dt.date
) -> WindowState:
    """Return how a window stands on a day.

    Parameters
    ----------
    opens, closes : datetime.date or None
        First and last good day; None where not known, and then open on that side.
    today : datetime.date
        The day asked for.

    Returns
    -------
    WindowState
        Closing and opening within a week; missed for three weeks after the last day,
        then over.

    Notes
    -----
    Our own choice of days ([ASSUMED]_).

    Examples
    --------
    >>> day = dt.date
    >>> state_of(day(2026, 7, 1), day(2026, 7, 20), today=day(2026, 7, 5)).value
    'open'
    """
    if closes is not None and today > closes:
        since = (today - closes).days
        return WindowState.MISSED if since <= MISSED_D else WindowState.OVER
    if opens is not None and today < opens:
        soon = (opens - today).days <= SOON_D
        return WindowState.OPENING if soon else WindowState.LATER
    if closes is not None and (closes - today).days <= SOON_D:
        return WindowState.CLOSING
    return WindowState.OPEN
