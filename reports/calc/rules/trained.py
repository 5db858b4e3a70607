"""People at work where something was sprayed lately: who was trained for it."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator

from reports.calc.rules.asked import PEST, WALKED, field_name, type_of
from reports.calc.rules.dates import add_months, reentry_over
from reports.calc.shapes.books import Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

WORKERS = "workers"
DAY = dt.timedelta(days=1)
BETWEEN = re.compile(r"\s*[,;&+/]\s*|\s+(?:and|y)\s+")


def trained(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find work done, or given to somebody, where training is asked for [CFR170T]_.

    What was done is to be mended; what is still to be done is to stop.
    """
    spared = _spared(books)
    yield from _done(books, rule, spared)
    yield from _given(books, rule, spared)


def people(done_by: str) -> list[str]:
    """Return the names in a box that may hold several.

    Examples
    --------
    >>> people("Wren Halvorsen, A. Hand and Odalys")
    ['Wren Halvorsen', 'A. Hand', 'Odalys']
    """
    return [name for name in BETWEEN.split(done_by.strip()) if name]


def treated_until(books: Dossier, put: Put, *, days: int) -> dt.date:
    """Return the last day on which ground counts as treated lately."""
    hours = books.product[put.product_id].reentry_hours or 0.0
    return reentry_over(put.ended_at, hours=hours).date() + dt.timedelta(days=days)


def is_trained(books: Dossier, who: str, day: dt.date, *, months: int) -> bool:
    """Tell whether somebody's training in worker protection holds on a day."""
    return any(
        one.subject == WORKERS
        and one.person.casefold() == who.casefold()
        and add_months(day, -months) <= one.on <= day
        and (one.until is None or day <= one.until)
        for one in books.trained
    )


def _done(books: Dossier, rule: Rule, spared: frozenset[str]) -> Iterator[Found]:
    for one in books.entries:
        if one.noun not in WALKED or one.on not in books.season or not one.field_id:
            continue
        put = _treated(books, rule, one.field_id, one.on, one.on)
        for who in people(one.done_by) if put else ():
            if put and _lacks(books, rule, who, one.on, spared):
                at = (one.noun, one.id, one.on, one.field_id, Severity.FIX)
                told = _told(books, rule, put, who, one.on)
                yield Found(Matter.UNTRAINED_WORKED, *at, told)
                break


def _given(books: Dossier, rule: Rule, spared: frozenset[str]) -> Iterator[Found]:
    for task in books.tasks:
        put = _treated(books, rule, task.field_id, task.first, task.last)
        day = max(task.first, put.on + DAY) if put else task.first
        if not put or day not in books.season:
            continue
        if _lacks(books, rule, task.who, day, spared):
            told = _told(books, rule, put, task.who, day)
            at = ("duties", task.id, day, task.field_id)
            yield Found(Matter.UNTRAINED_PLANNED, *at, values=told)


def _treated(
    books: Dossier, rule: Rule, field_id: int, first: dt.date, last: dt.date
) -> Put | None:
    """The last spray on this ground that these days follow closely.

    The day of spraying is left out: the hours of other work are not known.
    """
    days = round(rule["treated_days"])
    found = [
        put
        for put in books.on_ground("puts", field_id)
        if type_of(books, put) == PEST
        and put.on < last
        and first <= treated_until(books, put, days=days)
    ]
    return max(found, key=lambda put: (put.on, put.id), default=None)


def _spared(books: Dossier) -> frozenset[str]:
    """Who is not asked: contractors, who answer for their own, owners and family."""
    hired = {one.name.casefold() for one in books.partners if one.is_contractor}
    return frozenset(hired | {name.casefold() for name in books.exempt})


def _lacks(
    books: Dossier, rule: Rule, who: str, day: dt.date, spared: frozenset[str]
) -> bool:
    if who.casefold() in spared:
        return False
    return not is_trained(books, who, day, months=round(rule["months"]))


def _told(books: Dossier, rule: Rule, put: Put, who: str, day: dt.date) -> Told:
    return {
        "who": who,
        "field": field_name(books, put.field_id),
        "day": day,
        "product": books.product[put.product_id].name,
        "applied": put.on,
        "months": round(rule["months"]),
    }
