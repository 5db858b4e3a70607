"""Nitrogen from manure and compost over a season, for the whole holding."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import field_name, under_rules
from reports.calc.rules.telling import of_put, put_values
from reports.calc.shapes.books import Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity

KINDS = frozenset({"manure", "compost"})
M2_PER_HA = 10_000.0


def manure_nitrogen(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold the season's nitrogen against the kilograms a hectare [EU2018-M]_.

    Over all organic ground and ground on its way there, parts counted once; what
    has no share of nitrogen, or no weight, is told and left out of the sum.
    """
    puts = [put for put in books.puts if _counts(books, put)]
    known = [(put, _nitrogen_kg(books, put)) for put in puts]
    for put, nitrogen_kg in known:
        if nitrogen_kg is None:
            told = put_values(books, put)
            yield of_put(Matter.NITROGEN_UNKNOWN, put, told, Severity.WARN)
    area_ha = _area_m2(books) / M2_PER_HA
    total_kg = sum(nitrogen_kg or 0.0 for _put, nitrogen_kg in known)
    if area_ha > 0 and total_kg / area_ha > rule["nitrogen_kg_ha"]:
        last = max(puts, key=lambda put: (put.on, put.id))
        told = {
            "nitrogen": round(total_kg / area_ha),
            "need": round(rule["nitrogen_kg_ha"]),
            "field": field_name(books, last.field_id),
        }
        yield of_put(Matter.NITROGEN_OVER, last, told)


def _counts(books: Dossier, put: Put) -> bool:
    product = books.product.get(put.product_id)
    kind = product.type if product else ""
    return kind in KINDS and put.on in books.season and under_rules(books, put.field_id)


def _nitrogen_kg(books: Dossier, put: Put) -> float | None:
    share = books.product[put.product_id].nitrogen_share
    return None if share is None or put.measure != "mass" else put.amount * share


def _area_m2(books: Dossier) -> float:
    """Ground under the rules; a part adds nothing to a whole that is under them."""
    return sum(
        one.area_m2
        for one in books.fields
        if under_rules(books, one.id) and not under_rules(books, one.parent_id or 0)
    )
