"""Where organic seed and inoculants came from."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import (
    ORGANIC,
    field_name,
    puts_of,
    sown_this_season,
    under_rules,
)
from reports.calc.rules.dates import add_months, last_ship_day
from reports.calc.shapes.books import Partner, Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

# A product so near to the sowing, on the same ground, is taken for the inoculant used.
NEAR = dt.timedelta(days=3)


def inoculant(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find inoculated seed with no inoculant written down for it."""
    for stand, sown in sown_this_season(books):
        yield from _overaged(books, stand, sown)
        if not stand.inoculated or not under_rules(books, stand.field_id):
            continue
        if not is_named(books, stand, sown):
            told: Told = {
                "field": field_name(books, stand.field_id),
                "kind": stand.name,
                "sown": sown,
            }
            at = (stand.id, sown, stand.field_id)
            yield Found(Matter.INOCULANT_UNNAMED, "plantings", *at, values=told)


def is_named(books: Dossier, stand: Stand, sown: dt.date) -> bool:
    """Tell whether an inoculant is written down: on the seed, or put on with it."""
    return _named(books, stand) or any(
        put.stand_id == stand.id
        or (put.field_id == stand.field_id and abs(put.on - sown) <= NEAR)
        for put in puts_of(books, "inoculant")
    )


def supplier(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold suppliers of organic seed against when their certificate was looked up."""
    known = {one.name.casefold(): one for one in books.partners}
    done: set[str] = set()
    for lot in books.lots:
        name = lot.supplier.casefold()
        bought = lot.bought and lot.status == ORGANIC
        bought = bought and lot.received_on in books.season
        if not bought or (name and name in done):
            continue
        done.add(name)
        partner = known.get(name)
        matter = Matter.SUPPLIER_UNKNOWN
        if partner is not None:
            told_matter = _partner_matter(partner, lot.received_on, rule)
            if told_matter is None:
                continue
            matter = told_matter
        told: Told = {
            "seed": lot.name,
            "supplier": lot.supplier,
            "bought": lot.received_on,
        }
        noun = "suppliers" if partner else "seed-lots"
        record = partner.id if partner else lot.id
        yield Found(matter, noun, record, lot.received_on, values=told)


def _overaged(books: Dossier, stand: Stand, sown: dt.date) -> Iterator[Found]:
    """An inoculant that came on the seed, sown after its month."""
    for line in stand.lines:
        lot = books.lot.get(line.lot_id or 0)
        until = lot.inoculant_until if lot else None
        if until is not None and sown > last_ship_day(until, months=0):
            told: Told = {
                "kind": line.kind,
                "field": field_name(books, stand.field_id),
                "sown": sown,
                "until": until,
            }
            at = (stand.id, sown, stand.field_id)
            yield Found(Matter.INOCULANT_OLD, "plantings", *at, Severity.WARN, told)


def _named(books: Dossier, stand: Stand) -> bool:
    """Whether each lot of legumes names the inoculant that came on it."""
    lots = [books.lot.get(line.lot_id or 0) for line in stand.lines if line.legume]
    return bool(lots) and all(lot is not None and lot.inoculant for lot in lots)


def _partner_matter(partner: Partner, bought: dt.date, rule: Rule) -> Matter | None:
    until, looked = partner.certificate_until, partner.verified_on
    if until is not None and until < bought:
        return Matter.SUPPLIER_LAPSED
    if looked is None or looked < add_months(bought, -round(rule["months"])):
        return Matter.SUPPLIER_UNCHECKED
    return None
