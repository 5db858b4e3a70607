"""What a label holds back: harvest, feed, grain, animals."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import (
    PEST,
    after_on_ground,
    puts_of,
    type_of,
)
from reports.calc.rules.dates import add_months
from reports.calc.rules.telling import put_values
from reports.calc.shapes.books import Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

EATEN_OR_THRESHED = {"grazed", "harvested"}


def preharvest(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold harvests against the label's pre-harvest interval."""
    unknown: set[int] = set()
    for put in puts_of(books, PEST):
        product, told = books.product[put.product_id], put_values(books, put)
        for crop in after_on_ground(books, put):
            if crop.on not in books.season:
                continue
            told |= {"lot": crop.code, "days": (crop.on - put.on).days}
            need = product.preharvest_days
            if need is None and put.on in books.season and product.id not in unknown:
                unknown.add(product.id)
                at = (product.id, crop.on, put.field_id)
                yield Found(
                    Matter.PREHARVEST_UNKNOWN,
                    "input-products",
                    *at,
                    Severity.WARN,
                    dict(told),
                )
            if need is not None and (crop.on - put.on).days < need:
                told["need"] = need
                at = (crop.id, crop.on, crop.field_id)
                yield Found(
                    Matter.HARVESTED_EARLY, "harvest-lots", *at, values=dict(told)
                )


def plant_back(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find covers grazed, hayed or threshed inside a label's wait for such use."""
    for stand in books.stands:
        used = _used_as_forage(books, stand)
        if stand.sown_on is None or used is None or used not in books.season:
            continue
        for put in books.on_ground("puts", stand.field_id):
            if type_of(books, put) != PEST or put.on > used:
                continue
            months = books.product[put.product_id].plant_back_months
            waited = rule["months"] if months is None else months
            if stand.sown_on >= add_months(put.on, round(waited)):
                continue
            matter = Matter.PLANT_BACK_SHORT
            if months is None:
                matter = Matter.PLANT_BACK_UNKNOWN
            told: Told = {
                **put_values(books, put),
                "kind": stand.name,
                "sown": stand.sown_on,
            }
            told |= {"months": round(waited), "used": used}
            at = (stand.id, used, stand.field_id)
            yield Found(matter, "plantings", *at, values=told)
            break


def grazing_label(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find animals let onto sprayed ground with no label read first."""
    for flock in books.flocks:
        if flock.label_checked or flock.in_on not in books.season:
            continue
        since = add_months(flock.in_on, -round(rule["months"]))
        for put in books.on_ground("puts", flock.field_id):
            if type_of(books, put) == PEST and since <= put.on <= flock.in_on:
                told: Told = {**put_values(books, put), "animals": flock.animals}
                at = (flock.id, flock.in_on, flock.field_id)
                yield Found(Matter.LABEL_NOT_READ, "grazings", *at, values=told)
                break


def _used_as_forage(books: Dossier, stand: Stand) -> dt.date | None:
    """The first day a cover was eaten, hayed or threshed."""
    if stand.purpose == "cash":
        return None
    days = [crop.on for crop in books.by_stand["crops"].get(stand.id, ())]
    days += [flock.in_on for flock in books.by_stand["flocks"].get(stand.id, ())]
    days += [
        end.on
        for end in books.by_stand["ends"].get(stand.id, ())
        if end.method in EATEN_OR_THRESHED
    ]
    return min(days, default=None)
