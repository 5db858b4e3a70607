"""The search for organic seed, before other seed is sown."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import (
    ORGANIC,
    sown_this_season,
    under_rules,
)
from reports.calc.rules.dates import add_months
from reports.calc.shapes.books import Lot, Search, Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def seed_search(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold each search for seed that was sown against what a search must show."""
    done: set[int] = set()
    for lot, stand, sown in lots_sown(books):
        if lot.status == ORGANIC:
            continue
        for kind in lot.kinds:
            search = search_before(books, lot, kind, sown)
            if search is None or search.id in done:
                continue
            done.add(search.id)
            for matter in search_flaws(search, sown, rule):
                told: Told = {
                    "seed": lot.called((kind,)),
                    "asked": len({name for name, _ in search.asked}),
                    "need": round(rule["sources"]),
                    "sown": sown,
                }
                at = (search.id, search.on, stand.field_id)
                yield Found(matter, "seed-searches", *at, values=told)


def search_flaws(search: Search, sown: dt.date, rule: Rule) -> Iterator[Matter]:
    """Say what a search lacks: sources, order, freshness, a reason [NOP-5029]_."""
    if len({name.casefold() for name, _ in search.asked}) < rule["sources"]:
        yield Matter.SEARCH_FEW
    finished = _finished_on(search)
    if finished > sown:
        yield Matter.SEARCH_LATE
    if finished < add_months(sown, -round(rule["months"])):
        yield Matter.SEARCH_OLD
    if not search.reason or not search.traits:
        yield Matter.SEARCH_NO_REASON


def searches_for(books: Dossier, lot: Lot, kind: str) -> list[Search]:
    """Return the searches for a kind that name the lot, or else those for the kind."""
    named = [
        one
        for one in books.searches
        if one.lot_id == lot.id and (one.kind == kind or not lot.parts)
    ]
    return named or [
        one for one in books.searches if one.lot_id is None and one.kind == kind
    ]


def kinds_unsearched(books: Dossier, lot: Lot) -> tuple[str, ...]:
    """Return the kinds in a lot for which no search is written down."""
    return tuple(kind for kind in lot.kinds if not searches_for(books, lot, kind))


def search_before(books: Dossier, lot: Lot, kind: str, sown: dt.date) -> Search | None:
    """Return the last search made before the sowing, or else the first one after."""
    found = sorted(searches_for(books, lot, kind), key=_finished_on)
    in_time = [one for one in found if _finished_on(one) <= sown]
    return next(iter(in_time[-1:] or found), None)


def _finished_on(search: Search) -> dt.date:
    return max([day for _, day in search.asked] or [search.on])


def lots_sown(books: Dossier) -> Iterator[tuple[Lot, Stand, dt.date]]:
    """Each lot once, with where it was first sown under the rules this season."""
    done: set[int] = set()
    for stand, sown in sorted(sown_this_season(books), key=lambda one: one[1]):
        if not under_rules(books, stand.field_id):
            continue
        for line in stand.lines:
            lot = books.lot.get(line.lot_id or 0)
            if lot is not None and lot.id not in done:
                done.add(lot.id)
                yield lot, stand, sown
