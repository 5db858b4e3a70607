"""Registers of what was sown, and how it ended."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.ledger import Ending, Method, Purpose, Residue
from reports.labels import label
from reports.papers.packet.tables import Books, Register, day, days_from, register


def plantings(books: Books) -> Register:
    rows = []
    for one in books.told.stands:
        if one.sown_on is None or one.sown_on not in books.told.season:
            continue
        lots = [books.told.lot.get(line.lot_id or 0) for line in one.lines]
        weight = sum(line.seed_kg for line in one.lines if line.seed_kg)
        rows.append(
            (
                day(one.sown_on),
                books.field(one.field_id),
                books.area(one.area_m2),
                one.name,
                ", ".join(lot.number for lot in lots if lot),
                books.mass(weight) if weight else "",
                books.rate(weight, one.area_m2) if weight else "",
                label(Method(one.method)),
                label(Purpose(one.purpose)),
                one.done_by,
            )
        )
    return register(SOWN_HEADINGS, sorted(rows))


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
                day(stand.next_crop_on),
                days_from(end.on, stand.next_crop_on),
                end.reason,
                end.done_by,
            )
        )
    return register(ENDED_HEADINGS, sorted(rows))


SOWN_HEADINGS = (
    _("Sown"),
    _("Field"),
    _("Area"),
    _("Kind"),
    _("Lot"),
    _("Seed"),
    _("Rate"),
    _("How"),
    _("Purpose"),
    _("By"),
)
ENDED_HEADINGS = (
    _("Ended"),
    _("Field"),
    _("Kind"),
    _("How"),
    _("Residue"),
    _("Tarp off"),
    _("Next crop"),
    _("Days between"),
    _("Reason"),
    _("By"),
)
REGISTERS: Mapping[str, Callable[[Books], Register]] = {
    "plantings": plantings,
    "endings": endings,
}
