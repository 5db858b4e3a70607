"""Land on its way to organic is looked after, and the books show it."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.shapes.books import Ground
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told

ON_ITS_WAY = "transitional"


def land_kept(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find ground on its way of which a whole season tells nothing [CFR205]_."""
    season = books.season
    for ground in books.fields:
        if not _was_on_its_way(books, ground) or books.today <= season.last:
            continue
        if not any(one.on in season for one in books.on_ground("entries", ground.id)):
            told: Told = {
                "field": ground.name,
                "first": season.first,
                "last": season.last,
            }
            at = (ground.id, None, ground.id)
            yield Found(Matter.LAND_IDLE, "fields", *at, values=told)


def _was_on_its_way(books: Dossier, ground: Ground) -> bool:
    """Whether it was so all season long, as far as its status tells."""
    since = ground.status_since
    on_its_way = ground.status == ON_ITS_WAY
    return on_its_way and (since is None or since <= books.season.first)
