"""Sprays: when people may go in, and what is posted."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import LOOKED, PEST, puts_of
from reports.calc.rules.dates import post_by, reentry_over
from reports.calc.rules.telling import of_put, put_values
from reports.calc.shapes.books import Product, Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

# Nobody is taken to be at work before this hour.
FIRST_HOUR = dt.time(6)


def reentry(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold work on a piece of ground against the label's re-entry interval."""
    for put in _sprays(books):
        hours = books.product[put.product_id].reentry_hours
        if not hours:
            continue
        over = reentry_over(put.ended_at, hours=hours)
        for noun, record, day, done in _work(books, put):
            early = too_early(day, put.on, over)
            if early is None:
                continue
            matter = Matter.ENTERED_EARLY if done else Matter.PLANNED_EARLY
            told: Told = {**put_values(books, put), "over": over, "day": day}
            at = (record, day, put.field_id)
            yield Found(matter, noun, *at, severity=early, values=told)


def too_early(day: dt.date, applied_on: dt.date, over: dt.datetime) -> Severity | None:
    """Weigh work on a day: all of it inside the interval, a part, or none.

    The day of spraying itself is left out: the hours of other work are not known.
    """
    if day <= applied_on or dt.datetime.combine(day, FIRST_HOUR) >= over:
        return None
    return Severity.STOP if over.date() > day else Severity.WARN


def posting(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find sprays not posted in time, or without what must be posted [CFR170]_."""
    looked: set[int] = set()
    for put in _sprays(books):
        product, told = books.product[put.product_id], put_values(books, put)
        at = (product.id, put.on, put.field_id)
        for matter in _unsaid(product) if product.id not in looked else ():
            yield Found(matter, "input-products", *at, values=dict(told))
        looked.add(product.id)
        if put.started_at is None or put.finished_at is None:
            yield of_put(Matter.HOURS_UNKNOWN, put, told)
        due = post_by(
            put.ended_at,
            hours=rule["post_hours"],
            first_entry=first_entry(books, put),
        )
        told["due"] = due
        if put.posted_at is None and books.today > due.date():
            yield of_put(Matter.POSTED_NOT, put, told)
        elif put.posted_at is not None and put.posted_at > due:
            yield of_put(Matter.POSTED_LATE, put, told)


def first_entry(books: Dossier, put: Put) -> dt.datetime | None:
    """Return the morning of the first day after a spray with work on its ground."""
    days = (day for _noun, _id, day, done in _work(books, put) if done)
    first = min((day for day in days if day > put.on), default=None)
    return None if first is None else dt.datetime.combine(first, FIRST_HOUR)


def _unsaid(product: Product) -> Iterator[Matter]:
    """What is shown of a product and not written down of it."""
    if product.reentry_hours is None:
        yield Matter.INTERVAL_UNKNOWN
    if not product.registration.strip():
        yield Matter.REGISTRATION_UNKNOWN


def _sprays(books: Dossier) -> Iterator[Put]:
    return (put for put in puts_of(books, PEST) if put.on in books.season)


def _work(books: Dossier, put: Put) -> Iterator[tuple[str, int, dt.date, bool]]:
    """Work on the ground of a spray: the record, its day, whether it was done."""
    for stand in books.on_ground("stands", put.field_id):
        if stand.sown_on:
            yield "plantings", stand.id, stand.sown_on, True
        elif stand.planned_on:
            yield "plantings", stand.id, stand.planned_on, False
        for end in books.by_stand["ends"].get(stand.id, ()):
            yield "terminations", end.id, end.on, True
    for crop in books.on_ground("crops", put.field_id):
        yield "harvest-lots", crop.id, crop.on, True
    for other in books.on_ground("puts", put.field_id):
        if other.id != put.id:
            yield "applications", other.id, other.on, True
    for one in books.on_ground("entries", put.field_id):
        if one.noun in LOOKED:
            yield one.noun, one.id, one.on, True
