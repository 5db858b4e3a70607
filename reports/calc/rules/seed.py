"""Seed that was sown: organic, searched for, or treated."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace

from reports.calc.rules.asked import (
    ORGANIC,
    field_name,
)
from reports.calc.rules.search import kinds_unsearched, lots_sown
from reports.calc.shapes.books import Lot, Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def seed_status(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find organic seed without a certificate, other seed without a search."""
    for lot, stand, sown in lots_sown(books):
        if lot.status == ORGANIC and not lot.certificate:
            yield _of_lot(Matter.SEED_NO_CERTIFICATE, books, lot, stand, sown)
        missing = kinds_unsearched(books, lot)
        if lot.status == "untreated" and missing:
            found = _of_lot(Matter.SEED_NO_SEARCH, books, lot, stand, sown)
            yield replace(found, values={**found.values, "seed": lot.called(missing)})


def seed_treated(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find treated seed in the ground: whether it may be there is not for us to say."""
    for lot, stand, sown in lots_sown(books):
        if lot.status == "treated":
            yield _of_lot(Matter.TREATED_SOWN, books, lot, stand, sown)


def _of_lot(
    matter: Matter, books: Dossier, lot: Lot, stand: Stand, sown: dt.date
) -> Found:
    told: Told = {
        "seed": lot.name,
        "field": field_name(books, stand.field_id),
        "sown": sown,
        "treatment": lot.treatment,
    }
    return Found(matter, "seed-lots", lot.id, sown, stand.field_id, values=told)
