"""What the crew must know today: where not to go, and what not to harvest yet."""

from __future__ import annotations

import datetime as dt
import math

from reports.calc.rules.asked import PEST, field_name, type_of
from reports.calc.rules.dates import earliest_harvest, reentry_over
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.post import FirstHarvest, KeepOut

# A spray without an interval in the books is posted for so long: our own choice.
UNKNOWN_FOR = dt.timedelta(days=30)
# Manure that was never worked in is posted for so long: our own choice.
MANURE_FOR = dt.timedelta(days=365)


def keep_out(books: Dossier, *, now: dt.datetime) -> tuple[KeepOut, ...]:
    """Return every field under a re-entry interval at an hour of the farm's clock."""
    told = []
    for put in books.puts:
        if type_of(books, put) != PEST or put.on > now.date():
            continue
        product = books.product[put.product_id]
        until = None
        if product.reentry_hours is not None:
            until = reentry_over(put.ended_at, hours=product.reentry_hours)
        over = until if until is not None else put.ended_at + UNKNOWN_FOR
        if now < over:
            who, field = initials(put.done_by), field_name(books, put.field_id)
            told.append(KeepOut(field, product.name, put.on, until, who))
    return tuple(sorted(told, key=lambda one: (one.field, one.applied_on)))


def first_harvests(
    books: Dossier, *, today: dt.date, manure_days: int
) -> tuple[FirstHarvest, ...]:
    """Return fields whose harvest still waits, by label or after raw manure."""
    told = []
    for put in books.puts:
        product, kind = books.product[put.product_id], type_of(books, put)
        field = field_name(books, put.field_id)
        days = product.preharvest_days
        if kind == PEST and days:
            first = put.on + dt.timedelta(days=math.ceil(days))
            if put.on <= today < first:
                told.append(FirstHarvest(field, product.name, first, False))
        if kind == "manure" and put.on <= today:
            opens = earliest_harvest(put.worked_in_on, days=manure_days)
            waits = today < (opens or put.on + MANURE_FOR)
            if waits:
                told.append(FirstHarvest(field, product.name, opens, True))
    return tuple(sorted(told, key=lambda one: (one.field, one.product)))


def initials(name: str) -> str:
    """Return the first letters of a name: no more of a person is posted.

    Examples
    --------
    >>> initials("Odalys van der Brandvold")
    'O. v. d. B.'
    """
    return " ".join(f"{word[0]}." for word in name.split())
