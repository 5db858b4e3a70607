"""How a residue goes over the days, with the years or the figures as a band."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from reports.calc.shapes.basics import Between
from reports.drawings.pieces import frame, line, piece, words

WIDTH, HEIGHT = 340.0, 176.0
LEFT, RIGHT, TOP, FOOT = 44.0, 84.0, 20.0, 32.0
LEAST_APART = 10.0
Point = tuple[int, float]
Row = tuple[int, Between, float]


def band(
    rows: Sequence[Row], *, ident: str, highest: float, unit: str, title: str, desc: str
) -> SafeString:
    """Draw a line with its band; broken edges, so that it is told without grey."""
    longest = rows[-1][0] or 1
    upper = [(day, span.high) for day, span, _middle in rows]
    lower = [(day, span.low) for day, span, _middle in rows]
    middle = [(day, share) for day, _span, share in rows]
    ends = [(_("high"), upper), (_("middle"), middle), (_("low"), lower)]
    whole = " ".join(_dots([*upper, *reversed(lower)], longest, highest))
    return frame(
        piece("polygon", points=whole, fill="currentColor", fill_opacity="0.14"),
        _line(upper, longest, highest, dash="2 3", wide=0.9),
        _line(lower, longest, highest, dash="2 3", wide=0.9),
        _line(middle, longest, highest, dash="none", wide=1.8),
        *_axes(longest, highest, unit),
        *_ends(ends, longest, highest),
        ident=ident,
        width=WIDTH,
        height=HEIGHT,
        title=title,
        desc=desc,
    )


def lines(
    paths: Sequence[tuple[str, str, Sequence[Point]]],
    *,
    ident: str,
    unit: str,
    title: str,
    desc: str,
) -> SafeString:
    """Draw several shares as lines, each with its own dashes and its own word."""
    longest = paths[0][2][-1][0] or 1
    ends = [(word, points) for word, _dash, points in paths]
    return frame(
        *(
            _line(points, longest, 1.0, dash=dash, wide=1.8)
            for _w, dash, points in paths
        ),
        *_axes(longest, 1.0, unit),
        *_ends(ends, longest, 1.0),
        ident=ident,
        width=WIDTH,
        height=HEIGHT,
        title=title,
        desc=desc,
    )


def _at(
    day: float, value: float, longest: float, highest: float
) -> tuple[float, float]:
    wide, tall = WIDTH - LEFT - RIGHT, HEIGHT - TOP - FOOT
    return LEFT + wide * day / longest, TOP + tall * (1 - value / highest)


def _dots(points: Sequence[Point], longest: float, highest: float) -> list[str]:
    at = (_at(day, value, longest, highest) for day, value in points)
    return [f"{x:.1f},{y:.1f}" for x, y in at]


def _line(
    points: Sequence[Point], longest: float, highest: float, *, dash: str, wide: float
) -> SafeString:
    return piece(
        "polyline",
        points=" ".join(_dots(points, longest, highest)),
        fill="none",
        stroke="currentColor",
        stroke_width=wide,
        stroke_dasharray=dash,
    )


def _ends(
    paths: Sequence[tuple[str, Sequence[Point]]], longest: float, highest: float
) -> Iterator[SafeString]:
    """The word of each line at its end, moved down where two would touch."""
    told = [(_at(*points[-1], longest, highest)[1], word) for word, points in paths]
    told.sort(key=lambda one: one[0])
    last, at = TOP - LEAST_APART, []
    for y, _word in told:
        last = max(y, last + LEAST_APART)
        at.append(last)
    over = max(last - (HEIGHT - FOOT), 0.0)
    for y, (_y, word) in zip(at, told, strict=True):
        yield words(word, WIDTH - RIGHT + 4, y - over + 3)


def _axes(longest: float, highest: float, unit: str) -> Iterator[SafeString]:
    base, right = HEIGHT - FOOT, WIDTH - RIGHT
    yield line(LEFT, base, right, base)
    yield line(LEFT, TOP, LEFT, base)
    yield words(unit, 2, 11)
    for part in (0.0, 0.5, 1.0):
        y = _at(0, highest * part, longest, highest)[1]
        value = highest * part * (100 if unit.startswith("%") else 1)
        yield line(LEFT - 3, y, LEFT, y)
        yield words(f"{value:,.4g}", LEFT - 5, y + 3, text_anchor="end")
    for day in (0, longest / 2, longest):
        x = _at(day, 0, longest, highest)[0]
        yield words(f"{day:.0f}", x, base + 13, text_anchor="middle")
    middle = (LEFT + right) / 2
    yield words(_("days after the end"), middle, base + 26, text_anchor="middle")
