"""What the crew must know today: where not to go, and what not to harvest yet."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace

from reports.calc.rules.asked import PEST, field_name, type_of
from reports.calc.rules.dates import (
    earliest_harvest,
    post_by,
    posted_until,
    posting_kept_until,
    reentry_over,
)
from reports.calc.rules.entry import first_entry
from reports.calc.shapes.books import Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.post import Display, FirstHarvest, KeepOut, Plot, Sprayed
from reports.calc.shapes.rules import Rule

# A spray without an interval in the books is posted for so long: our own choice.
UNKNOWN_FOR = dt.timedelta(days=30)
# Manure that was never worked in is posted for so long: our own choice.
MANURE_FOR = dt.timedelta(days=365)


def keep_out(books: Dossier, *, now: dt.datetime) -> tuple[KeepOut, ...]:
    """Return every field under a re-entry interval at an hour of the farm's clock."""
    sprays = (
        Sprayed(
            field_id=put.field_id,
            field=field_name(books, put.field_id),
            product=books.product[put.product_id].name,
            on=put.on,
            ended_at=put.ended_at,
            reentry_hours=books.product[put.product_id].reentry_hours,
            done_by=put.done_by,
        )
        for put in books.puts
        if type_of(books, put) == PEST
    )
    return still_closed(spread(sprays, plots_of(books)), now=now)


def plots_of(books: Dossier) -> tuple[Plot, ...]:
    """Return the pieces of land with what is drawn over each."""
    return tuple(
        Plot(one.id, one.name, one.parent_id, drawn_beside(one.id, books.drawn_over))
        for one in books.fields
    )


def drawn_beside(here: int, pairs: Iterable[tuple[int, int]]) -> frozenset[int]:
    """Return the pieces that stand in a pair with this one."""
    return frozenset(other for pair in pairs if here in pair for other in pair) - {here}


def still_closed(sprays: Iterable[Sprayed], *, now: dt.datetime) -> tuple[KeepOut, ...]:
    """Return the sprays that keep people out at an hour of the farm's clock."""
    told = [
        KeepOut(one.field, one.product, one.on, _until(one), initials(one.done_by))
        for one in sprays
        if keeps_out(one, now=now)
    ]
    return tuple(sorted(told, key=lambda one: (one.field, one.applied_on)))


def keeps_out(one: Sprayed, *, now: dt.datetime) -> bool:
    """Tell whether a spray keeps people out at an hour of the farm's clock."""
    over = _until(one) or one.ended_at + UNKNOWN_FOR
    return one.on <= now.date() and now < over


def _until(one: Sprayed) -> dt.datetime | None:
    if one.reentry_hours is None:
        return None
    return reentry_over(one.ended_at, hours=one.reentry_hours)


def spread(sprays: Iterable[Sprayed], plots: Sequence[Plot]) -> Iterator[Sprayed]:
    """Yield each spray for every piece that shares ground with the one it is on.

    What lies in a sprayed field is sprayed, and so is a part of what it lies in, and
    what is drawn over it.
    """
    above = {one.id: one.parent_id for one in plots}
    beside = {one.id: one.beside for one in plots}

    def upward(here: int | None) -> Iterator[int]:
        seen: set[int] = set()
        while here in above and here not in seen:
            seen.add(here)
            yield here
            here = above[here]

    lies_in = {one.id: frozenset(upward(one.id)) for one in plots}
    for spray in sprays:
        for plot in plots:
            up, down = lies_in.get(spray.field_id, frozenset()), lies_in[plot.id]
            near = beside.get(spray.field_id, frozenset())
            if plot.id in up or spray.field_id in down or near & down:
                yield replace(spray, field_id=plot.id, field=plot.name)


def on_show(books: Dossier, rule: Rule, *, now: dt.datetime) -> tuple[Display, ...]:
    """Return what is to be on show of every spray at an hour, the newest first."""
    told = []
    for put in books.puts:
        hours = books.product[put.product_id].reentry_hours
        until = kept = None
        if hours is not None:
            days, years = round(rule["show_days"]), round(rule["keep_years"])
            until = posted_until(put.ended_at, reentry_hours=hours, days=days)
            kept = posting_kept_until(put.ended_at, reentry_hours=hours, years=years)
        last = until or put.ended_at + UNKNOWN_FOR
        if type_of(books, put) == PEST and put.on <= now.date() and now < last:
            due = post_by(
                put.ended_at,
                hours=rule["post_hours"],
                first_entry=first_entry(books, put),
            )
            name = books.product[put.product_id].name
            at = (field_name(books, put.field_id), name, put.ended_at, due)
            shown = Display(*at, put.posted_at, until, kept, *_as_posted(books, put))
            told.append(replace(shown, is_timed=put.finished_at is not None))
    return tuple(sorted(told, key=lambda one: one.ended_at, reverse=True))


def _as_posted(
    books: Dossier, put: Put
) -> tuple[str, str, dt.time | None, float | None]:
    """Return number, crop, hour of beginning and interval, as a posting shows them."""
    product, stand = books.product[put.product_id], books.stand.get(put.stand_id or 0)
    crop = stand.name if stand else ""
    return product.registration, crop, put.started_at, product.reentry_hours


def first_harvests(
    books: Dossier, *, today: dt.date, manure_days: int, raw: Collection[Put] = ()
) -> tuple[FirstHarvest, ...]:
    """Return fields whose harvest still waits, by label or after raw manure.

    ``raw`` is the compost that counts as raw manure. Every piece that shares ground
    with the one something was put on waits with it.
    """
    counted = {put.id for put in raw}
    told = [
        replace(wait, field=field_name(books, piece))
        for put in books.puts
        if put.on <= today
        for wait in _waits(books, put, today, manure_days, put.id in counted)
        for piece in books.overlap.get(put.field_id, {put.field_id})
    ]
    return tuple(sorted(told, key=lambda one: (one.field, one.product)))


def _waits(
    books: Dossier, put: Put, today: dt.date, manure_days: int, counted: bool
) -> Iterator[FirstHarvest]:
    product, kind = books.product[put.product_id], type_of(books, put)
    field = field_name(books, put.field_id)
    if kind == PEST:
        days = product.preharvest_days
        first = None if days is None else put.on + dt.timedelta(days=math.ceil(days))
        if today < (first or put.on + UNKNOWN_FOR):
            yield FirstHarvest(field, product.name, first, False)
    if kind == "manure" or counted:
        opens = earliest_harvest(put.worked_in_on, days=manure_days)
        if today < (opens or put.on + MANURE_FOR):
            yield FirstHarvest(field, product.name, opens, True, counted)


def initials(name: str) -> str:
    """Return the first letters of a name: no more of a person is posted.

    Examples
    --------
    >>> initials("Odalys van der Brandvold")
    'O. v. d. B.'
    """
    return " ".join(f"{word[0]}." for word in name.split())
