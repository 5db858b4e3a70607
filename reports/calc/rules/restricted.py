"""Restricted-use products: what is written down, when, under which licence."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.rules.telling import of_put, put_values
from reports.calc.shapes.books import Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Told


def restricted_record(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Look for what a restricted-use record may lack of its nine elements."""
    for put in _restricted(books):
        told = put_values(books, put)
        product = books.product[put.product_id]
        if not product.registration:
            yield of_put(Matter.RESTRICTED_NO_NUMBER, put, told)
        if put.stand_id is None and not put.target:
            yield of_put(Matter.RESTRICTED_NO_CROP, put, told)
        if not put.done_by:
            yield of_put(Matter.RESTRICTED_NO_NAME, put, told)


def restricted_days(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find restricted-use products written down later than allowed [CFR110]_."""
    for put in _restricted(books):
        if put.written_on and (put.written_on - put.on).days > rule["days"]:
            told: Told = {**put_values(books, put), "written": put.written_on}
            told["need"] = round(rule["days"])
            yield of_put(Matter.RESTRICTED_LATE, put, told)


def licence(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find restricted-use products put on with no licence written down."""
    for put in _restricted(books):
        if not put.licence:
            yield of_put(Matter.LICENCE_MISSING, put, put_values(books, put))


def _restricted(books: Dossier) -> Iterator[Put]:
    for put in books.puts:
        if put.on in books.season and books.product[put.product_id].restricted:
            yield put
