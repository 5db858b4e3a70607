"""Covers under a contract or an insurance."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import field_name, sown_this_season
from reports.calc.rules.dates import terminate_by
from reports.calc.rules.supply import is_named
from reports.calc.rules.tags import SELF_SOWN
from reports.calc.shapes.books import EndOf, Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told

DRILLED = "drilled"
# A crop sown this long after a cover ended is the one the cover made way for.
NEXT_WITHIN = dt.timedelta(days=60)
# A guideline may let a cover stand this long past the sowing of the crop.
PAST_SOWING = dt.timedelta(days=30)


def cover_seed(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find covers threshed for seed, which the practice does not allow [NRCS340]_."""
    for crop in books.crops:
        stand = books.stand.get(crop.stand_id or 0)
        cover = stand is not None and stand.purpose == "cover"
        if cover and crop.use == "seed" and crop.on in books.season:
            told: Told = {
                "lot": crop.code,
                "field": field_name(books, crop.field_id),
            }
            at = (crop.id, crop.on, crop.field_id)
            yield Found(Matter.SEED_FROM_COVER, "harvest-lots", *at, values=told)


def cover_plan(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find covers sown with no weight, or drilled with no depth told [NRCS340]_."""
    for stand, sown in sown_this_season(books):
        if stand.purpose == "cover" and stand.method == DRILLED and not stand.depth_m:
            told: Told = {
                "field": field_name(books, stand.field_id),
                "kind": stand.name,
                "sown": sown,
            }
            at = (stand.id, sown, stand.field_id)
            yield Found(Matter.COVER_NO_DEPTH, "plantings", *at, values=told)
        unweighed = [line.kind for line in stand.lines if line.seed_kg is None]
        if stand.purpose == "cover" and unweighed and stand.method != SELF_SOWN:
            told = {
                "field": field_name(books, stand.field_id),
                "kind": ", ".join(unweighed),
                "sown": sown,
            }
            at = (stand.id, sown, stand.field_id)
            yield Found(Matter.COVER_UNMEASURED, "plantings", *at, values=told)


def cover_inoculant(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find legumes sown as a cover with no inoculant written down [NRCS340]_."""
    for stand, sown in sown_this_season(books):
        legumes = [line.kind for line in stand.lines if line.legume]
        sown_by_hand = stand.purpose == "cover" and stand.method != SELF_SOWN
        if not legumes or not sown_by_hand or stand.inoculated:
            continue
        if not is_named(books, stand, sown):
            told: Told = {
                "field": field_name(books, stand.field_id),
                "kind": ", ".join(legumes),
                "sown": sown,
            }
            at = (stand.id, sown, stand.field_id)
            yield Found(Matter.COVER_NOT_INOCULATED, "plantings", *at, values=told)


def termination_day(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold the end of covers on dry land against the zone's last day [RMA-TERM]_."""
    zone = round(rule["zone"])
    before = round(rule[f"days_{zone}"])
    for end in books.ends:
        cover = books.stand.get(end.stand_id)
        if cover is None or not end.over or end.on not in books.season:
            continue
        dry = cover.field_id not in books.watered
        crop = _next_crop(books, cover, end)
        if cover.purpose != "cover" or not dry or crop is None or not crop.sown_on:
            continue
        by = terminate_by(crop.sown_on, days_before=before, up_on=crop.up_on)
        if end.on > by:
            told: Told = {
                "field": field_name(books, cover.field_id),
                "kind": cover.name,
                "ended": end.on,
                "by": by,
                "sown": crop.sown_on,
                "zone": zone,
            }
            at = (end.id, end.on, cover.field_id)
            yield Found(Matter.ENDED_LATE, "terminations", *at, values=told)


def _next_crop(books: Dossier, cover: Stand, end: EndOf) -> Stand | None:
    """The cash crop a cover made way for."""
    after = [
        stand
        for stand in books.on_ground("stands", cover.field_id)
        if stand.purpose == "cash"
        and stand.sown_on
        and end.on - PAST_SOWING <= stand.sown_on <= end.on + NEXT_WITHIN
    ]
    return min(after, key=lambda stand: stand.sown_on, default=None)
