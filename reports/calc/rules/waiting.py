"""Days from being worked in to harvest."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import after_on_ground, field_name
from reports.calc.rules.dates import earliest_harvest
from reports.calc.shapes.books import Crop, Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

FOOD = "food"


def days_needed(touches_soil: bool | None, rule: Rule) -> int:
    """Return the interval for a crop: the longer one where contact is not known."""
    return round(rule["other_days" if touches_soil is False else "contact_days"])


def waited(
    books: Dossier, rule: Rule, put: Put, pair: tuple[Matter, Matter]
) -> Iterator[Found]:
    """Hold food harvests on the ground of an application against its interval."""
    on_top, too_soon = pair
    never = True
    for crop in after_on_ground(books, put):
        if crop.use != FOOD or crop.on not in books.season:
            continue
        need = days_needed(crop.touches_soil, rule)
        told: Told = {
            "field": field_name(books, put.field_id),
            "product": books.product[put.product_id].name,
            "lot": crop.code,
            "applied": put.on,
            "need": need,
        }
        worked = put.worked_in_on
        first = earliest_harvest(worked, days=need)
        if worked is None or first is None or worked > crop.on:
            if never:
                at = (put.id, crop.on, put.field_id)
                yield Found(on_top, "applications", *at, values=told)
            never = False
        elif crop.on < first:
            told |= {"days": (crop.on - worked).days, "earliest": first}
            told["worked_in"] = worked
            yield soon(too_soon, crop, told)


def soon(
    matter: Matter, crop: Crop, told: Told, severity: Severity | None = None
) -> Found:
    """Return a lot that was cut too soon."""
    at = (crop.id, crop.on, crop.field_id)
    return Found(matter, "harvest-lots", *at, severity, told)
