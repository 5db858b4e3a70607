"""What is left of a residue over the days, with the spread of the years as a band."""

from __future__ import annotations

from collections.abc import Sequence

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from reports.calc.shapes.basics import Between
from reports.calc.shapes.wishes import YearsPoint
from reports.drawings.pieces import frame, line, piece, words

WIDTH, HEIGHT = 340.0, 170.0
LEFT, RIGHT, TOP, FOOT = 30.0, 76.0, 14.0, 30.0
Row = tuple[int, Between, float]


def cover_band(points: Sequence[YearsPoint], *, ident: str) -> SafeString:
    """Draw the ground covered by residue left on top, the middle and its band."""
    rows = [(one.offset_days, one.cover, one.cover_middle) for one in points]
    return _band(
        rows,
        ident=ident,
        highest=1.0,
        title=_("Ground covered by residue left on top"),
        word=_("covered"),
    )


def mass_band(points: Sequence[YearsPoint], *, ident: str, on_top: bool) -> SafeString:
    """Draw the share of the mass left, on top or worked in."""
    if not points:
        return SafeString("")
    whole = points[0].on_top_middle_kg_m2 or 1.0
    rows: list[Row] = []
    for one in points:
        span = one.on_top_kg_m2 if on_top else one.worked_in_kg_m2
        middle = one.on_top_middle_kg_m2 if on_top else one.worked_in_middle_kg_m2
        share = Between(span.low / whole, span.high / whole)
        rows.append((one.offset_days, share, middle / whole))
    title = _("Mass left on top") if on_top else _("Mass left, worked in")
    return _band(rows, ident=ident, highest=1.0, title=title, word=_("left"))


def _band(
    rows: Sequence[Row], *, ident: str, highest: float, title: str, word: str
) -> SafeString:
    if not rows:
        return SafeString("")
    longest = rows[-1][0] or 1

    def at(day: float, share: float) -> str:
        wide, tall = WIDTH - LEFT - RIGHT, HEIGHT - TOP - FOOT
        x = LEFT + wide * day / longest
        return f"{x:.1f},{TOP + tall * (1 - share / highest):.1f}"

    upper = [at(day, span.high) for day, span, _middle in rows]
    lower = [at(day, span.low) for day, span, _middle in reversed(rows)]
    middle = " ".join(at(day, share) for day, _span, share in rows)
    base, end = HEIGHT - FOOT, at(*_last(rows)).split(",")
    return frame(
        piece(
            "polygon",
            points=" ".join([*upper, *lower]),
            fill="currentColor",
            fill_opacity="0.18",
        ),
        piece(
            "polyline",
            points=middle,
            fill="none",
            stroke="currentColor",
            stroke_width=1.6,
        ),
        line(LEFT, base, WIDTH - RIGHT, base),
        line(LEFT, TOP, LEFT, base),
        words("100 %", LEFT - 4, TOP + 3, text_anchor="end", size=8),
        words("0", LEFT - 4, base + 3, text_anchor="end", size=8),
        words(word, float(end[0]) + 4, float(end[1]) + 3),
        words(str(longest), WIDTH - RIGHT, base + 12, text_anchor="middle"),
        words(_("days after the end"), LEFT + 100, base + 24, text_anchor="middle"),
        ident=ident,
        width=WIDTH,
        height=HEIGHT,
        title=title,
        desc=_("A line for the middle of the years, a band from one in ten to nine."),
    )


def _last(rows: Sequence[Row]) -> tuple[int, float]:
    day, _span, share = rows[-1]
    return day, share
