"""Changes since last season, told by the records themselves."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.shapes.basics import Span
from reports.calc.shapes.changes import Changed, Part
from reports.calc.shapes.dossier import Dossier


def changes_between(books: Dossier, last: Span, this: Span) -> tuple[Changed, ...]:
    """Return what was used in one season and not in the other, part by part.

    Parameters
    ----------
    books : Dossier
        The farm's books over both seasons.
    last, this : Span
        The season before, and the one told.

    Returns
    -------
    tuple of Changed
        Only the parts in which anything came or went.
    """
    before, after = dict(_used(books, last)), dict(_used(books, this))
    told = (
        Changed(
            part,
            tuple(sorted(after[part] - before[part])),
            tuple(sorted(before[part] - after[part])),
        )
        for part in Part
    )
    return tuple(one for one in told if one.came or one.went)


def _used(books: Dossier, season: Span) -> Iterator[tuple[Part, set[str]]]:
    stands = [one for one in books.stands if one.sown_on and one.sown_on in season]
    puts = [put for put in books.puts if put.on in season]
    lots = [lot for lot in books.lots if lot.received_on in season]
    names = {one.id: one.name for one in books.fields}
    yield Part.LAND, {names.get(one.field_id, "") for one in stands} - {""}
    yield Part.KINDS, {line.kind for one in stands for line in one.lines}
    yield Part.INPUTS, {books.product[put.product_id].name for put in puts}
    yield Part.ENDINGS, {end.method for end in books.ends if end.on in season}
    yield Part.SUPPLIERS, {lot.supplier for lot in lots} - {""}
    done = {one.done_by for one in books.entries if one.on in season}
    yield Part.PEOPLE, done - {""}
