"""Three years of one field: cash crops above, covers below, a line at each year."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.templatetags.days import day_said
from reports.calc.shapes.basics import Span
from reports.calc.shapes.season import Ground
from reports.drawings.pieces import frame, line, words
from reports.drawings.textures import box, textures

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
    parts = [textures(ident), *_quarters(years, foot)]
    parts.append(words(_("cash crop"), 0, HEAD + LANE - 4))
    parts.append(words(_("cover"), 0, foot - 4))
    for one in stays:
        left, right = _x(one.first, years), _x(one.last + dt.timedelta(days=1), years)
        ground = Ground.CASH if one.is_cash else Ground.LIVING
        top = HEAD if one.is_cash else HEAD + LANE
        parts.append(box(ident, ground, left, top, max(1.0, right - left), LANE - 2))
    return frame(
        *parts,
        ident=ident,
        width=WIDTH,
        height=foot + 4,
        title=title,
        desc=_("The table that follows holds the same days."),
    )


def _x(day: dt.date, years: Span) -> float:
    nearest = min(max(day, years.first), years.last + dt.timedelta(days=1))
    passed = (nearest - years.first).days
    return LEFT + (WIDTH - LEFT - 1) * passed / years.days


def _quarters(years: Span, foot: float) -> Iterator[SafeString]:
    day = years.first.replace(day=1)
    while day <= years.last:
        if (day.month - 1) % QUARTER == 0 and day >= years.first:
            x, new_year = _x(day, years), day.month == 1
            heavy = 1.0 if new_year else 0.4
            yield line(x, 3, x, foot, stroke_width=heavy, stroke_opacity="0.6")
            told = "Y" if new_year else "M"
            yield words(day_said(day, told), x + 3, 11, size=8)
        day = (day + dt.timedelta(days=32)).replace(day=1)
