"""What keeps organic lots apart from others."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator

from reports.calc.rules.asked import ORGANIC, cut_this_season
from reports.calc.rules.telling import crop_values, of_crop
from reports.calc.shapes.books import Crop
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

RANK = {"organic": 2, "transitional": 1, "not_organic": 0}


def lots_apart(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find organic lots from other ground, and stores that held two sorts at once."""
    for crop in cut_this_season(books):
        matter = _from_elsewhere(books, crop)
        if crop.status == ORGANIC and matter is not None:
            yield of_crop(matter, books, crop)
    together: defaultdict[tuple[str, dt.date], list[Crop]] = defaultdict(list)
    for kept in books.kept:
        lot = books.crop.get(kept.lot_id)
        if lot is not None and kept.on in books.season:
            together[kept.place.casefold().strip(), kept.on].append(lot)
    for (_place, day), crops in together.items():
        if len({crop.status == ORGANIC for crop in crops}) > 1:
            other = next(crop for crop in crops if crop.status != ORGANIC)
            told: Told = {**crop_values(books, other), "day": day}
            at = (other.id, day, other.field_id)
            yield Found(
                Matter.STORED_TOGETHER, "harvest-lots", *at, Severity.WARN, told
            )


def sale_status(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find papers that call a lot more than it is."""
    for gone in books.gone:
        crop = books.crop.get(gone.lot_id)
        if crop is None or gone.on not in books.season:
            continue
        if RANK.get(gone.status, 0) > RANK.get(crop.status, 0):
            told: Told = {**crop_values(books, crop), "buyer": gone.buyer}
            at = (gone.id, gone.on, crop.field_id)
            yield Found(Matter.SOLD_ABOVE_STATUS, "sales", *at, values=told)


def _from_elsewhere(books: Dossier, crop: Crop) -> Matter | None:
    """Why a lot should not be called organic, by where it grew."""
    ground = books.field.get(crop.field_id)
    if crop.from_buffer or (ground and ground.status == "buffer"):
        return Matter.BUFFER_AS_ORGANIC
    if ground is None:
        return None
    if ground.status == "not_organic":
        return Matter.NOT_ORGANIC_AS_ORGANIC
    later = ground.status_since is not None and ground.status_since > crop.on
    if ground.status == "transitional" or later:
        return Matter.TRANSITION_AS_ORGANIC
    return None
