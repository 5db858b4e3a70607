"""Days of a field on which nothing grows and nothing is planned."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from reports.calc.shapes.basics import Span

GAP_LEAST_D = 14  # d, shorter ones are no time for a cover, [ASSUMED]
DAY = dt.timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Held:
    """Days on which something grows or is planned; ``last`` None has no end."""

    first: dt.date
    last: dt.date | None


def stretches(held: Iterable[Held], *, within: Span) -> tuple[Span, ...]:
    """Return the days in between, those too short left out.

    Parameters
    ----------
    held : iterable of Held
        In any order; they may overlap.
    within : Span
        First and last day looked at.

    Returns
    -------
    tuple of Span
        Every run of 14 days or more that nothing holds, in order.

    Notes
    -----
    One sweep by first day ([CALC]_).

    Examples
    --------
    >>> day = dt.date
    >>> stretches(
    ...     [Held(day(2026, 6, 1), day(2026, 6, 30))],
    ...     within=Span(day(2026, 6, 10), day(2026, 7, 31)),
    ... )[0].days
    31
    """
    free = within.first
    out = []
    for row in sorted(held, key=lambda one: one.first):
        before = min(row.first - DAY, within.last)
        if (before - free).days + 1 >= GAP_LEAST_D:
            out.append(Span(free, before))
        if row.last is None:
            return tuple(out)
        free = max(free, row.last + DAY)
    if (within.last - free).days + 1 >= GAP_LEAST_D:
        out.append(Span(free, within.last))
    return tuple(out)
