"""From one lot back to where it came from, and forward to where it went."""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.trace import Gap, Link, Missing, Stop, Trace
from reports.calc.trace.stops import delivery, steps, stops

Key = tuple[str, int]
Ways = Mapping[Key, list[Key]]
PLACES = {link: place for place, link in enumerate(Link)}
STARTS = {
    Link.SEED,
    Link.INPUT,
    Link.INPUT_LOT,
    Link.PLANTING,
    Link.HARVEST,
    Link.SALE,
}


@dataclass(frozen=True)
class Web:
    """Every record of the books with what it leads to and comes from."""

    known: Mapping[Key, Stop]
    forward: Ways
    back: Ways


def woven(books: Dossier) -> Web:
    """Return the web of a farm's books, to be walked as often as one likes."""
    known = {stop.key: stop for stop in stops(books)}
    forward: defaultdict[Key, list[Key]] = defaultdict(list)
    back: defaultdict[Key, list[Key]] = defaultdict(list)
    for here, there in steps(books):
        if here in known and there in known:
            forward[here].append(there)
            back[there].append(here)
    return Web(known, forward, back)


def trace(
    books: Dossier, noun: str, number: int, *, web: Web | None = None
) -> Trace | None:
    """Return the whole way of one lot, or None where there is no such lot.

    Parameters
    ----------
    books : Dossier
        The farm's books over the years that matter.
    noun, number : str, int
        The record to begin with: a seed lot, a product or a lot of it, a planting,
        a harvest lot, a sale.
    web : Web, optional
        The books woven before, where many ways are walked.

    Returns
    -------
    Trace or None
        Stops in the order goods go, the steps between them, and every missing link.
    """
    web = web or woven(books)
    known, start = web.known, web.known.get((noun, number))
    if start is None:
        return None
    reached = _reached(start.key, web.back) | _reached(start.key, web.forward)
    told = sorted((known[key] for key in reached), key=_place)
    pairs = tuple(
        (known[here], known[there])
        for here in reached
        for there in web.forward.get(here, ())
        if there in reached
    )
    gaps = tuple(gap for stop in told for gap in gaps_at(books, stop))
    ordered = sorted(pairs, key=lambda pair: (*_place(pair[0]), *_place(pair[1])))
    return Trace(start, tuple(told), tuple(ordered), gaps)


def startable(books: Dossier) -> tuple[Stop, ...]:
    """Return every lot that a way can begin with, the newest first."""
    told = [stop for stop in stops(books) if stop.link in STARTS]
    told.sort(key=lambda stop: stop.on.isoformat() if stop.on else "", reverse=True)
    return tuple(sorted(told, key=lambda stop: PLACES[stop.link], reverse=True))


def gaps_at(books: Dossier, stop: Stop) -> Iterator[Gap]:
    """Yield the links that ought to be named at one stop and are not."""
    for missing in _missing(books, stop):
        yield Gap(missing, stop)


def _missing(books: Dossier, stop: Stop) -> Iterator[Missing]:
    if stop.link is Link.SEED:
        lot = books.lot[stop.id]
        if lot.bought and not lot.supplier:
            yield Missing.SUPPLIER
        if lot.status == "organic" and not lot.certificate:
            yield Missing.CERTIFICATE
    if stop.link is Link.PLANTING:
        stand = books.stand[stop.id]
        named = stand.lines and all(line.lot_id for line in stand.lines)
        if not named and stand.method != "self_sown":
            yield Missing.SEED_LOT
    if stop.link is Link.PUT_ON:
        put = books.put[stop.id]
        if not put.product_lot:
            yield Missing.INPUT_LOT
        elif books.deliveries.get(put.product_id) and delivery(books, put) is None:
            yield Missing.DELIVERY
    if stop.link is Link.INPUT_LOT:
        came = books.delivery[stop.id]
        if not came.supplier:
            yield Missing.SUPPLIER
        if not came.invoice:
            yield Missing.INVOICE
    if stop.link is Link.HARVEST:
        if books.crop[stop.id].stand_id not in books.stand:
            yield Missing.PLANTING
        if not any(books.by_lot[name].get(stop.id) for name in ("kept", "gone")):
            yield Missing.STORE_OR_SALE
    if stop.link is Link.SALE and not books.sale[stop.id].invoice:
        yield Missing.INVOICE


def _reached(start: Key, ways: Ways) -> set[Key]:
    """Everything that can be reached one way."""
    found, waiting = {start}, deque([start])
    while waiting:
        for key in ways.get(waiting.popleft(), ()):
            if key not in found:
                found.add(key)
                waiting.append(key)
    return found


def _place(stop: Stop) -> tuple[int, str, str, int]:
    day = stop.on.isoformat() if stop.on else ""
    return PLACES[stop.link], day, stop.name, stop.id
