"""Registers of inputs, animals, clean-outs, harvests and mishaps."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from django.utils.translation import gettext_lazy as _

from reports.calc.rules.dates import add_months
from reports.calc.shapes.books import Crop, Put
from reports.labels import INPUTS
from reports.papers.packet.ground import STATUS
from reports.papers.packet.tables import Books, Register, day, register, yes

PEST = "pest"
MONTHS_BACK = 36


def inputs(books: Books) -> Register:
    season = books.told.season
    told = [put for put in books.told.puts if put.on in season]
    rows = [
        (*_put(books, put), day(put.worked_in_on), _approval(books, put))
        for put in told
        if books.told.product[put.product_id].type != PEST
    ]
    return register((*PUT_HEADINGS, _("Worked in"), _("Approval")), rows)


def pests(books: Books) -> Register:
    rows = []
    for put in books.told.puts:
        product = books.told.product[put.product_id]
        if put.on not in books.told.season or product.type != PEST:
            continue
        hours = (put.started_at, put.finished_at)
        rows.append(
            (
                *_put(books, put),
                " – ".join(f"{one:%H:%M}" for one in hours if one),
                put.target,
                product.registration,
                _number(product.reentry_hours),
                _number(product.preharvest_days),
                put.licence,
                _approval(books, put),
            )
        )
    headings = (
        *PUT_HEADINGS,
        _("Hours"),
        _("Against"),
        _("Registration"),
        _("Re-entry, hours"),
        _("Pre-harvest, days"),
        _("Licence"),
        _("Approval"),
    )
    return register(headings, rows)


def substances(books: Books) -> Register:
    since = add_months(books.told.season.last, -MONTHS_BACK)
    told = [put for put in books.told.puts if put.on >= since]
    told.sort(key=lambda put: (books.field(put.field_id), put.on))
    rows = [
        (books.field(put.field_id), *_put(books, put)[:1], *_put(books, put)[2:])
        for put in told
    ]
    headings = (_("Field"), *PUT_HEADINGS[:1], *PUT_HEADINGS[2:])
    return register(headings, rows)


def compost(books: Books) -> Register:
    rows = []
    for heap in books.told.heaps:
        if heap.started_on not in books.told.season:
            continue
        temps = [temp_c for _day, temp_c, _turned in heap.days if temp_c is not None]
        rows.append(
            (
                heap.name,
                heap.method.replace("_", " "),
                day(heap.started_on),
                _number(heap.ratio),
                str(len(temps)),
                f"{min(temps):.0f} – {max(temps):.0f} °C" if temps else "",
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
    rows = [
        (
            books.field(one.field_id),
            one.animals,
            day(one.in_on),
            day(one.out_on),
            yes(one.label_checked),
        )
        for one in books.told.flocks
        if one.in_on in books.told.season
    ]
    headings = (_("Field"), _("Animals"), _("In"), _("Out"), _("Labels read first"))
    return register(headings, rows)


def cleaning(books: Books) -> Register:
    rows = [
        (day(one.on), one.machine)
        for one in books.told.cleaned
        if one.on in books.told.season
    ]
    return register((_("Day"), _("Machine or store")), rows)


def harvest(books: Books) -> Register:
    return _lots(books, lambda crop: True)


def apart(books: Books) -> Register:
    return _lots(books, lambda crop: crop.from_buffer or crop.status != "organic")


def suppliers(books: Books) -> Register:
    rows = [
        (
            one.name,
            one.certificate,
            day(one.certificate_until),
            day(one.verified_on),
        )
        for one in books.told.partners
    ]
    headings = (_("Name"), _("Certificate"), _("Runs to"), _("Looked up"))
    return register(headings, rows)


def incidents(books: Books) -> Register:
    rows = [
        (
            day(one.on),
            one.what.replace("_", " "),
            books.field(one.field_id),
            one.told_to,
            one.done_about_it,
        )
        for one in books.told.mishaps
        if one.on in books.told.season
    ]
    headings = (_("Day"), _("What"), _("Field"), _("Told to"), _("Done about it"))
    return register(headings, rows)


def training(books: Books) -> Register:
    rows = [
        (day(one.on), one.label)
        for one in books.told.entries
        if one.noun == "trainings" and one.on in books.told.season
    ]
    return register((_("Day"), _("Who and what")), rows)


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


def _put(books: Books, put: Put) -> tuple[str, ...]:
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


def _lots(books: Books, wanted: Callable[[Crop], bool]) -> Register:
    rows = []
    for crop in books.told.crops:
        if crop.on not in books.told.season or not wanted(crop):
            continue
        kept = books.told.by_lot["kept"].get(crop.id, ())
        gone = books.told.by_lot["gone"].get(crop.id, ())
        rows.append(
            (
                crop.code,
                day(crop.on),
                crop.crop,
                books.field(crop.field_id),
                books.mass(crop.mass_kg),
                str(STATUS.get(crop.status, crop.status)),
                _names(row.place for row in kept),
                _names(f"{row.buyer} {books.mass(row.mass_kg)}" for row in gone),
            )
        )
    headings = (
        _("Lot"),
        _("Harvested"),
        _("Crop"),
        _("Field"),
        _("Weight"),
        _("Status"),
        _("Stored"),
        _("Sold or used"),
    )
    return register(headings, rows)


def _approval(books: Books, put: Put) -> str:
    product = books.told.product[put.product_id]
    until = day(product.approved_until)
    return f"{product.approval}, {until}" if until else product.approval


def _number(value: float | None) -> str:
    return "" if value is None else f"{value:g}"


def _names(words: Iterable[str]) -> str:
    return "; ".join(dict.fromkeys(words))


REGISTERS: Mapping[str, Callable[[Books], Register]] = {
    "inputs": inputs,
    "pests": pests,
    "substances": substances,
    "compost": compost,
    "grazing": grazing,
    "cleaning": cleaning,
    "harvest": harvest,
    "apart": apart,
    "suppliers": suppliers,
    "incidents": incidents,
    "training": training,
}
