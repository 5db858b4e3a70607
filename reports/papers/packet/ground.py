"""Registers of land, seed and what was sown."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping

from django.utils.translation import gettext as _now
from django.utils.translation import gettext_lazy as _

from farm.models import Field
from reports.calc.rules.dates import add_months
from reports.calc.shapes.books import Stand
from reports.calc.shapes.ledger import Ending, Method, Purpose, Residue
from reports.labels import label
from reports.papers.packet.tables import Books, Register, day, register, share, yes

MONTHS_BACK = 36


def land(books: Books) -> Register:
    rows = []
    for one in books.told.fields:
        said = books.told.by_field["statements"].get(one.id, ())
        used = [row.last_used_on or row.last for row in said if row.substance]
        rows.append(
            (
                one.name,
                books.area(one.area_m2),
                str(Field.Status(one.status).label),
                day(one.status_since),
                day(max(used, default=None)),
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
        _("Statements"),
        _("Outline"),
    )
    return register(headings, rows)


def edges(books: Books) -> Register:
    rows = [
        (
            books.field(one.field_id),
            one.side,
            one.neighbour,
            "" if one.buffer_m is None else f"{one.buffer_m:g} m",
            one.barrier,
        )
        for one in books.told.sides
    ]
    return register(
        (_("Field"), _("Side"), _("What lies there"), _("Buffer"), _("Barrier")), rows
    )


def rotation(books: Books) -> Register:
    since = add_months(books.told.season.last, -MONTHS_BACK)
    told = [one for one in books.told.stands if one.sown_on and one.sown_on >= since]
    told.sort(key=lambda one: (books.field(one.field_id), one.sown_on))
    rows = [
        (
            books.field(one.field_id),
            day(one.sown_on),
            day(_over(books, one)) or _now("stands"),
            one.name,
            label(Purpose(one.purpose)),
        )
        for one in told
    ]
    headings = (_("Field"), _("Sown"), _("Over"), _("Kind"), _("Purpose"))
    return register(headings, rows)


def seed(books: Books) -> Register:
    sown: dict[int, float] = {}
    season = books.told.season
    for stand in books.told.stands:
        for line in stand.lines:
            if line.lot_id and stand.sown_on and stand.sown_on in season:
                sown[line.lot_id] = sown.get(line.lot_id, 0.0) + (line.seed_kg or 0.0)
    rows = [
        (
            lot.name,
            lot.supplier,
            STATUS.get(lot.status, lot.status),
            lot.certificate,
            share(lot.purity),
            share(lot.germination),
            day(lot.tested_on),
            books.mass(lot.received_kg),
            books.mass(sown.get(lot.id, 0.0)),
        )
        for lot in books.told.lots
        if lot.id in sown or lot.received_on in season
    ]
    headings = (
        _("Seed"),
        _("Supplier"),
        _("Status"),
        _("Certificate"),
        _("Purity"),
        _("Germination"),
        _("Tested"),
        _("Received"),
        _("Sown this season"),
    )
    return register(headings, ([str(cell) for cell in row] for row in rows))


def searches(books: Books) -> Register:
    rows = [
        (
            one.kind,
            one.traits,
            day(one.on),
            "; ".join(f"{name}, {day(asked)}" for name, asked in one.asked),
            one.reason.replace("_", " "),
        )
        for one in books.told.searches
        if one.on <= books.told.season.last
    ]
    headings = (_("Kind"), _("Wanted"), _("Day"), _("Sources asked"), _("Reason"))
    return register(headings, rows)


def plantings(books: Books) -> Register:
    rows = []
    for one in books.told.stands:
        if one.sown_on is None or one.sown_on not in books.told.season:
            continue
        lots = [books.told.lot.get(line.lot_id or 0) for line in one.lines]
        weights = [line.seed_kg for line in one.lines if line.seed_kg]
        rows.append(
            (
                day(one.sown_on),
                books.field(one.field_id),
                books.area(one.area_m2),
                one.name,
                ", ".join(lot.number for lot in lots if lot),
                books.mass(sum(weights)) if weights else "",
                label(Method(one.method)),
                label(Purpose(one.purpose)),
            )
        )
    headings = (
        _("Sown"),
        _("Field"),
        _("Area"),
        _("Kind"),
        _("Lot"),
        _("Seed"),
        _("How"),
        _("Purpose"),
    )
    return register(headings, rows)


def endings(books: Books) -> Register:
    rows = []
    for end in books.told.ends:
        stand = books.told.stand.get(end.stand_id)
        if stand is None or end.on not in books.told.season:
            continue
        rows.append(
            (
                day(end.on),
                books.field(stand.field_id),
                stand.name,
                label(Ending(end.method)),
                label(Residue(end.residue)),
                day(end.tarp_removed_on),
                end.reason,
            )
        )
    headings = (
        _("Ended"),
        _("Field"),
        _("Kind"),
        _("How"),
        _("Residue"),
        _("Tarp off"),
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


def _over(books: Books, stand: Stand) -> dt.date | None:
    ends = books.told.by_stand["ends"].get(stand.id, ())
    return max((end.on for end in ends if end.over), default=None)


REGISTERS: Mapping[str, Callable[[Books], Register]] = {
    "land": land,
    "edges": edges,
    "rotation": rotation,
    "seed": seed,
    "searches": searches,
    "plantings": plantings,
    "endings": endings,
}
