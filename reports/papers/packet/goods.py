"""Registers of harvest lots, suppliers, mishaps and training."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from django.utils.translation import gettext as _now
from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.books import Crop
from reports.labels.records import MISHAPS, SUBJECTS
from reports.papers.packet.ground import STATUS
from reports.papers.packet.tables import Books, Register, day, register


def harvest(books: Books) -> Register:
    return _lots(books, lambda crop: True)


def apart(books: Books) -> Register:
    """Lots that must be kept apart, with their total."""

    def is_apart(crop: Crop) -> bool:
        return crop.from_buffer or crop.status != "organic"

    told = _lots(books, is_apart)
    total = sum(
        crop.mass_kg
        for crop in books.told.crops
        if crop.on in books.told.season and is_apart(crop)
    )
    if not told.rows:
        return told
    last = (_now("Together"), "", "", "", books.mass(total), "", "", "")
    return Register(told.headings, (*told.rows, last))


def suppliers(books: Books) -> Register:
    rows = [
        (
            one.name,
            one.address.replace("\n", ", "),
            one.certificate,
            day(one.certificate_until),
            day(one.verified_on),
            one.verified_how,
        )
        for one in books.told.partners
    ]
    headings = (
        _("Name"),
        _("Address"),
        _("Certificate"),
        _("Runs to"),
        _("Looked up"),
        _("Where"),
    )
    return register(headings, rows)


def incidents(books: Books) -> Register:
    rows = [
        (
            day(one.on),
            str(MISHAPS.get(one.what, one.what)),
            books.field(one.field_id),
            one.account,
            one.told_to,
            one.done_about_it,
        )
        for one in books.told.mishaps
        if one.on in books.told.season
    ]
    headings = (
        _("Day"),
        _("What"),
        _("Field"),
        _("What happened"),
        _("Told to"),
        _("Done about it"),
    )
    return register(headings, rows)


def training(books: Books) -> Register:
    rows = [
        (
            day(one.on),
            one.person,
            str(SUBJECTS.get(one.subject, one.subject)),
            one.topic,
            one.trainer,
            day(one.until),
        )
        for one in books.told.trained
        if one.on in books.told.season
    ]
    headings = (
        _("Day"),
        _("Person"),
        _("Counts as"),
        _("Topic"),
        _("Trainer"),
        _("Holds until"),
    )
    return register(headings, rows)


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


def _names(words: Iterable[str]) -> str:
    return "; ".join(dict.fromkeys(words))


REGISTERS: Mapping[str, Callable[[Books], Register]] = {
    "harvest": harvest,
    "apart": apart,
    "suppliers": suppliers,
    "incidents": incidents,
    "training": training,
}
