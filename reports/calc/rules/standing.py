"""Which stands shared ground, and which stood side by side on one piece of it."""

from __future__ import annotations

import datetime as dt

from reports.calc.rules.dates import add_months
from reports.calc.shapes.books import Stand
from reports.calc.shapes.dossier import Dossier

# Areas are typed with rounding; this much more than all there is, is the same.
ROUNDING = 1.005
# An annual of which nobody wrote the end is taken to be gone after so long.
GONE_AFTER_MONTHS = 12


def beside(books: Dossier, one_id: int | None, other_id: int | None) -> bool:
    """Tell whether two records name stands that grew side by side at one time."""
    one, other = books.stand.get(one_id or 0), books.stand.get(other_id or 0)
    if one is None or other is None or one is other:
        return False
    return have_room(books, one, other) and _together(books, one, other)


def have_room(books: Dossier, one: Stand, other: Stand) -> bool:
    """Tell whether two stands fit beside one another on the wider of their fields."""
    grounds = (books.field.get(stand.field_id) for stand in (one, other))
    widest = max((ground.area_m2 for ground in grounds if ground), default=0.0)
    return one.area_m2 + other.area_m2 <= widest * ROUNDING


def _together(books: Dossier, one: Stand, other: Stand) -> bool:
    if one.sown_on is None or other.sown_on is None:
        return False
    later = max(one.sown_on, other.sown_on)
    return later <= min(_last_day(books, one), _last_day(books, other))


def _last_day(books: Dossier, stand: Stand) -> dt.date:
    """The day it ended; for an annual without an end, the last it may have stood."""
    over = (end for end in books.by_stand["ends"].get(stand.id, ()) if end.over)
    ends: list[dt.date] = [end.on for end in over]
    cuts: list[dt.date] = [
        crop.on for crop in books.by_stand["crops"].get(stand.id, ())
    ]
    if ends:
        return max([*ends, *cuts])
    lasts = any(line.perennial for line in stand.lines)
    if lasts or stand.sown_on is None:
        return dt.date.max
    return max([add_months(stand.sown_on, GONE_AFTER_MONTHS), *cuts])
