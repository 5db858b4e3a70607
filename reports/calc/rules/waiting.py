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
    """Hold food harvests on the ground of an application against its interval.

    Left on top, the interval never began: every lot cut there is named.
    """
    on_top, too_soon = pair
    uncounted: list[Crop] = []
    for crop in after_on_ground(books, put):
        if crop.use != FOOD or crop.on not in books.season:
            continue
        worked, need = put.worked_in_on, days_needed(crop.touches_soil, rule)
        first = earliest_harvest(worked, days=need)
        if worked is None or first is None or worked > crop.on:
            uncounted.append(crop)
        elif crop.on < first:
            told = {**_put_told(books, put), "lot": crop.code, "need": need}
            told |= {"days": (crop.on - worked).days, "earliest": first}
            yield soon(too_soon, crop, {**told, "worked_in": worked})
    if uncounted:
        lots = ", ".join(crop.code for crop in uncounted)
        at = (put.id, uncounted[0].on, put.field_id)
        told = {**_put_told(books, put), "lot": lots}
        yield Found(on_top, "applications", *at, values=told)


def _put_told(books: Dossier, put: Put) -> Told:
    return {
        "field": field_name(books, put.field_id),
        "product": books.product[put.product_id].name,
        "applied": put.on,
    }


def soon(
    matter: Matter, crop: Crop, told: Told, severity: Severity | None = None
) -> Found:
    """Return a lot that was cut too soon."""
    at = (crop.id, crop.on, crop.field_id)
    return Found(matter, "harvest-lots", *at, severity, told)
