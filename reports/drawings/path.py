"""The way from seed to sale, drawn: one column for each kind of record."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from django.utils.formats import date_format
from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from reports.calc.shapes.ledger import Ending
from reports.calc.shapes.trace import Link, Stop, Trace
from reports.drawings.pieces import frame, line, piece, words
from reports.labels import label

# Kinds of record that share a column, from left to right.
COLUMNS = (
    (Link.SUPPLIER, Link.INPUT),
    (Link.SEED, Link.PUT_ON, Link.FIELD),
    (Link.PLANTING,),
    (Link.ENDED, Link.HARVEST),
    (Link.STORE, Link.SALE),
)
WIDE, TALL, APART, TOP, MARGIN = 150.0, 34.0, 46.0, 22.0, 40.0
MOST_LETTERS = 24
# More stops than this in a column are told by the table only.
MOST_DRAWN = 14


def trace_path(trace: Trace, *, ident: str) -> SafeString:
    """Draw the stops as boxes, the steps as lines; the start has a thick frame."""
    places = dict(_places(trace))
    height = TOP + APART * max(1, _tallest(trace)) + 4
    parts = [
        _step(places[one.key], places[other.key])
        for one, other in trace.steps
        if one.key in places and other.key in places
    ]
    for stop in trace.stops:
        if stop.key in places:
            parts += list(_box(stop, *places[stop.key], start=stop == trace.start))
    return frame(
        *parts,
        ident=ident,
        width=len(COLUMNS) * (WIDE + MARGIN) - MARGIN,
        height=height,
        title=_("The way of %(name)s") % {"name": trace.start.name},
        desc=_("From where it came on the left to where it went on the right."),
    )


def _places(trace: Trace) -> Iterator[tuple[tuple[str, int], tuple[float, float]]]:
    """Where each stop stands, column by column."""
    rows: defaultdict[int, int] = defaultdict(int)
    for stop in trace.stops:
        column = next(n for n, links in enumerate(COLUMNS) if stop.link in links)
        if rows[column] < MOST_DRAWN:
            x, y = column * (WIDE + MARGIN), TOP + rows[column] * APART
            yield stop.key, (x, y)
        rows[column] += 1


def _tallest(trace: Trace) -> int:
    counts = [sum(stop.link in links for stop in trace.stops) for links in COLUMNS]
    return min(MOST_DRAWN, max(counts))


def _step(here: tuple[float, float], there: tuple[float, float]) -> SafeString:
    middle = TALL / 2
    return line(here[0] + WIDE, here[1] + middle, there[0], there[1] + middle)


def _box(stop: Stop, x: float, y: float, *, start: bool) -> Iterator[SafeString]:
    yield piece(
        "rect",
        x=x + 0.5,
        y=y,
        width=WIDE - 1,
        height=TALL,
        class_="sheet",
        fill="white",
        stroke="currentColor",
        stroke_width=2.4 if start else 0.8,
    )
    day = f", {date_format(stop.on, 'j M Y')}" if stop.on else ""
    yield words(f"{label(stop.link)}{day}", x + 6, y + 13, size=8)
    name = label(Ending(stop.name)) if stop.link is Link.ENDED else stop.name
    if len(name) > MOST_LETTERS:
        name = name[: MOST_LETTERS - 1] + "…"
    yield words(name, x + 6, y + 27, size=10)
