"""From one lot back to where it came from, and forward to where it went."""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterator, Mapping

from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.trace import Gap, Link, Missing, Stop, Trace
from reports.calc.trace.stops import steps, stops

Key = tuple[str, int]
Ways = Mapping[Key, list[Key]]
PLACES = {link: place for place, link in enumerate(Link)}
STARTS = {Link.SEED, Link.INPUT, Link.PLANTING, Link.HARVEST, Link.SALE}


def trace(books: Dossier, noun: str, number: int) -> Trace | None:
    """Return the whole way of one lot, or None where there is no such lot.

    Parameters
    ----------
    books : Dossier
        The farm's books over the years that matter.
    noun, number : str, int
        The record to begin with: a seed lot, a product, a planting, a harvest
        lot, a sale.

    Returns
    -------
    Trace or None
        Stops in the order goods go, the steps between them, and every missing link.
    """
    known = {stop.key: stop for stop in stops(books)}
    start = known.get((noun, number))
    if start is None:
        return None
    forward: defaultdict[Key, list[Key]] = defaultdict(list)
    back: defaultdict[Key, list[Key]] = defaultdict(list)
    for here, there in steps(books):
        if here in known and there in known:
            forward[here].append(there)
            back[there].append(here)
    reached = _reached(start.key, back) | _reached(start.key, forward)
    told = sorted((known[key] for key in reached), key=_place)
    pairs = tuple(
        (known[here], known[there])
        for here in reached
        for there in forward.get(here, ())
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
        put = next(one for one in books.puts if one.id == stop.id)
        if not put.product_lot:
            yield Missing.INPUT_LOT
    if stop.link is Link.HARVEST:
        if books.crop[stop.id].stand_id not in books.stand:
            yield Missing.PLANTING
        if not any(books.by_lot[name].get(stop.id) for name in ("kept", "gone")):
            yield Missing.STORE_OR_SALE
    if stop.link is Link.SALE:
        gone = next(one for one in books.gone if one.id == stop.id)
        if not gone.invoice:
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
