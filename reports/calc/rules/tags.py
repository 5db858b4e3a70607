"""Seed lots: named by their plantings, with a tag that is young enough."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import (
    field_name,
    sown_this_season,
)
from reports.calc.rules.dates import last_ship_day
from reports.calc.shapes.books import Lot
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

SELF_SOWN = "self_sown"


def seed_linked(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find plantings with a kind that names no seed lot."""
    for stand, sown in sown_this_season(books):
        missing = [line.kind for line in stand.lines if line.lot_id is None]
        if stand.method != SELF_SOWN and (missing or not stand.lines):
            told: Told = {
                "field": field_name(books, stand.field_id),
                "kind": ", ".join(missing),
                "sown": sown,
            }
            at = (stand.id, sown, stand.field_id)
            yield Found(Matter.LINE_NO_LOT, "plantings", *at, values=told)


def seed_tag(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find tags silent on purity, germination, test or noxious weeds [TAG-B]_."""
    for lot in _lots_of_season(books):
        if lot.bought and not lot.is_tested and not lot.is_stock:
            told: Told = {"seed": lot.name}
            yield Found(
                Matter.TAG_SILENT, "seed-lots", lot.id, lot.received_on, values=told
            )
        if lot.bought and not lot.is_stock and lot.noxious_told is False:
            told = {"seed": lot.name}
            at = (lot.id, lot.received_on)
            yield Found(
                Matter.TAG_NO_WEEDS,
                "seed-lots",
                *at,
                severity=Severity.WARN,
                values=told,
            )


def tag_age(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find lots received after their test was too old to travel [CFR201T]_."""
    for lot in books.lots:
        bought = lot.bought and lot.received_on in books.season
        if lot.tested_on is None or not bought:
            continue
        last = last_ship_day(lot.tested_on, months=round(rule["months"]))
        if lot.received_on > last:
            told: Told = {"seed": lot.name, "received": lot.received_on, "last": last}
            yield Found(
                Matter.TAG_OLD, "seed-lots", lot.id, lot.received_on, values=told
            )


def _lots_of_season(books: Dossier) -> Iterator[Lot]:
    """Lots received or sown this season."""
    sown = {line.lot_id for stand, _ in sown_this_season(books) for line in stand.lines}
    for lot in books.lots:
        if lot.id in sown or lot.received_on in books.season:
            yield lot
