"""Seed of kinds that are sold engineered too: shown to be none of it."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import ORGANIC, field_name
from reports.calc.rules.search import lots_sown
from reports.calc.shapes.books import Lot
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def engineered(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find such seed, not organic or saved, sown with no statement and no test."""
    for lot, stand, sown in lots_sown(books):
        if not is_asked(lot):
            continue
        told: Told = {
            "seed": lot.called(lot.engineered),
            "field": field_name(books, stand.field_id),
            "sown": sown,
        }
        at = ("seed-lots", lot.id, sown, stand.field_id)
        if not lot.non_gmo:
            yield Found(Matter.ENGINEERED_UNSAID, *at, values=told)
        elif lot.non_gmo_on and lot.non_gmo_on > sown:
            told["said"] = lot.non_gmo_on
            yield Found(Matter.ENGINEERED_SAID_LATE, *at, values=told)


def is_asked(lot: Lot) -> bool:
    """Tell whether a lot is to be shown not to be engineered.

    Organic seed that was bought is held to the rule by its own certificate.
    """
    return bool(lot.engineered) and (lot.status != ORGANIC or lot.saved)
