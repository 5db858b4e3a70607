"""The way from seed to sale, drawn: one column for each kind of record."""

from __future__ import annotations

import textwrap
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
WIDE, APART, TOP, MARGIN = 146.0, 10.0, 4.0, 22.0
# A box with room for what is missing, and one without.
TALL, LOW = 66.0, 51.0
# Wide letters must still fit into a box; of a name, on each of two lines.
LETTERS, NAME_LETTERS, NAME_LINES = 26, 19, 2
# A way of few columns is drawn no larger than one of four.
LEAST_COLUMNS = 4
# More stops than this in a column are told by the table only.
MOST_DRAWN = 14


def trace_path(trace: Trace, *, ident: str) -> SafeString:
    """Draw stops as boxes, steps as lines; a missing link is named in a dashed box."""
    columns, lacks = _columns(trace), _lacks(trace)
    tall = TALL if lacks else LOW
    places = dict(_places(trace, columns, tall))
    parts = [
        _step(places[one.key], places[other.key], tall / 2)
        for one, other in trace.steps
        if one.key in places and other.key in places
    ]
    for stop in trace.stops:
        if stop.key in places:
            thick = stop == trace.start
            parts += _box(stop, *places[stop.key], tall, thick, lacks.get(stop.key, ""))
    return frame(
        *parts,
        ident=ident,
        width=max(LEAST_COLUMNS, len(columns)) * (WIDE + MARGIN) - MARGIN,
        height=TOP + (tall + APART) * max(1, _tallest(trace)),
        title=_("The way of %(name)s") % {"name": trace.start.name},
        desc=_(
            "From where it came on the left to where it went on the right. The table "
            "that follows names every stop, and every link that is missing."
        ),
    )


def _columns(trace: Trace) -> list[tuple[Link, ...]]:
    """The columns that have a stop in them."""
    there = {stop.link for stop in trace.stops}
    return [links for links in COLUMNS if there & set(links)]


def _lacks(trace: Trace) -> dict[tuple[str, int], str]:
    """What is missing at a stop, in words."""
    told: defaultdict[tuple[str, int], list[str]] = defaultdict(list)
    for gap in trace.gaps:
        told[gap.at.key].append(label(gap.missing))
    return {key: ", ".join(names) for key, names in told.items()}


def _places(
    trace: Trace, columns: list[tuple[Link, ...]], tall: float
) -> Iterator[tuple[tuple[str, int], tuple[float, float]]]:
    """Where each stop stands, column by column."""
    rows: defaultdict[int, int] = defaultdict(int)
    for stop in trace.stops:
        column = next(n for n, links in enumerate(columns) if stop.link in links)
        if rows[column] < MOST_DRAWN:
            x, y = column * (WIDE + MARGIN), TOP + rows[column] * (tall + APART)
            yield stop.key, (x, y)
        rows[column] += 1


def _tallest(trace: Trace) -> int:
    counts = [sum(stop.link in links for stop in trace.stops) for links in COLUMNS]
    return min(MOST_DRAWN, max(counts))


def _step(
    here: tuple[float, float], there: tuple[float, float], middle: float
) -> SafeString:
    return line(here[0] + WIDE, here[1] + middle, there[0], there[1] + middle)


def _box(
    stop: Stop, x: float, y: float, tall: float, thick: bool, lack: str
) -> Iterator[SafeString]:
    more: dict[str, Value] = {"stroke_dasharray": "4 3"} if lack else {}
    yield piece(
        "rect",
        x=x + 0.5,
        y=y,
        width=WIDE - 1,
        height=tall,
        class_="sheet",
        fill="white",
        stroke="currentColor",
        stroke_width=2.4 if thick else 0.8,
        **more,
    )
    day = f", {day_said(stop.on, 'j M Y')}" if stop.on else ""
    yield words(_short(f"{label(stop.link)}{day}"), x + 6, y + 14, size=9)
    name = label(Ending(stop.name)) if stop.link is Link.ENDED else stop.name
    for place, text in enumerate(_lines(name)):
        yield words(text, x + 6, y + 30 + 14 * place, size=12)
    if lack:
        says = _("missing: %(what)s") % {"what": lack}
        yield words(_short(says), x + 6, y + 60, size=9, font_style="italic")


def _lines(name: str) -> list[str]:
    """A name on two lines, and what of it has no room left out."""
    return textwrap.wrap(
        name,
        NAME_LETTERS,
        max_lines=NAME_LINES,
        placeholder="…",
        break_on_hyphens=False,
    )


def _short(text: str) -> str:
    return text if len(text) <= LETTERS else f"{text[: LETTERS - 1]}…"
