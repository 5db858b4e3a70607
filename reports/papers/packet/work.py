"""Registers of what was put on, compost, animals and clean-outs."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from django.utils.translation import gettext_lazy as _

from reports.calc.rules.restricted import is_named
from reports.calc.shapes.books import Put
from reports.labels import INPUTS
from reports.labels.records import HEAPS
from reports.papers.packet.tables import (
    Books,
    Register,
    day,
    days_from,
    number,
    register,
    yes,
)

PEST = "pest"
MANURE = "manure"


def inputs(books: Books) -> Register:
    rows = []
    for put in _of_season(books):
        type_of = books.told.product[put.product_id].type
        if type_of == PEST:
            continue
        cut = books.harvest_after(put.field_id, put.on)
        worked_in = put.worked_in_on if type_of == MANURE else put.on
        rows.append(
            (
                *put_cells(books, put),
                day(put.worked_in_on),
                day(cut),
                days_from(worked_in, cut),
                approval(books, put),
            )
        )
    more = (_("Worked in"), _("Next harvest"), _("Days to it"), _("Approval"))
    return register((*PUT_HEADINGS, *more), rows)


def pests(books: Books) -> Register:
    rows = []
    for put in _of_season(books):
        product = books.told.product[put.product_id]
        if product.type != PEST:
            continue
        hours = (put.started_at, put.finished_at)
        cells = put_cells(books, put)
        rows.append(
            (
                *cells[:3],
                *cells[4:],
                " – ".join(f"{one:%H:%M}" for one in hours if one),
                put.target,
                product.registration,
                number(product.reentry_hours),
                number(product.preharvest_days),
                licence(books, put),
                approval(books, put),
            )
        )
    return register(PEST_HEADINGS, rows)


def compost(books: Books) -> Register:
    rows = []
    for heap in books.told.heaps:
        if heap.started_on not in books.told.season:
            continue
        temps = [temp_c for _day, temp_c, _turned in heap.days if temp_c is not None]
        rows.append(
            (
                heap.name,
                str(HEAPS.get(heap.method, heap.method)),
                day(heap.started_on),
                number(heap.ratio),
                str(len(temps)),
                books.heat(min(temps), max(temps)) if temps else "",
                str(sum(turned for _day, _temp, turned in heap.days)),
            )
        )
    headings = (
        _("Batch"),
        _("Method"),
        _("Started"),
        _("C:N"),
        _("Days read"),
        _("Heat"),
        _("Turnings"),
    )
    return register(headings, rows)


def grazing(books: Books) -> Register:
    rows = []
    for one in books.told.flocks:
        if one.in_on not in books.told.season:
            continue
        left = one.out_on or one.in_on
        cut = books.harvest_after(one.field_id, left)
        rows.append(
            (
                books.field(one.field_id),
                one.animals,
                day(one.in_on),
                day(one.out_on),
                yes(one.label_checked),
                day(cut),
                days_from(left, cut),
            )
        )
    headings = (
        _("Field"),
        _("Animals"),
        _("In"),
        _("Out"),
        _("Labels read first"),
        _("Next harvest"),
        _("Days to it"),
    )
    return register(headings, rows)


def cleaning(books: Books) -> Register:
    rows = [
        (day(one.on), one.machine, one.held_before, one.method, one.done_by)
        for one in books.told.cleaned
        if one.on in books.told.season
    ]
    headings = (
        _("Day"),
        _("Machine or store"),
        _("What it held before"),
        _("How"),
        _("By"),
    )
    return register(headings, rows)


def put_cells(books: Books, put: Put) -> tuple[str, ...]:
    """The cells under ``PUT_HEADINGS``."""
    product = books.told.product[put.product_id]
    return (
        day(put.on),
        books.field(put.field_id),
        product.name,
        str(INPUTS.get(product.type, product.type)),
        put.product_lot,
        books.amount(put.amount, put.measure),
        books.area(put.area_m2),
        put.method,
        put.done_by,
    )


def licence(books: Books, put: Put) -> str:
    """The number, and until when the licence holds that it names."""
    held = [one.until for one in books.told.licences if is_named(one, put.licence)]
    return f"{put.licence}, {day(max(held))}" if held else put.licence


def approval(books: Books, put: Put) -> str:
    product = books.told.product[put.product_id]
    until = day(product.approved_until)
    return f"{product.approval}, {until}" if until else product.approval


def _of_season(books: Books) -> list[Put]:
    told = [put for put in books.told.puts if put.on in books.told.season]
    return sorted(told, key=lambda put: (put.on, put.id))


PUT_HEADINGS = (
    _("Day"),
    _("Field"),
    _("What"),
    _("Type"),
    _("Lot"),
    _("Amount"),
    _("Area"),
    _("How"),
    _("By"),
)
PEST_HEADINGS = (
    *PUT_HEADINGS[:3],
    *PUT_HEADINGS[4:],
    _("Hours"),
    _("Against"),
    _("Registration"),
    _("Re-entry, hours"),
    _("Pre-harvest, days"),
    _("Licence"),
    _("Approval"),
)
REGISTERS: Mapping[str, Callable[[Books], Register]] = {
    "inputs": inputs,
    "pests": pests,
    "compost": compost,
    "grazing": grazing,
    "cleaning": cleaning,
}
