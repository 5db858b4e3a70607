"""The stages of a stand along the days, each with its early and its late day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.templatetags.days import day_said
from reports.calc.shapes.ahead import Outlook, SpreadOf, StageOdds
from reports.drawings.pieces import Value, frame, line, piece, words
from reports.labels import label

# Narrow enough for a telephone: each stage is named above its bar.
WIDTH, ROW, LEFT, RIGHT, TOP, FOOT = 340.0, 34.0, 20.0, 20.0, 22.0, 22.0
MARGIN = dt.timedelta(days=5)
BAR = 9.0


def spread_plot(outlook: Outlook, *, today: dt.date, ident: str) -> SafeString:
    """Draw one row a stage; a bar from early to late, a mark on the likely day."""
    rows = [row for row in outlook.stages if row.on is not None]
    if not rows:
        return SafeString("")
    days = [day for row in rows for day in (row.early, row.on, row.late) if day]
    first, last = min(days) - MARGIN, max(days) + MARGIN
    height = TOP + ROW * len(rows) + FOOT
    parts = [*_axis(first, last, height), *_today(first, last, today, height)]
    for place, row in enumerate(rows):
        parts += _row(row, TOP + ROW * place + ROW - BAR, first, last)
    return frame(
        *parts,
        ident=ident,
        width=WIDTH,
        height=height,
        title=_("When each stage comes"),
        desc=_(
            "A bar from the early to the late day of each stage, a mark on the likely "
            "day. Full bars are the spread of the years, hatched ones the range in "
            "print, single marks what was seen."
        ),
    )


def _x(day: dt.date, first: dt.date, last: dt.date) -> float:
    whole = max((last - first).days, 1)
    return LEFT + (WIDTH - LEFT - RIGHT) * (day - first).days / whole


def _row(
    row: StageOdds, middle: float, first: dt.date, last: dt.date
) -> Iterator[SafeString]:
    assert row.on is not None
    early, late = row.early or row.on, row.late or row.on
    begin, end = _x(early, first, last), _x(late, first, last)
    yield words(label(row.name), 2, middle - BAR - 3)
    if row.spread is not SpreadOf.SEEN and end > begin:
        look: dict[str, Value] = {"fill": "currentColor", "fill_opacity": "0.3"}
        if row.spread is SpreadOf.FIGURES:
            look = {"fill": "none", "stroke_dasharray": "3 2"}
        yield piece(
            "rect",
            x=begin,
            y=middle - BAR / 2,
            width=end - begin,
            height=BAR,
            stroke="currentColor",
            stroke_width=0.75,
            **look,
        )
    at = _x(row.on, first, last)
    yield line(at, middle - BAR, at, middle + BAR, stroke_width=2)


def _axis(first: dt.date, last: dt.date, height: float) -> Iterator[SafeString]:
    base = height - FOOT
    yield line(LEFT, base, WIDTH - RIGHT, base)
    step = max(7, ((last - first).days // 5 + 6) // 7 * 7)
    day = first
    while day <= last:
        at = _x(day, first, last)
        yield line(at, base, at, base + 3)
        yield words(day_said(day, "j M"), at, base + 14, text_anchor="middle")
        day += dt.timedelta(days=step)


def _today(
    first: dt.date, last: dt.date, today: dt.date, height: float
) -> Iterator[SafeString]:
    if first <= today <= last:
        at = _x(today, first, last)
        yield line(at, TOP - 6, at, height - FOOT, stroke_dasharray="1 3")
        yield words(_("today"), at, TOP - 10, text_anchor="middle")
