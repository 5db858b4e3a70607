"""What is put on: with whose leave, by whom, against what."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.asked import (
    PEST,
    field_name,
    puts_of,
    type_of,
    under_rules,
)
from reports.calc.rules.clock import anchored
from reports.calc.rules.dates import land_clean_from
from reports.calc.rules.standing import beside
from reports.calc.rules.telling import of_put, put_values
from reports.calc.shapes.books import Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import (
    Found,
    Matter,
    Rule,
    Severity,
)


def approval(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find inputs without leave, or put on before or after it ran."""
    yield from _lots_stopped(books, rule)
    none: set[int] = set()
    for put in _of_season(books):
        if not under_rules(books, put.field_id):
            continue
        product = books.product[put.product_id]
        told = put_values(books, put)
        if not product.approval and product.id not in none:
            none.add(product.id)
            at = (product.id, put.on, put.field_id)
            yield Found(Matter.NOT_APPROVED, "input-products", *at, values=told)
        if product.approved_on and put.on < product.approved_on:
            told["approved"] = product.approved_on
            yield of_put(Matter.APPROVED_AFTER, put, told, Severity.FIX)
        if product.approved_until and product.approved_until < put.on:
            told["until"] = product.approved_until
            yield of_put(Matter.APPROVAL_RAN_OUT, put, told, Severity.FIX)


def _lots_stopped(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Organic lots of ground where something without leave was put on lately.

    It counts as long as the clock of the land runs; what is sprayed without leave
    stops lots by that clock itself.
    """
    for crop, anchor in anchored(books, rule):
        for put in books.on_ground("puts", crop.field_id):
            if put.on > crop.on or anchor.on >= land_clean_from(
                put.on, months=anchor.months
            ):
                continue
            if _has_leave(books, put) or beside(books, put.stand_id, crop.stand_id):
                continue
            told = {**put_values(books, put), "lot": crop.code}
            told["field"] = field_name(books, crop.field_id)
            at = (crop.id, crop.on, crop.field_id)
            yield Found(Matter.GREW_UNAPPROVED, "harvest-lots", *at, values=told)


def _has_leave(books: Dossier, put: Put) -> bool:
    """Whether it is approved, or another rule's to say."""
    return bool(books.product[put.product_id].approval) or type_of(books, put) == PEST


def applicator(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find applications without who, with what address, and how [USC6519]_."""
    addressed = {one.name.casefold() for one in books.partners if one.address.strip()}
    if books.farm_address.strip():
        addressed |= {name.casefold() for name in books.people}
    for put in _of_season(books):
        told = put_values(books, put)
        if not put.done_by:
            yield of_put(Matter.APPLICATOR_UNNAMED, put, told)
        elif put.done_by.casefold() not in addressed:
            told["who"] = put.done_by
            yield of_put(Matter.APPLICATOR_NO_ADDRESS, put, told)
        if not put.method:
            yield of_put(Matter.METHOD_UNNAMED, put, told)


def trigger(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find pest-control materials with nothing they were put on against."""
    for put in puts_of(books, PEST):
        untold = put.on in books.season and not put.target
        if untold and under_rules(books, put.field_id):
            yield of_put(Matter.TARGET_UNNAMED, put, put_values(books, put))


def _of_season(books: Dossier) -> Iterator[Put]:
    return (put for put in books.puts if put.on in books.season)
