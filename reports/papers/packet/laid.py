"""The register of films and tarps: when each was laid, and when it came off."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from django.utils.translation import gettext as _now
from django.utils.translation import gettext_lazy as _

from reports.calc.rules.laid import told_by_itself
from reports.calc.shapes.books import EndOf, Laid, Stand
from reports.calc.shapes.ledger import Ending, Material
from reports.labels.records import WENT, material_said
from reports.papers.packet.tables import Books, Register, day, register


def films(books: Books) -> Register:
    """Those that lay in the season, and the tarps that ended a stand in it."""
    season = books.told.season
    lying = (row for row in books.told.laid if row.lies_in(season.first, season.last))
    rows = [*(_row(books, row) for row in lying), *_of_ends(books)]
    return register(HEADINGS, sorted(rows))


def _row(books: Books, row: Laid) -> tuple[str, ...]:
    stand = books.told.stand.get(row.stand_id or 0)
    return (
        day(row.on),
        books.field(row.field_id),
        row.words or material_said(row.material),
        books.area(row.area_m2),
        stand.name if stand else "",
        _off(row),
        str(WENT.get(row.went, "")),
        row.approval,
        row.done_by,
    )


def _of_ends(books: Books) -> Iterator[tuple[str, ...]]:
    for end in books.told.ends:
        stand = books.told.stand.get(end.stand_id)
        if not stand or end.method != Ending.TARPED or end.on not in books.told.season:
            continue
        if not told_by_itself(books.told, end, stand.field_id):
            yield _row(books, _tarp(end, stand))


def _tarp(end: EndOf, stand: Stand) -> Laid:
    return Laid(
        id=end.id,
        field_id=stand.field_id,
        material=Material.TARP,
        on=end.on,
        area_m2=end.area_m2,
        stand_id=stand.id,
        off_on=end.tarp_removed_on,
        done_by=end.done_by,
    )


def _off(row: Laid) -> str:
    """The day it came off; a missing one is said in words."""
    stays = {Material.BIODEGRADABLE, Material.PAPER}
    if row.off_on is None and row.material not in stays:
        return _now("no day written down")
    return day(row.off_on)


HEADINGS = (
    _("Laid"),
    _("Field"),
    _("Material"),
    _("Area"),
    _("What grew in it"),
    _("Taken off"),
    _("Where it went"),
    _("Approval"),
    _("By"),
)
REGISTERS: Mapping[str, Callable[[Books], Register]] = {"films": films}
