"""The season strip: one row a field, one season wide."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.templatetags.days import day_said
from reports.calc.shapes.basics import How, Span
from reports.calc.shapes.season import Ground, Strip, Tick, TickKind
from reports.drawings.pieces import frame, line, words
from reports.drawings.table import stretches
from reports.drawings.textures import box, mark, textures
from reports.labels import label

WIDTH = 700.0
NAME_WIDTH = 120.0
HEAD = 22.0
ROW = 40.0
BAND = 18.0
BAND_TOP = 11.0
LEGEND = 34.0
# A letter's width, near enough to set words of any language side by side.
LETTER = 5.2
# Marks above the band tell of growth, those below of its end.
BELOW = {TickKind.CUT, TickKind.ENDED}


@dataclass(frozen=True, slots=True)
class StripRow:
    """One field's name and season."""

    name: str
    strip: Strip


@dataclass(frozen=True, slots=True)
class Scale:
    """Days of the season laid along the width."""

    season: Span
    left: float

    def x(self, day: dt.date) -> float:
        """Where a day begins."""
        passed = (day - self.season.first).days
        return self.left + (WIDTH - self.left - 1) * passed / self.season.days

    def after(self, day: dt.date) -> float:
        """Where a day ends."""
        return self.x(day + dt.timedelta(days=1))


def season_strip(
    rows: Sequence[StripRow],
    season: Span,
    *,
    ident: str,
    title: str,
    legend: bool = True,
) -> SafeString:
    """Draw the seasons of one field or many; ``ident`` sets this drawing apart."""
    scale = Scale(season, NAME_WIDTH if len(rows) > 1 else 1.0)
    foot = HEAD + ROW * len(rows)
    parts = [textures(ident), *_months(scale, foot)]
    for place, row in enumerate(rows):
        parts += _row(row, scale, HEAD + ROW * place, ident, named=len(rows) > 1)
    if legend:
        parts += _legend(ident, foot + 6)
    height = foot + (LEGEND + 6 if legend else 2)
    return frame(
        *parts,
        ident=ident,
        width=WIDTH,
        height=height,
        title=title,
        desc=_("One row a field. The table that follows holds the same days."),
    )


def _months(scale: Scale, foot: float) -> Iterator[SafeString]:
    """A hairline and a name at the start of each month."""
    day = scale.season.first.replace(day=1)
    while day <= scale.season.last:
        nearest = max(day, scale.season.first)
        x = scale.x(nearest)
        yield line(x, 4, x, foot, stroke_width=0.4, stroke_opacity="0.5")
        yield words(day_said(day, "M"), x + 3, 13)
        day = (day + dt.timedelta(days=32)).replace(day=1)


def _row(
    row: StripRow, scale: Scale, top: float, ident: str, *, named: bool
) -> Iterator[SafeString]:
    band = top + BAND_TOP
    if named:
        yield words(_short(row.name), 0, band + 13, size=10)
    for part in stretches(row.strip, scale.season):
        left = scale.x(part.first)
        yield box(
            ident,
            part.ground,
            left,
            band + BAND * part.top,
            scale.after(part.last) - left,
            BAND * part.height,
        )
    for tick in row.strip.ticks:
        if tick.on in scale.season:
            yield from _tick(tick, scale.x(tick.on), band)


def _tick(tick: Tick, x: float, band: float) -> Iterator[SafeString]:
    seen = tick.how in {How.OBSERVED, How.SAMPLED}
    y = band + BAND + 6 if tick.kind in BELOW else band - 6
    edge = band + BAND if tick.kind in BELOW else band
    yield line(x, edge, x, (y + edge) / 2)
    yield mark(tick.kind, x, y, seen=seen)


def _short(name: str) -> str:
    """A name that stays in its column; the table gives it in full."""
    return name if len(name) <= 20 else f"{name[:19]}…"


def _legend(ident: str, top: float) -> Iterator[SafeString]:
    x = 1.0
    for ground in Ground:
        yield box(ident, ground, x, top, 22, 10)
        yield words(label(ground), x + 27, top + 8.5)
        x += max(110.0, 40 + LETTER * len(label(ground)))
    x = 5.0
    for kind in TickKind:
        yield mark(kind, x, top + 24)
        yield words(label(kind), x + 9, top + 27)
        x += max(80.0, 20 + LETTER * len(label(kind)))
    yield words(_("full: written down · open: worked out"), x, top + 27)
