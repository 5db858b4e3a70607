"""Films and tarps on the ground: what they are made of, and that they come off."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from reports.calc.rules.asked import NEAR, field_name, under_rules
from reports.calc.rules.dates import add_months, last_of_season
from reports.calc.shapes.books import EndOf, Laid
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.ledger import Ending, Material
from reports.calc.shapes.rules import Found, Matter, Rule, Severity, Told

# What does not rot, and so comes off again.
SYNTHETIC = frozenset(
    {Material.POLYETHYLENE, Material.FABRIC, Material.TARP, Material.PVC}
)
# Whether these may stay is the certifier's to say.
DOUBTFUL = frozenset({Material.OTHER})
WORKED_IN = "worked_in"
NOUN = "mulch-films-and-tarps"


@dataclass(frozen=True, slots=True)
class _Sheet:
    """A sheet, whichever record tells of it."""

    noun: str
    row: Laid


def tarp(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find films and tarps left past the season they served [CFR205.206C]_.

    A sheet serves the stand that grew in it to its last harvest or its end, and
    bare ground to the end of the season in which it was laid. Under a stand that
    nobody ended it is asked about some months on, by default a season. Of that one,
    and of one laid so few days before the season's end that it may be meant for a
    clean bed in spring, only another look is asked.
    """
    for sheet in _sheets(books):
        due = due_on(books, sheet.row, months=round(rule["stand_months"]))
        matter = _left(books, sheet.row, due, rule)
        if matter is not None:
            yield _found(books, sheet, *matter, due)


def sheet_material(books: Dossier, rule: Rule) -> Iterator[Found]:
    """Find sheets of PVC, and those that somebody must approve first [CFR205.601B]_."""
    for row in books.laid:
        if not row.lies_in(books.season.first, books.season.last):
            continue
        if not under_rules(books, row.field_id):
            continue
        sheet = _Sheet(NOUN, row)
        if row.material == Material.PVC:
            yield _found(books, sheet, Matter.SHEET_PVC, None)
        elif row.material == Material.BIODEGRADABLE and not row.approval:
            yield _found(books, sheet, Matter.SHEET_UNAPPROVED, Severity.FIX)
        elif row.material in DOUBTFUL and not row.approval:
            yield _found(books, sheet, Matter.SHEET_UNAPPROVED, Severity.WARN)


def _sheets(books: Dossier) -> Iterator[_Sheet]:
    """Sheets that lay in the season, on ground under the rules."""
    told = [_Sheet(NOUN, row) for row in books.laid]
    told += [_Sheet("terminations", row) for row in _tarps_of_ends(books)]
    for sheet in told:
        row, season = sheet.row, books.season
        comes_off = row.material in SYNTHETIC | DOUBTFUL
        lies = row.lies_in(season.first, season.last)
        if comes_off and lies and under_rules(books, row.field_id):
            yield sheet


def _tarps_of_ends(books: Dossier) -> Iterator[Laid]:
    """Tarps that ended a stand, unless a record of the sheet itself tells of them."""
    for end in books.ends:
        stand = books.stand.get(end.stand_id)
        if end.method != Ending.TARPED or stand is None:
            continue
        if not told_by_itself(books, end, stand.field_id):
            at = (end.id, stand.field_id, Material.TARP, end.on, end.area_m2)
            yield Laid(*at, stand.id, end.tarp_removed_on)


def told_by_itself(books: Dossier, end: EndOf, field_id: int) -> bool:
    """Tell whether a tarp that ended a stand has a record of its own."""
    if end.tarp_removed_on is not None:
        return False
    return any(
        row.stand_id == end.stand_id
        or (row.field_id == field_id and abs(row.on - end.on) <= NEAR)
        for row in books.laid
    )


def _left(
    books: Dossier, row: Laid, due: dt.date, rule: Rule
) -> tuple[Matter, Severity | None] | None:
    """What is to be told of one sheet, and how much it weighs."""
    is_plastic = row.material in SYNTHETIC
    if row.went == WORKED_IN:
        return (Matter.SHEET_WORKED_IN, None) if is_plastic else None
    until = due + dt.timedelta(days=round(rule["after_days"]))
    if due > books.season.last or (row.off_on or books.today) <= until:
        return None
    stands = _stands(books, row)
    if row.off_on is not None:
        return None if stands else (Matter.TARP_LATE, Severity.WARN)
    if stands:
        return Matter.TARP_UNDER, Severity.WARN
    is_late = (due - row.on).days < rule["late_days"]
    is_sure = is_plastic and not is_late
    return Matter.TARP_LEFT, None if is_sure else Severity.WARN


def due_on(books: Dossier, row: Laid, *, months: int) -> dt.date:
    """Return the last day of the season that a sheet served.

    Under a stand that nobody ended it serves so many months from being laid.
    """
    ends = books.by_stand["ends"].get(row.stand_id or 0, ())
    cuts = books.by_stand["crops"].get(row.stand_id or 0, ())
    used = [row.on, *(crop.on for crop in cuts), *(end.on for end in ends if end.over)]
    if _stands(books, row):
        used.append(add_months(row.on, months))
    return last_of_season(max(used), first=books.season.first)


def _stands(books: Dossier, row: Laid) -> bool:
    """Tell whether what grew in the sheet has no end written down."""
    stand = books.stand.get(row.stand_id or 0)
    ends = books.by_stand["ends"].get(row.stand_id or 0, ())
    return stand is not None and not any(end.over for end in ends)


def _found(
    books: Dossier,
    sheet: _Sheet,
    matter: Matter,
    severity: Severity | None,
    due: dt.date | None = None,
) -> Found:
    row = sheet.row
    stand = books.stand.get(row.stand_id or 0)
    told: Told = {
        "field": field_name(books, row.field_id),
        "material": row.words or row.material,
        "laid": row.on,
    }
    if due is not None:
        told["due"] = due
    if row.off_on is not None:
        told["off"] = row.off_on
    if stand is not None:
        told["kind"] = stand.name
    return Found(matter, sheet.noun, row.id, row.on, row.field_id, severity, told)
