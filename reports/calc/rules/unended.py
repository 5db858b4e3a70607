"""Covers of which nobody wrote how they ended, though a crop took their place."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import field_name
from reports.calc.rules.standing import have_room
from reports.calc.shapes.books import Stand
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def cover_end(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find covers with no end written down where a crop was sown after [NRCS340]_.

    A cover may live on a while beside the crop; then its end is asked for.
    """
    grace = dt.timedelta(days=round(rule["past_days"]))
    for cover in books.stands:
        if cover.purpose != "cover" or _is_over(books, cover):
            continue
        crop = _in_its_place(books, cover)
        if crop is None or crop.sown_on is None or crop.sown_on not in books.season:
            continue
        if crop.sown_on + grace < books.today:
            told: Told = {
                "field": field_name(books, cover.field_id),
                "kind": cover.name,
                "sown": cover.sown_on or crop.sown_on,
                "crop": crop.name,
                "day": crop.sown_on,
            }
            at = (cover.id, crop.sown_on, cover.field_id)
            yield Found(Matter.COVER_NOT_ENDED, "plantings", *at, values=told)


def _is_over(books: Dossier, cover: Stand) -> bool:
    """Whether an end is written down, or that frost killed it."""
    ends = books.by_stand["ends"].get(cover.id, ())
    return cover.killed_on is not None or any(end.over for end in ends)


def _in_its_place(books: Dossier, cover: Stand) -> Stand | None:
    """The first crop after a cover that had no room beside it."""
    if cover.sown_on is None:
        return None
    after = [
        crop
        for crop in books.on_ground("stands", cover.field_id)
        if crop.purpose == "cash"
        and crop.sown_on
        and crop.sown_on > cover.sown_on
        and not have_room(books, cover, crop)
    ]
    return min(after, key=lambda crop: crop.sown_on, default=None)
