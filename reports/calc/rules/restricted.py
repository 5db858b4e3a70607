"""Restricted-use products: what is written down, when, under which licence."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.asked import field_name
from reports.calc.rules.dates import recorded_by
from reports.calc.rules.telling import of_put, put_values
from reports.calc.shapes.books import Licence, Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told


def restricted_record(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Look for each of the nine elements of a record [CFR110]_, day and licence apart.

    No record is without its day; the certification number is a rule of its own. The
    registration stands with the product, so that is told once.
    """
    told: set[int] = set()
    for put in _restricted(books):
        product = books.product[put.product_id]
        missing = {
            Matter.RESTRICTED_NO_PRODUCT: not product.name.strip(),
            Matter.RESTRICTED_NO_AMOUNT: not put.amount > 0,
            Matter.RESTRICTED_NO_AREA: not put.area_m2 > 0,
            Matter.RESTRICTED_NO_CROP: put.stand_id is None and not put.target,
            Matter.RESTRICTED_NO_PLACE: not field_name(books, put.field_id).strip(),
            Matter.RESTRICTED_NO_NAME: not put.done_by.strip(),
        }
        for matter, lacks in missing.items():
            if lacks:
                yield of_put(matter, put, put_values(books, put))
        if not product.registration.strip() and product.id not in told:
            told.add(product.id)
            at = ("input-products", product.id, put.on, put.field_id)
            values = put_values(books, put)
            yield Found(Matter.RESTRICTED_NO_NUMBER, *at, values=values)


def restricted_days(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find restricted-use products written down later than allowed [CFR110]_."""
    for put in _restricted(books):
        if put.written_on and (put.written_on - put.on).days > rule["days"]:
            told: Told = {**put_values(books, put), "written": put.written_on}
            told["need"] = round(rule["days"])
            yield of_put(Matter.RESTRICTED_LATE, put, told)


def contractor_copy(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find a contractor's restricted-use work with no copy of the record kept."""
    hired = {one.name.casefold() for one in books.partners if one.is_contractor}
    for put in _restricted(books):
        due = recorded_by(put.on, days=round(rule["days"]))
        kept = books.documents is None or ("applications", put.id) in books.documents
        if put.done_by.casefold() in hired and not kept and books.today > due:
            told: Told = {**put_values(books, put), "who": put.done_by, "due": due}
            yield of_put(Matter.RESTRICTED_NO_COPY, put, told)


def licence(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Hold the licence named with restricted use against those written down."""
    yield from _soon_over(books, round(rule["soon_days"]))
    for put in _restricted(books):
        told = put_values(books, put)
        if not bare(put.licence):
            yield of_put(Matter.LICENCE_MISSING, put, told)
            continue
        held = [one for one in books.licences if is_named(one, put.licence)]
        if not held:
            yield of_put(Matter.LICENCE_UNKNOWN, put, told, Severity.FIX)
        elif not any(holds(one, put.on) for one in held):
            yield _of_days(put, held, told)


def bare(text: str) -> str:
    """Return a number without what people write differently: case, spaces, marks.

    Examples
    --------
    >>> bare("NE-47 11")
    'ne4711'
    """
    return "".join(letter for letter in text.casefold() if letter.isalnum())


def is_named(one: Licence, typed: str) -> bool:
    """Tell whether a number as typed means this licence, with its State or without."""
    return bare(typed) in {bare(one.number), bare(one.state + one.number)}


def holds(one: Licence, day: dt.date) -> bool:
    """Tell whether a licence held on a day, its first and last among them."""
    return (one.since is None or one.since <= day) and day <= one.until


def _soon_over(books: Dossier, days: int) -> Iterator[Found]:
    """Licences used this season that run out within days and are not renewed."""
    used = {put.licence for put in _restricted(books)}
    for one in books.licences:
        same = [
            other for other in books.licences if bare(other.number) == bare(one.number)
        ]
        last = max(other.until for other in same)
        soon = books.today <= one.until <= books.today + dt.timedelta(days=days)
        if soon and last == one.until and any(is_named(one, typed) for typed in used):
            told: Told = {"holder": one.holder, "until": one.until}
            at = ("applicator-licences", one.id)
            yield Found(Matter.LICENCE_SOON, *at, severity=Severity.INFO, values=told)


def _of_days(put: Put, held: list[Licence], told: Told) -> Found:
    """Say that a licence had run out, or, where none has, that it had not begun."""
    over = [one.until for one in held if one.until < put.on]
    if over:
        return of_put(Matter.LICENCE_RAN_OUT, put, {**told, "until": max(over)})
    since = min(one.since for one in held if one.since)
    return of_put(Matter.LICENCE_NOT_YET, put, {**told, "since": since})


def _restricted(books: Dossier) -> Iterator[Put]:
    for put in books.puts:
        if put.on in books.season and books.product[put.product_id].restricted:
            yield put
