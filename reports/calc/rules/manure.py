"""Raw manure and animals on ground that feeds people."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import field_name, puts_of
from reports.calc.rules.waiting import FOOD, days_needed, soon, waited
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told


def manure(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold food harvests against the day raw manure was worked in [CFR205]_."""
    pair = Matter.MANURE_ON_TOP, Matter.MANURE_SOON
    for put in puts_of(books, "manure"):
        yield from waited(books, rule, put, pair)
    yield from _grazed(books, rule)


def _grazed(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Droppings count like manure left on top; how is for the certifier to say."""
    for flock in books.flocks:
        for crop in books.on_ground("crops", flock.field_id):
            need = days_needed(crop.touches_soil, rule)
            out = flock.out_on or flock.in_on
            if crop.use == FOOD and 0 <= (crop.on - out).days < need:
                told: Told = {
                    "field": field_name(books, flock.field_id),
                    "animals": flock.animals,
                    "lot": crop.code,
                    "days": (crop.on - out).days,
                    "need": need,
                }
                yield soon(Matter.GRAZED_SOON, crop, told, Severity.WARN)
