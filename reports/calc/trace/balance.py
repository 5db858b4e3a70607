"""What came in, what went out, and what a count found."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator

from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.trace import Balance, Goods

# Sums of pounds in kilograms leave crumbs behind; decimals of a kilogram kept.
MILLIGRAM = 6
MEASURES = ("mass", "volume")
# A flow: its day, and what it adds or, below zero, takes away. [kg or m³]
Flow = tuple[dt.date, float]


def balances(
    books: Dossier, period: Span, *, packed_share: float, bulk_share: float
) -> tuple[Balance, ...]:
    """Return the balance of every lot handled in a period, and of inputs counted.

    Parameters
    ----------
    books : Dossier
        The farm's books; flows before the period make the opening stock.
    period : Span
        First and last day of the balance.
    packed_share, bulk_share : float
        The farm's tolerances for packed seed and for harvests in bulk. [0 to 1]

    Returns
    -------
    tuple of Balance
        Lots with a stock or a flow in the period, seed before product.
    """
    made = (
        *_seed(books, period, packed_share),
        *_inputs(books, period, packed_share),
        *_product(books, period, bulk_share),
    )
    return tuple(one for one in made if one is not None)


def struck(
    flows: Iterable[Flow], period: Span, counts: Iterable[Flow]
) -> tuple[float, float, float, float | None] | None:
    """Return opening, in, out and counted, or None where nothing was handled.

    A count sets the balance anew: the last one before the period is the opening,
    with what flowed after it; the last one within is what was found.
    """
    rows, looked = list(flows), sorted(counts)
    before = [one for one in looked if one[0] < period.first]
    since, opening = before[-1] if before else (dt.date.min, 0.0)
    opening += sum(kg for day, kg in rows if since < day < period.first)
    within = [one for one in looked if one[0] in period]
    until = within[-1][0] if within else period.last
    inside = [kg for day, kg in rows if period.first <= day <= until]
    came = sum(kg for kg in inside if kg > 0)
    went = -sum(kg for kg in inside if kg < 0)
    if not (abs(opening) > 1e-9 or came or went or within):
        return None
    opening, came, went = (round(kg, MILLIGRAM) for kg in (opening, came, went))
    return opening, came, went, within[-1][1] if within else None


def _seed(books: Dossier, period: Span, share: float) -> Iterator[Balance | None]:
    flows: dict[int, list[Flow]] = {
        lot.id: [(lot.received_on, lot.received_kg)] for lot in books.lots
    }
    for move in books.moves:
        flows.setdefault(move.lot_id, []).append((move.on, move.signed_kg))
    for stand in books.stands:
        for line in stand.lines:
            if line.lot_id in flows and stand.sown_on and line.seed_kg:
                flows[line.lot_id].append((stand.sown_on, -line.seed_kg))
    for lot in books.lots:
        told = struck(flows[lot.id], period, _counts(books, "seed-lots", lot.id))
        if told is not None:
            at = (Goods.SEED, "seed-lots", lot.id, lot.name)
            yield Balance(*at, *told, tolerance=share)


def _inputs(books: Dossier, period: Span, share: float) -> Iterator[Balance | None]:
    """Products by weight and by volume: what came in lots, and what was put on.

    One that was never counted and came in no lot has no balance to strike.
    """
    flows: dict[tuple[int, str], list[Flow]] = {}
    for came in books.delivered:
        key = came.product_id, came.measure
        flows.setdefault(key, []).append((came.on, came.amount))
    for put in books.puts:
        flows.setdefault((put.product_id, put.measure), []).append(
            (put.on, -put.amount)
        )
    for product in books.products:
        for measure in MEASURES:
            rows = flows.get((product.id, measure), [])
            weighed = measure == MEASURES[0]
            counts = _counts(books, "input-products", product.id) if weighed else ()
            looked = list(counts)
            known = looked or any(amount > 0 for _day, amount in rows)
            told = struck(rows, period, looked) if known else None
            if told is not None:
                at = (Goods.INPUTS, "input-products", product.id, product.name)
                yield Balance(*at, *told, tolerance=share, measure=measure)


def _product(books: Dossier, period: Span, share: float) -> Iterator[Balance | None]:
    for crop in books.crops:
        gone = books.by_lot["gone"].get(crop.id, ())
        flows = [(crop.on, crop.mass_kg), *((row.on, -row.mass_kg) for row in gone)]
        told = struck(flows, period, _counts(books, "harvest-lots", crop.id))
        if told is not None:
            name = f"{crop.code} {crop.crop}"
            at = (Goods.PRODUCT, "harvest-lots", crop.id, name)
            yield Balance(*at, *told, tolerance=share)


def _counts(books: Dossier, noun: str, number: int) -> Iterator[Flow]:
    for one in books.counts:
        if one.of == noun and one.id_of == number:
            yield one.on, one.mass_kg
