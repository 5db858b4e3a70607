"""Three years of one field: cash crops above, covers below, a line at each year."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from django.utils.safestring import SafeString
from django.utils.translation import get_language
from django.utils.translation import gettext as _

from farm.templatetags.days import day_said
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import Ground
from reports.drawings.pieces import Way, frame, lines, words
from reports.drawings.textures import boxes, textures

WIDTH, LEFT, HEAD, LANE = 700.0, 70.0, 16.0, 14.0
QUARTER = 3


@dataclass(frozen=True, slots=True)
class Stay:
    """What stood on a field from one day to another."""

    is_cash: bool
    first: dt.date
    last: dt.date


def months_strip(
    stays: Iterable[Stay], years: Span, *, ident: str, title: str
) -> SafeString:
    """Draw what stood on a field; ``ident`` sets this drawing apart from others."""
    foot = HEAD + 2 * LANE
    grounds = dict(_grounds(stays, years))
    return frame(
        textures(ident, grounds),
        *_quarters(years, foot, get_language()),
        words(_("cash crop"), 0, HEAD + LANE - 4),
        words(_("cover"), 0, foot - 4),
        *(boxes(ident, ground, ways) for ground, ways in grounds.items()),
        ident=ident,
        width=WIDTH,
        height=foot + 4,
        title=title,
        desc=_("The table that follows holds the same days."),
    )


def _grounds(stays: Iterable[Stay], years: Span) -> Iterator[tuple[Ground, list[Way]]]:
    """Each kind of ground there was, with the corners of its boxes."""
    told = list(stays)
    lanes = ((Ground.CASH, True, HEAD), (Ground.LIVING, False, HEAD + LANE))
    for ground, is_cash, top in lanes:
        ways = []
        for one in (stay for stay in told if stay.is_cash is is_cash):
            left = _x(one.first, years)
            right = max(left + 1, _x(one.last + dt.timedelta(days=1), years))
            ways.append((left, top, right, top + LANE - 2))
        if ways:
            yield ground, ways


def _x(day: dt.date, years: Span) -> float:
    nearest = min(max(day, years.first), years.last + dt.timedelta(days=1))
    passed = (nearest - years.first).days
    return LEFT + (WIDTH - LEFT - 1) * passed / years.days


@lru_cache(maxsize=8)
def _quarters(years: Span, foot: float, _language: str) -> tuple[SafeString, ...]:
    """The same lines and words lie behind every field of a paper."""
    return tuple(_drawn(years, foot))


def _drawn(years: Span, foot: float) -> Iterator[SafeString]:
    starts = [day for day in _months(years) if (day.month - 1) % QUARTER == 0]
    for heavy, new_year in ((0.4, False), (1.0, True)):
        ways = [
            (_x(day, years), 3.0, _x(day, years), foot)
            for day in starts
            if (day.month == 1) is new_year
        ]
        yield lines(ways, stroke_width=heavy, stroke_opacity="0.6")
    for day in starts:
        told = day_said(day, "Y" if day.month == 1 else "M")
        yield words(told, _x(day, years) + 3, 11, size=8)


def _months(years: Span) -> Iterator[dt.date]:
    """The first days of months."""
    day = years.first.replace(day=1)
    while day <= years.last:
        if day >= years.first:
            yield day
        day = (day + dt.timedelta(days=32)).replace(day=1)
