"""Registers of land, its edges, seed, and searches for seed."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping

from django.utils.translation import gettext_lazy as _

from farm.models import Field
from reports.calc.rules.engineered import is_asked
from reports.calc.shapes.books import Lot
from reports.labels.records import REASONS
from reports.papers.packet.tables import Books, Register, day, register, share, yes

DAYS_A_MONTH = 365.2425 / 12


def land(books: Books) -> Register:
    rows = []
    for one in books.told.fields:
        said = books.told.by_field["statements"].get(one.id, ())
        used = [row.last_used_on or row.last for row in said if row.substance]
        last_used = max(used, default=None)
        cut = books.harvest_after(one.id, books.told.season.first)
        months = (cut - last_used).days / DAYS_A_MONTH if cut and last_used else None
        rows.append(
            (
                one.name,
                books.area(one.area_m2),
                str(Field.Status(one.status).label),
                day(one.status_since),
                day(last_used),
                day(cut),
                "" if months is None else f"{months:.1f}",
                "; ".join(
                    f"{day(row.first)} – {day(row.last)}, {row.signer}" for row in said
                ),
                yes(one.has_outline),
            )
        )
    headings = (
        _("Field"),
        _("Area"),
        _("Status"),
        _("Since"),
        _("Substance last used"),
        _("First harvest of the season"),
        _("Months between"),
        _("Statements signed"),
        _("Outline"),
    )
    return register(headings, rows)


def edges(books: Books) -> Register:
    rows = [
        (
            books.field(one.field_id),
            one.side,
            one.neighbour,
            "" if one.buffer_m is None else books.length(one.buffer_m),
            one.barrier,
        )
        for one in books.told.sides
    ]
    return register(
        (_("Field"), _("Side"), _("What lies there"), _("Buffer"), _("Barrier")), rows
    )


def seed(books: Books) -> Register:
    told, season = books.told, books.told.season
    sown: dict[int, float] = {}
    before: dict[int, float] = {}
    for stand in told.stands:
        for line in stand.lines:
            if line.lot_id and stand.sown_on and stand.sown_on <= season.last:
                into = sown if stand.sown_on in season else before
                into[line.lot_id] = into.get(line.lot_id, 0.0) + (line.seed_kg or 0.0)
    searched = {one.lot_id: one.on for one in told.searches if one.lot_id}
    moved: dict[int, float] = {}
    for move in told.moves:
        if move.on <= season.last:
            moved[move.lot_id] = moved.get(move.lot_id, 0.0) + move.signed_kg
    rows = []
    for lot in told.lots:
        if lot.id not in sown and lot.received_on not in season:
            continue
        used = sown.get(lot.id, 0.0)
        left = lot.received_kg + moved.get(lot.id, 0.0) - used - before.get(lot.id, 0.0)
        on = searched.get(lot.id)
        rows.append(
            (
                " ".join(filter(None, (lot.kind, lot.variety))),
                lot.number,
                lot.supplier,
                day(lot.received_on),
                str(STATUS.get(lot.status, lot.status)),
                papers(lot, on),
                lot.treatment or lot.inoculant,
                share(lot.purity),
                share(lot.germination),
                day(lot.tested_on),
                books.mass(lot.received_kg),
                books.mass(used),
                books.mass(max(0.0, round(left, 6))),
            )
        )
    return register(SEED_HEADINGS, rows)


def papers(lot: Lot, searched_on: dt.date | None) -> str:
    """Certificate or search, and what shows that the seed is not engineered."""
    search = f"{_('search of')} {day(searched_on)}" if searched_on else ""
    shown = f"{SHOWN[lot.non_gmo]} {day(lot.non_gmo_on)}" if lot.non_gmo else ""
    lacks = is_asked(lot) and not shown
    missing = str(_("not shown not to be engineered")) if lacks else ""
    return "; ".join(filter(None, (lot.certificate or search, shown, missing)))


def searches(books: Books) -> Register:
    rows = [
        (
            one.kind,
            one.traits,
            source,
            day(asked),
            answer,
            str(REASONS.get(one.reason, one.reason)),
        )
        for one in books.told.searches
        if one.on <= books.told.season.last
        for (source, asked), answer in zip(
            one.asked or (("", one.on),), one.answers or ("",), strict=True
        )
    ]
    headings = (
        _("Kind"),
        _("Wanted"),
        _("Source asked"),
        _("Day"),
        _("Answer"),
        _("Reason"),
    )
    return register(headings, rows)


STATUS = {
    "organic": _("organic"),
    "untreated": _("not organic, untreated"),
    "treated": _("treated"),
    "transitional": _("transitional"),
    "not_organic": _("not organic"),
}
SHOWN = {
    "written": _("not engineered, statement of"),
    "test": _("not engineered, test of"),
}
SEED_HEADINGS = (
    _("Kind and variety"),
    _("Lot"),
    _("Supplier"),
    _("Received"),
    _("Status"),
    _("Certificate, search, statement"),
    _("On the seed"),
    _("Purity"),
    _("Germination"),
    _("Tested"),
    _("Came"),
    _("Sown this season"),
    _("Left"),
)
REGISTERS: Mapping[str, Callable[[Books], Register]] = {
    "land": land,
    "edges": edges,
    "seed": seed,
    "searches": searches,
}
