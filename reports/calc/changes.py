"""Changes since last season, told by the records themselves."""

from __future__ import annotations

import re
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
    # A status that began the season before is none that went.
    before[Part.STATUS] = set()
    told = (
        Changed(
            part,
            tuple(sorted(after[part] - before[part], key=_by_number)),
            tuple(sorted(before[part] - after[part], key=_by_number)),
        )
        for part in Part
    )
    return tuple(one for one in told if one.came or one.went)


def _by_number(name: str) -> list[tuple[bool, int, str]]:
    """Bed 2 comes before bed 10."""
    parts = re.findall(r"\d+|\D+", name)
    return [(one.isdecimal(), int(one) if one.isdecimal() else 0, one) for one in parts]


def _used(books: Dossier, season: Span) -> Iterator[tuple[Part, set[str]]]:
    stands = [one for one in books.stands if one.sown_on and one.sown_on in season]
    puts = [put for put in books.puts if put.on in season]
    lots = [lot for lot in books.lots if lot.received_on in season]
    names = {one.id: one.name for one in books.fields}
    yield Part.LAND, {names.get(one.field_id, "") for one in stands} - {""}
    begun = [one for one in books.fields if one.status_since is not None]
    yield Part.STATUS, {one.name for one in begun if one.status_since in season}
    yield Part.SOWINGS, {one.method for one in stands} - {""}
    yield Part.KINDS, {line.kind for one in stands for line in one.lines}
    yield Part.INPUTS, {books.product[put.product_id].name for put in puts}
    yield Part.ENDINGS, {end.method for end in books.ends if end.on in season}
    laid = (row for row in books.laid if row.on in season)
    yield Part.SHEETS, {row.words or row.material for row in laid}
    yield Part.SUPPLIERS, {lot.supplier for lot in lots} - {""}
    done = {one.done_by for one in books.entries if one.on in season}
    yield Part.PEOPLE, done - {""}
