"""The way from seed to sale, drawn: one column for each kind of record."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.templatetags.days import day_said
from reports.calc.shapes.ledger import Ending
from reports.calc.shapes.trace import Link, Stop, Trace
from reports.drawings.pieces import Value, frame, line, piece, words
from reports.labels import label

# Kinds of record that share a column, from left to right.
COLUMNS = (
    (Link.SUPPLIER, Link.INPUT),
    (Link.SEED, Link.INPUT_LOT, Link.FIELD),
    (Link.PUT_ON,),
    (Link.PLANTING,),
    (Link.ENDED, Link.HARVEST),
    (Link.STORE, Link.SALE),
)
WIDE, TALL, APART, TOP, MARGIN = 120.0, 46.0, 56.0, 4.0, 22.0
MOST_LETTERS = 22
# More stops than this in a column are told by the table only.
MOST_DRAWN = 14


def trace_path(trace: Trace, *, ident: str) -> SafeString:
    """Draw stops as boxes, steps as lines; a missing link is named in a dashed box."""
    places = dict(_places(trace))
    lacks = _lacks(trace)
    parts = [
        _step(places[one.key], places[other.key])
        for one, other in trace.steps
        if one.key in places and other.key in places
    ]
    for stop in trace.stops:
        if stop.key in places:
            thick = stop == trace.start
            parts += _box(stop, *places[stop.key], thick, lacks.get(stop.key, ""))
    return frame(
        *parts,
        ident=ident,
        width=len(COLUMNS) * (WIDE + MARGIN) - MARGIN,
        height=TOP + APART * max(1, _tallest(trace)),
        title=_("The way of %(name)s") % {"name": trace.start.name},
        desc=_(
            "From where it came on the left to where it went on the right. The table "
            "that follows names every stop, and every link that is missing."
        ),
    )


def _lacks(trace: Trace) -> dict[tuple[str, int], str]:
    """What is missing at a stop, in words."""
    told: defaultdict[tuple[str, int], list[str]] = defaultdict(list)
    for gap in trace.gaps:
        told[gap.at.key].append(label(gap.missing))
    return {key: ", ".join(names) for key, names in told.items()}


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


def _box(
    stop: Stop, x: float, y: float, thick: bool, lack: str
) -> Iterator[SafeString]:
    more: dict[str, Value] = {"stroke_dasharray": "4 3"} if lack else {}
    yield piece(
        "rect",
        x=x + 0.5,
        y=y,
        width=WIDE - 1,
        height=TALL,
        class_="sheet",
        fill="white",
        stroke="currentColor",
        stroke_width=2.4 if thick else 0.8,
        **more,
    )
    day = f", {day_said(stop.on, 'j M Y')}" if stop.on else ""
    yield words(f"{label(stop.link)}{day}", x + 5, y + 12, size=8)
    name = label(Ending(stop.name)) if stop.link is Link.ENDED else stop.name
    yield words(_short(name), x + 5, y + 26, size=10)
    if lack:
        says = _("missing: %(what)s") % {"what": lack}
        yield words(_short(says), x + 5, y + 39, size=8, font_style="italic")


def _short(text: str) -> str:
    return text if len(text) <= MOST_LETTERS else f"{text[: MOST_LETTERS - 1]}…"
