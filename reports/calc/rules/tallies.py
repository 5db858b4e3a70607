"""So many of so many: how far the books are filled, told without a grade."""

from __future__ import annotations

from collections.abc import Iterable

from reports.calc.rules.asked import cut_this_season, sown_this_season
from reports.calc.rules.search import kinds_unsearched
from reports.calc.rules.tags import SELF_SOWN
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Counted, Tally


def tallies(books: Dossier) -> tuple[Counted, ...]:
    """Return every count of the season of which there is anything to count."""
    counted = (*_seed(books), *_inputs(books), *_harvest(books), *_books(books))
    return tuple(one for one in counted if one.of)


def _counted(tally: Tally, marks: Iterable[bool]) -> Counted:
    told = list(marks)
    return Counted(tally, sum(told), len(told))


def _seed(books: Dossier) -> list[Counted]:
    stands = [
        stand for stand, _ in sown_this_season(books) if stand.method != SELF_SOWN
    ]
    used = {line.lot_id for stand in stands for line in stand.lines}
    lots = [lot for lot in books.lots if lot.id in used]
    linked = (
        bool(stand.lines) and all(line.lot_id for line in stand.lines)
        for stand in stands
    )
    tagged = (lot.is_tested for lot in lots)
    papers = (
        bool(lot.certificate)
        if lot.status == "organic"
        else not kinds_unsearched(books, lot)
        for lot in lots
    )
    return [
        _counted(Tally.PLANTINGS_LOT, linked),
        _counted(Tally.LOTS_TAG, tagged),
        _counted(Tally.LOTS_PAPER, papers),
    ]


def _inputs(books: Dossier) -> list[Counted]:
    puts = [put for put in books.puts if put.on in books.season]
    return [
        _counted(
            Tally.INPUTS_APPROVED,
            (bool(books.product[put.product_id].approval) for put in puts),
        ),
        _counted(Tally.INPUTS_BY, (bool(put.done_by) for put in puts)),
    ]


def _harvest(books: Dossier) -> list[Counted]:
    crops = list(cut_this_season(books))
    stands = [books.stand.get(crop.stand_id or 0) for crop in crops]
    gone = [row for row in books.gone if row.on in books.season]
    stored = [bool(books.by_lot["kept"].get(crop.id)) for crop in crops]
    away = [bool(books.by_lot["gone"].get(crop.id)) for crop in crops]
    whole = [
        stand is not None
        and bool(stand.lines)
        and all(line.lot_id for line in stand.lines)
        and (kept or sold)
        for stand, kept, sold in zip(stands, stored, away, strict=True)
    ]
    return [
        _counted(Tally.HARVESTS_PLANTING, (stand is not None for stand in stands)),
        _counted(Tally.HARVESTS_STORED, stored),
        _counted(Tally.HARVESTS_CHAIN, whole),
        _counted(Tally.SALES_INVOICE, (bool(row.invoice) for row in gone)),
    ]


def _books(books: Dossier) -> list[Counted]:
    entries = [one for one in books.entries if one.on in books.season]
    history = {row.field_id for row in books.statements}
    return [
        _counted(Tally.FIELDS_OUTLINE, (one.has_outline for one in books.fields)),
        _counted(
            Tally.FIELDS_HISTORY,
            (
                bool(books.overlap.get(one.id, {one.id}) & history)
                or one.status_since is not None
                for one in books.fields
            ),
        ),
        _counted(
            Tally.RECORDS_PROMPT,
            ((one.written_on - one.on).days <= 1 for one in entries),
        ),
    ]
