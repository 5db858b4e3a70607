"""Changes since last season, told by the records themselves."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping

from reports.calc.shapes.basics import Span
from reports.calc.shapes.books import Stand
from reports.calc.shapes.changes import Changed, Part, Use
from reports.calc.shapes.dossier import Dossier

Named = tuple[str, Use]


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
    before[Part.STATUS] = {}
    told = (
        Changed(
            part,
            tuple(sorted(after[part].keys() - before[part].keys(), key=_by_number)),
            tuple(sorted(before[part].keys() - after[part].keys(), key=_by_number)),
            {**before[part], **after[part]},
        )
        for part in Part
    )
    return tuple(one for one in told if one.came or one.went)


def _by_number(name: str) -> list[tuple[bool, int, str]]:
    """Bed 2 comes before bed 10."""
    parts = re.findall(r"\d+|\D+", name)
    return [(one.isdecimal(), int(one) if one.isdecimal() else 0, one) for one in parts]


def _used(books: Dossier, season: Span) -> Iterator[tuple[Part, Mapping[str, Use]]]:
    for part, rows in (*_grown(books, season), *_brought(books, season)):
        yield part, _together(rows)


def _together(rows: Iterable[Named]) -> Mapping[str, Use]:
    """Rows of one name as one, the first in front; a row without a name is none."""
    found: dict[str, Use] = {}
    for name, use in sorted(rows, key=lambda row: (row[1].first, row[1].record)):
        if name:
            found[name] = found[name].and_then(use) if name in found else use
    return found


def _grown(books: Dossier, season: Span) -> Iterator[tuple[Part, Iterator[Named]]]:
    stands = [one for one in books.stands if one.sown_on and one.sown_on in season]
    uses = [(one, _of_stand(one)) for one in stands]
    yield Part.LAND, _land(books, stands)
    yield (
        Part.STATUS,
        (
            (one.name, Use("fields", one.id, since, 1, one.area_m2, status=one.status))
            for one in books.fields
            if (since := one.status_since) and since in season
        ),
    )
    yield Part.SOWINGS, ((one.method, use) for one, use in uses)
    yield (
        Part.KINDS,
        ((kind, use) for one, use in uses for kind in {row.kind for row in one.lines}),
    )
    yield (
        Part.ENDINGS,
        (
            (end.method, Use("terminations", end.id, end.on, 1, end.area_m2))
            for end in books.ends
            if end.on in season
        ),
    )


def _of_stand(one: Stand) -> Use:
    assert one.sown_on is not None
    return Use("plantings", one.id, one.sown_on, 1, one.area_m2)


def _land(books: Dossier, stands: Iterable[Stand]) -> Iterator[Named]:
    """Fields that were sown; the area is the field's own, however often it was."""
    seen: set[int] = set()
    for one in stands:
        field = books.field.get(one.field_id)
        if field is not None and one.sown_on is not None:
            area_m2 = 0.0 if field.id in seen else field.area_m2
            seen.add(field.id)
            yield field.name, Use("fields", field.id, one.sown_on, 1, area_m2)


def _brought(books: Dossier, season: Span) -> Iterator[tuple[Part, Iterator[Named]]]:
    yield Part.INPUTS, _inputs(books, season)
    yield (
        Part.SHEETS,
        (
            (
                row.words or row.material,
                Use("mulch-films-and-tarps", row.id, row.on, 1, row.area_m2),
            )
            for row in books.laid
            if row.on in season
        ),
    )
    yield (
        Part.SUPPLIERS,
        (
            (
                lot.supplier,
                Use("seed-lots", lot.id, lot.received_on, mass_kg=lot.received_kg),
            )
            for lot in books.lots
            if lot.received_on in season
        ),
    )
    yield (
        Part.PEOPLE,
        (
            (one.done_by, Use(one.noun, one.id, one.on))
            for one in books.entries
            if one.on in season
        ),
    )


def _inputs(books: Dossier, season: Span) -> Iterator[Named]:
    for put in books.puts:
        if put.on in season:
            name, of_mass = books.product[put.product_id].name, put.measure == "mass"
            mass_kg, volume_m3 = (put.amount, 0.0) if of_mass else (0.0, put.amount)
            yield (
                name,
                Use("applications", put.id, put.on, 1, 0.0, mass_kg, volume_m3),
            )
