"""Every record of the books that can stand on the way, and what follows what."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.shapes.books import Delivered, Put, Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.trace import Link, Stop

# An input bears on what is sown this long after it was put on.
BEARS_ON = dt.timedelta(days=365)
Pair = tuple[Stop, Stop]


def stops(books: Dossier) -> Iterator[Stop]:
    """Yield every record that a way may pass."""
    for partner in books.partners:
        yield Stop(Link.SUPPLIER, "suppliers", partner.id, partner.name)
    for lot in books.lots:
        yield Stop(Link.SEED, "seed-lots", lot.id, lot.name, lot.received_on)
    for product in books.products:
        yield Stop(Link.INPUT, "input-products", product.id, product.name)
    for came in books.delivered:
        name = f"{books.product[came.product_id].name} {came.number}"
        yield Stop(Link.INPUT_LOT, "input-lots", came.id, name, came.on)
    for ground in books.fields:
        yield Stop(Link.FIELD, "fields", ground.id, ground.name)
    for put in books.puts:
        name = _there(books, books.product[put.product_id].name, put.field_id)
        yield Stop(Link.PUT_ON, "applications", put.id, name, put.on)
    for stand in books.stands:
        day = stand.sown_on or stand.planned_on
        name = _there(books, stand.name, stand.field_id)
        yield Stop(Link.PLANTING, "plantings", stand.id, name, day)
    for end in books.ends:
        yield Stop(Link.ENDED, "terminations", end.id, end.method, end.on)
    for crop in books.crops:
        name = f"{crop.code} {crop.crop}"
        yield Stop(Link.HARVEST, "harvest-lots", crop.id, name, crop.on)
    for kept in books.kept:
        yield Stop(Link.STORE, "storages", kept.id, kept.place, kept.on)
    for gone in books.gone:
        yield Stop(Link.SALE, "sales", gone.id, gone.buyer, gone.on)


def _there(books: Dossier, name: str, field_id: int) -> str:
    """A name with the field it belongs to, since many are called the same."""
    ground = books.field.get(field_id)
    return f"{name}, {ground.name}" if ground else name


def steps(books: Dossier) -> Iterator[tuple[tuple[str, int], tuple[str, int]]]:
    """Yield what goes into what, by noun and number."""
    named = {one.name.casefold(): one.id for one in books.partners}
    for lot in books.lots:
        if lot.supplier.casefold() in named:
            partner = named[lot.supplier.casefold()]
            yield ("suppliers", partner), ("seed-lots", lot.id)
    for stand in books.stands:
        here = ("plantings", stand.id)
        yield ("fields", stand.field_id), here
        for line in stand.lines:
            if line.lot_id is not None:
                yield ("seed-lots", line.lot_id), here
        for put in books.on_ground("puts", stand.field_id):
            if bears_on(put, stand, _over(books, stand)):
                yield ("applications", put.id), here
    for came in books.delivered:
        yield ("input-products", came.product_id), ("input-lots", came.id)
        sender = named.get(came.supplier.casefold())
        if sender:
            yield ("suppliers", sender), ("input-lots", came.id)
    for put in books.puts:
        yield _source(books, put), ("applications", put.id)
    for end in books.ends:
        yield ("plantings", end.stand_id), ("terminations", end.id)
    for crop in books.crops:
        from_stand = ("plantings", crop.stand_id or 0)
        from_field = ("fields", crop.field_id)
        source = from_stand if crop.stand_id else from_field
        yield source, ("harvest-lots", crop.id)
    for kept in books.kept:
        yield ("harvest-lots", kept.lot_id), ("storages", kept.id)
    for gone in books.gone:
        yield ("harvest-lots", gone.lot_id), ("sales", gone.id)


def _source(books: Dossier, put: Put) -> tuple[str, int]:
    """The lot that was put on, or its product where no lot is known."""
    came = delivery(books, put)
    return ("input-lots", came.id) if came else ("input-products", put.product_id)


def delivery(books: Dossier, put: Put) -> Delivered | None:
    """Return the lot of the product that was put on, if it was written down."""
    number = put.product_lot.strip().casefold()
    told = books.deliveries.get(put.product_id, ()) if number else ()
    return next((one for one in told if one.number.casefold() == number), None)


def bears_on(put: Put, stand: Stand, over: dt.date | None) -> bool:
    """Tell whether an input bears on a stand: it names it, or its ground in time."""
    if put.stand_id is not None:
        return put.stand_id == stand.id
    if stand.sown_on is None:
        return False
    return stand.sown_on - BEARS_ON <= put.on and (over is None or put.on <= over)


def _over(books: Dossier, stand: Stand) -> dt.date | None:
    """The day on which a stand was over, if it is."""
    days = [end.on for end in books.by_stand["ends"].get(stand.id, ()) if end.over]
    days += [crop.on for crop in books.by_stand["crops"].get(stand.id, ())]
    return max(days, default=None)
