"""The farm's books over a season and the years before it, with their finding aids."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from reports.calc.shapes.basics import Span
from reports.calc.shapes.books import (
    Cleaned,
    CountedStock,
    Crop,
    Delivered,
    EndOf,
    Entry,
    Flock,
    Gone,
    Ground,
    Heap,
    Kept,
    Laid,
    Licence,
    Lot,
    Mishap,
    Moved,
    Partner,
    Product,
    Put,
    Search,
    Side,
    Stand,
    Statement,
    Task,
    Trained,
)


@dataclass(frozen=True)
class Dossier:
    """One farm's books over a season and the years before it."""

    season: Span
    today: dt.date
    fields: tuple[Ground, ...] = ()
    statements: tuple[Statement, ...] = ()
    sides: tuple[Side, ...] = ()
    lots: tuple[Lot, ...] = ()
    moves: tuple[Moved, ...] = ()
    searches: tuple[Search, ...] = ()
    stands: tuple[Stand, ...] = ()
    ends: tuple[EndOf, ...] = ()
    products: tuple[Product, ...] = ()
    puts: tuple[Put, ...] = ()
    heaps: tuple[Heap, ...] = ()
    crops: tuple[Crop, ...] = ()
    kept: tuple[Kept, ...] = ()
    gone: tuple[Gone, ...] = ()
    counts: tuple[CountedStock, ...] = ()
    cleaned: tuple[Cleaned, ...] = ()
    machines: tuple[str, ...] = ()
    mishaps: tuple[Mishap, ...] = ()
    flocks: tuple[Flock, ...] = ()
    partners: tuple[Partner, ...] = ()
    people: frozenset[str] = frozenset()
    farm_address: str = ""
    watered: frozenset[int] = frozenset()
    reviewed: frozenset[tuple[str, int]] = frozenset()
    documents: frozenset[tuple[str, int]] | None = None
    entries: tuple[Entry, ...] = ()
    delivered: tuple[Delivered, ...] = ()
    trained: tuple[Trained, ...] = ()
    laid: tuple[Laid, ...] = ()
    drawn_over: frozenset[tuple[int, int]] = frozenset()
    licences: tuple[Licence, ...] = ()
    tasks: tuple[Task, ...] = ()
    # The owner and the family, whom rules on the training of workers leave out.
    exempt: frozenset[str] = frozenset()

    @cached_property
    def field(self) -> Mapping[int, Ground]:
        """Return fields by number."""
        return _by_id(self.fields)

    @cached_property
    def lot(self) -> Mapping[int, Lot]:
        """Return seed lots by number."""
        return _by_id(self.lots)

    @cached_property
    def stand(self) -> Mapping[int, Stand]:
        """Return plantings by number."""
        return _by_id(self.stands)

    @cached_property
    def product(self) -> Mapping[int, Product]:
        """Return products by number."""
        return _by_id(self.products)

    @cached_property
    def deliveries(self) -> Mapping[int, list[Delivered]]:
        """Return the lots in which each product came."""
        return _grouped(self.delivered, "product_id")

    @cached_property
    def put(self) -> Mapping[int, Put]:
        """Return applications by number."""
        return _by_id(self.puts)

    @cached_property
    def delivery(self) -> Mapping[int, Delivered]:
        """Return lots of inputs by number."""
        return _by_id(self.delivered)

    @cached_property
    def sale(self) -> Mapping[int, Gone]:
        """Return sales by number."""
        return _by_id(self.gone)

    @cached_property
    def crop(self) -> Mapping[int, Crop]:
        """Return harvest lots by number."""
        return _by_id(self.crops)

    @cached_property
    def overlap(self) -> Mapping[int, frozenset[int]]:
        """Return, for each field, the pieces that share ground with it.

        Whole and part do, and pieces whose outlines are drawn over one another.
        """
        above: dict[int, set[int]] = {}
        for one in self.fields:
            above[one.id] = set(self._up(one))
        shared: defaultdict[int, set[int]] = defaultdict(set)
        for piece, over in above.items():
            shared[piece] |= over
            for other in over:
                shared[other].add(piece)
        for piece, other in self.drawn_over:
            shared[piece].add(other)
            shared[other].add(piece)
        return {piece: frozenset(others) for piece, others in shared.items()}

    @cached_property
    def by_field(self) -> Mapping[str, Mapping[int, list[Any]]]:
        """Return rows that name a field, entries among them, by that field."""
        names = ("stands", "puts", "flocks", "crops", "statements", "entries")
        return {name: _grouped(getattr(self, name), "field_id") for name in names}

    @cached_property
    def by_stand(self) -> Mapping[str, Mapping[int, list[Any]]]:
        """Return ends, puts, crops, flocks by the planting named."""
        names = ("ends", "puts", "crops", "flocks")
        return {name: _grouped(getattr(self, name), "stand_id") for name in names}

    @cached_property
    def by_lot(self) -> Mapping[str, Mapping[int, list[Any]]]:
        """Return what was stored and sold, by harvest lot."""
        names = ("kept", "gone")
        return {name: _grouped(getattr(self, name), "lot_id") for name in names}

    def on_ground(self, name: str, field_id: int) -> Iterator[Any]:
        """Yield what lies on this field or on a piece that shares ground with it."""
        rows = self.by_field[name]
        for piece in sorted(self.overlap.get(field_id, {field_id})):
            yield from rows.get(piece, ())

    def _up(self, one: Ground) -> Iterator[int]:
        seen: set[int] = set()
        here: Ground | None = one
        while here is not None and here.id not in seen:
            seen.add(here.id)
            yield here.id
            here = self.field.get(here.parent_id or 0)


def _by_id(rows: tuple[Any, ...]) -> dict[int, Any]:
    return {row.id: row for row in rows}


def _grouped(rows: tuple[Any, ...], key: str) -> dict[int, list[Any]]:
    found: defaultdict[int, list[Any]] = defaultdict(list)
    for row in rows:
        found[getattr(row, key)].append(row)
    return dict(found)
