"""What is known of the land, and whether those who tell of it agree."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from itertools import combinations

from reports.calc.rules.asked import (
    UNDER_RULES,
    field_name,
)
from reports.calc.rules.clock import anchored
from reports.calc.rules.dates import add_months
from reports.calc.shapes.basics import Span
from reports.calc.shapes.books import Statement
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

DAY = dt.timedelta(days=1)


def land_history(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Look for days before an organic harvest of which nobody says anything."""
    seen: set[int] = set()
    for crop, anchor in anchored(books, rule):
        if crop.field_id in seen:
            continue
        asked = Span(add_months(anchor.on, -anchor.months), anchor.on - DAY)
        gap = first_gap(asked, _told_of(books, crop.field_id))
        if gap is not None:
            seen.add(crop.field_id)
            told: Told = {
                "field": field_name(books, crop.field_id),
                "lot": crop.code,
                "first": gap.first,
                "last": gap.last,
            }
            yield Found(
                Matter.LAND_UNKNOWN,
                "fields",
                crop.field_id,
                crop.on,
                crop.field_id,
                values=told,
            )


def first_gap(asked: Span, told: list[Span]) -> Span | None:
    """Return the first days of a span that no other span tells of.

    Examples
    --------
    >>> day = lambda month: dt.date(2025, month, 1)
    >>> first_gap(Span(day(1), day(9)), [Span(day(1), day(3)), Span(day(5), day(9))])
    Span(first=datetime.date(2025, 3, 2), last=datetime.date(2025, 4, 30))
    """
    here = asked.first
    for span in sorted(told, key=lambda one: one.first):
        if span.first > here:
            return Span(here, min(span.first - DAY, asked.last))
        here = max(here, span.last + DAY)
        if here > asked.last:
            return None
    return Span(here, asked.last)


def land_statements(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find two statements on the same days of the same ground."""
    for one, other in combinations(books.statements, 2):
        if other.field_id not in books.overlap.get(one.field_id, {one.field_id}):
            continue
        if one.first > other.last or other.first > one.last:
            continue
        told: Told = {
            "field": field_name(books, one.field_id),
            "first": max(one.first, other.first),
            "last": min(one.last, other.last),
            "signer": one.signer,
            "other_signer": other.signer,
        }
        at = (other.id, None, other.field_id)
        if _contradict(one, other) or _contradict(other, one):
            yield Found(Matter.STATEMENTS_DISAGREE, "land-statements", *at, values=told)
        elif one.field_id == other.field_id:
            matter, light = Matter.STATEMENTS_OVERLAP, Severity.INFO
            yield Found(matter, "land-statements", *at, severity=light, values=told)


def _told_of(books: Dossier, field_id: int) -> list[Span]:
    """Days of which a statement tells, or the farm's own books under a status."""
    told = []
    here = books.field.get(field_id)
    seen: set[int] = set()
    while here is not None and here.id not in seen:
        seen.add(here.id)
        rows = books.by_field["statements"].get(here.id, ())
        told += [Span(row.first, row.last) for row in rows]
        if here.status in UNDER_RULES and here.status_since:
            told.append(Span(here.status_since, books.today))
        here = books.field.get(here.parent_id or 0)
    return told


def _contradict(none: Statement, some: Statement) -> bool:
    if none.substance or not some.substance:
        return False
    used = some.last_used_on
    return used is None or none.first <= used <= none.last
