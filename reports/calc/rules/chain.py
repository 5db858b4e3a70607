"""Harvest lots: their chain, and their days in order."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import cut_this_season, field_name, under_rules
from reports.calc.rules.telling import crop_values, of_crop
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told


def harvest_chain(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find links missing between a lot, its planting, its seed and its store."""
    yield from _never_weighed(books)
    seedless: set[int] = set()
    for crop in cut_this_season(books):
        stand = books.stand.get(crop.stand_id or 0)
        if stand is None:
            yield of_crop(Matter.HARVEST_NO_PLANTING, books, crop)
        elif stand.id not in seedless and any(
            line.lot_id is None for line in stand.lines
        ):
            seedless.add(stand.id)
            at = (stand.id, crop.on, crop.field_id)
            told = crop_values(books, crop)
            yield Found(Matter.HARVEST_NO_SEED, "plantings", *at, values=told)
        if not any(books.by_lot[name].get(crop.id) for name in ("kept", "gone")):
            yield of_crop(Matter.HARVEST_NO_STORE, books, crop)
        for gone in books.by_lot["gone"].get(crop.id, ()):
            if not gone.invoice:
                told = {**crop_values(books, crop), "buyer": gone.buyer}
                at = (gone.id, gone.on, crop.field_id)
                yield Found(Matter.SALE_NO_INVOICE, "sales", *at, Severity.WARN, told)


def harvest_order(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find harvests before the sowing, sales before the harvest."""
    for crop in cut_this_season(books):
        stand = books.stand.get(crop.stand_id or 0)
        if stand and stand.sown_on and crop.on < stand.sown_on:
            told: Told = {**crop_values(books, crop), "sown": stand.sown_on}
            at = (crop.id, crop.on, crop.field_id)
            matter = Matter.HARVEST_BEFORE_SOWING
            yield Found(matter, "harvest-lots", *at, values=told)
        for noun, name in (("storages", "kept"), ("sales", "gone")):
            for row in books.by_lot[name].get(crop.id, ()):
                if row.on < crop.on:
                    told = {**crop_values(books, crop), "day": row.on}
                    at = (row.id, row.on, crop.field_id)
                    yield Found(Matter.SOLD_BEFORE_HARVEST, noun, *at, values=told)


def _never_weighed(books: Dossier) -> Iterator[Found]:
    """Stands taken off the field of which no lot tells."""
    for end in books.ends:
        stand = books.stand.get(end.stand_id)
        if end.method != "harvested" or end.on not in books.season or stand is None:
            continue
        lots = books.by_stand["crops"].get(stand.id)
        if not lots and under_rules(books, stand.field_id):
            told: Told = {
                "field": field_name(books, stand.field_id),
                "kind": stand.name,
                "ended": end.on,
            }
            at = (end.id, end.on, stand.field_id)
            yield Found(Matter.HARVEST_NO_LOT, "terminations", *at, values=told)
