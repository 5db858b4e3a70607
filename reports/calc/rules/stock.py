"""No more goes out than came in."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator

from reports.calc.shapes.books import Delivered
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told

MASS = "mass"
DAY = dt.timedelta(days=1)


def stock(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find lots, and inputs that come in lots, of which more went than came."""
    yield from _seed(books, 1 + rule["packed_share"])
    yield from _inputs(books, 1 + rule["packed_share"])
    yield from _product(books, 1 + rule["bulk_share"])


def _seed(books: Dossier, most: float) -> Iterator[Found]:
    sown: defaultdict[int, float] = defaultdict(float)
    for stand in books.stands:
        for line in stand.lines:
            if line.lot_id and stand.sown_on:
                sown[line.lot_id] += line.seed_kg or 0.0
    came = {lot.id: lot.received_kg for lot in books.lots}
    for move in books.moves:
        came[move.lot_id] = came.get(move.lot_id, 0.0) + move.signed_kg
    for lot in books.lots:
        if sown[lot.id] > came[lot.id] * most:
            told: Told = {"seed": lot.name, "in_kg": came[lot.id]}
            told["out_kg"] = sown[lot.id]
            at = (lot.id, lot.received_on)
            yield Found(Matter.MORE_SOWN, "seed-lots", *at, values=told)


def _inputs(books: Dossier, most: float) -> Iterator[Found]:
    """Of a product that was counted, or first came one day, what went since."""
    for (product_id, measure), came in _came(books).items():
        begun = (min(one.on for one in came) - DAY, 0.0)
        counted = _counted(books, product_id) if measure == MASS else None
        since, amount = counted or begun
        amount += sum(one.amount for one in came if one.on > since)
        puts = [
            put
            for put in books.puts
            if (put.product_id, put.measure) == (product_id, measure) and put.on > since
        ]
        last = max((put.on for put in puts), default=None)
        went = sum(put.amount for put in puts)
        if last is None or last not in books.season or went <= amount * most:
            continue
        matter, unit = Matter.MORE_POURED, "m3"
        if measure == MASS:
            matter, unit = Matter.MORE_PUT, "kg"
        told: Told = {"product": books.product[product_id].name}
        told |= {f"in_{unit}": amount, f"out_{unit}": went}
        yield Found(matter, "input-products", product_id, last, values=told)


def _came(books: Dossier) -> dict[tuple[int, str], list[Delivered]]:
    found: defaultdict[tuple[int, str], list[Delivered]] = defaultdict(list)
    for one in books.delivered:
        if one.product_id in books.product:
            found[one.product_id, one.measure].append(one)
    return dict(found)


def _counted(books: Dossier, product_id: int) -> tuple[dt.date, float] | None:
    found = [
        (one.on, one.mass_kg)
        for one in books.counts
        if (one.of, one.id_of) == ("input-products", product_id)
    ]
    return max(found, default=None)


def _product(books: Dossier, most: float) -> Iterator[Found]:
    for crop in books.crops:
        gone = sum(row.mass_kg for row in books.by_lot["gone"].get(crop.id, ()))
        if gone > crop.mass_kg * most:
            told: Told = {"lot": crop.code, "in_kg": crop.mass_kg, "out_kg": gone}
            where = (crop.id, crop.on, crop.field_id)
            yield Found(Matter.MORE_GONE, "harvest-lots", *where, values=told)
