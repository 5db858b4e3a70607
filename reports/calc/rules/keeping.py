"""How the books are kept: in time, by name, looked over."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import PEST, field_name, puts_of
from reports.calc.rules.telling import put_values
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

TO_BE_TOLD = {"drift", "spill", "mix_up"}
NAMED = {"harvest-lots", "applications", "clean-outs", "compost-batches"}
LOOKED_OVER = {"clean-outs", "compost-batches", "trainings"}


def incident(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find mishaps the certifier was not told of, or that were left open."""
    for one in books.mishaps:
        if one.on not in books.season:
            continue
        at = (one.id, one.on, one.field_id)
        told: Told = {"day": one.on, "field": field_name(books, one.field_id)}
        if one.what in TO_BE_TOLD and not one.told_to:
            yield Found(Matter.NOT_TOLD, "incidents", *at, values=told)
        if not one.done_about_it:
            yield Found(Matter.NOT_SETTLED, "incidents", *at, Severity.FIX, told)


def done_by(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find records that name nobody who did the work [CFR112]_."""
    for one in books.entries:
        if one.noun in NAMED and one.on in books.season and not one.done_by:
            at = (one.id, one.on, one.field_id)
            told: Told = {"record": one.label}
            yield Found(Matter.NOBODY_NAMED, one.noun, *at, values=told)


def review(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find records to be looked over that nobody has looked over yet."""
    for one in books.entries:
        if one.noun not in LOOKED_OVER or one.on not in books.season:
            continue
        waited = (books.today - one.on).days
        if (one.noun, one.id) not in books.reviewed and waited > rule["days"]:
            at = (one.id, one.on, one.field_id)
            told: Told = {"record": one.label, "days": waited}
            yield Found(Matter.NOT_REVIEWED, one.noun, *at, values=told)


def late(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find records written down later than the day after."""
    for one in books.entries:
        days = (one.written_on - one.on).days
        if one.on in books.season and days > rule["days"]:
            at = (one.id, one.on, one.field_id)
            told: Told = {
                "record": one.label,
                "day": one.on,
                "written": one.written_on,
                "days": days,
            }
            yield Found(Matter.WRITTEN_LATE, one.noun, *at, values=told)


def no_records(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Say so when nothing at all is written down of a season."""
    if not any(one.on in books.season for one in books.entries):
        told: Told = {"first": books.season.first, "last": books.season.last}
        yield Found(Matter.SEASON_EMPTY, "plantings", None, values=told)


def document(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find seed lots with no tag, invoice or picture, materials with no label kept."""
    if books.documents is None:
        return
    for lot in books.lots:
        kept = ("seed-lots", lot.id) in books.documents
        if lot.bought and lot.received_on in books.season and not kept:
            at = (lot.id, lot.received_on)
            told: Told = {"seed": lot.name}
            yield Found(Matter.NO_DOCUMENT, "seed-lots", *at, values=told)
    yield from _labels(books)


def _labels(books: Dossier) -> Iterator[Found]:
    """Pest-control materials put on this season with no label or data sheet kept."""
    kept, done = books.documents or frozenset(), set()
    for put in puts_of(books, PEST):
        told = ("input-products", put.product_id) in kept or put.product_id in done
        if put.on in books.season and not told:
            done.add(put.product_id)
            at = ("input-products", put.product_id, put.on)
            yield Found(Matter.NO_LABEL, *at, values=put_values(books, put))
