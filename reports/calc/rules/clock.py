"""How long ago a prohibited substance was used, when an organic lot is cut."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from reports.calc.rules.asked import (
    ORGANIC,
    PEST,
    cut_this_season,
    field_name,
    sprayed_without_leave,
    type_of,
)
from reports.calc.rules.dates import land_clean_from
from reports.calc.shapes.books import Crop
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, RuleSet, Severity, Told

FEED = "feed"


def land_clock(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold each organic lot against the last prohibited substance on its ground."""
    for crop, anchor in anchored(books, rule):
        last = _last_prohibited(books, crop.field_id, before=crop.on)
        if last is None:
            continue
        clean = land_clean_from(last, months=anchor.months)
        told: Told = {
            "field": field_name(books, crop.field_id),
            "lot": crop.code,
            "last_used": last,
            "clean_from": clean,
        }
        if anchor.on < clean:
            told["anchor"] = anchor.on
            yield _of_crop(anchor.matter, crop, told)
        elif rule.set is not RuleSet.ORGANIC_EU and _near(anchor.on, clean, rule):
            yield _of_crop(Matter.LAND_JUST, crop, told, Severity.WARN)


@dataclass(frozen=True, slots=True)
class Anchor:
    """The day the clock is read on, how long it runs, what is said if too early."""

    on: dt.date
    months: int
    matter: Matter = Matter.LAND_NOT_YET


def anchored(books: Dossier, rule: Rule) -> Iterator[tuple[Crop, Anchor]]:
    """Organic lots of the season with the day the land clock is read on."""
    for crop in cut_this_season(books):
        if crop.status != ORGANIC:
            continue
        anchor: Anchor | None = Anchor(crop.on, round(rule["months"]))
        if rule.set is RuleSet.ORGANIC_EU:
            anchor = _anchor_eu(books, crop, rule)
        if anchor is not None:
            yield crop, anchor


def _anchor_eu(books: Dossier, crop: Crop, rule: Rule) -> Anchor | None:
    """Annuals by sowing, perennial forage by its use as feed, others by first harvest.

    Fruit and the like are cut for years, so the first harvest in the books counts.
    """
    stand = books.stand.get(crop.stand_id or 0)
    if stand is None or stand.sown_on is None:
        return None
    months = round(rule["months"])
    if not any(line.perennial for line in stand.lines):
        return Anchor(stand.sown_on, months, Matter.LAND_SOWN_EARLY)
    if crop.use == FEED:
        return Anchor(crop.on, months)
    first = min(one.on for one in books.by_stand["crops"][stand.id])
    return Anchor(first, round(rule["perennial_months"]), Matter.LAND_CUT_EARLY)


def _last_prohibited(
    books: Dossier, field_id: int, *, before: dt.date
) -> dt.date | None:
    pieces = books.overlap.get(field_id, {field_id})
    days = [
        one.last_used_on or one.last
        for one in books.on_ground("statements", field_id)
        if one.substance
    ]
    days += [
        put.on
        for put in books.on_ground("puts", field_id)
        if type_of(books, put) == PEST and not books.product[put.product_id].approval
    ]
    days += [
        end.on
        for end, stand in sprayed_without_leave(books)
        if stand.field_id in pieces
    ]
    return max((day for day in days if day <= before), default=None)


def _near(anchor: dt.date, clean: dt.date, rule: Rule) -> bool:
    return (anchor - clean).days <= rule["near_days"]


def _of_crop(
    matter: Matter,
    crop: Crop,
    told: Told,
    severity: Severity | None = None,
) -> Found:
    at = (crop.id, crop.on, crop.field_id)
    return Found(matter, "harvest-lots", *at, severity, told)
