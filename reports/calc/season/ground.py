"""What one field's ground carried, day by day, part by part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from reports.calc.season.canopy import canopy_cover
from reports.calc.season.pieces import FOR_EVER, Piece
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Layers, Remains
from reports.calc.season.stands import Stand
from reports.calc.shapes.season import CoverDays, Ground

BARE, RESIDUE, CASH, LIVING = range(4)
GROUNDS = (Ground.BARE, Ground.RESIDUE, Ground.CASH, Ground.LIVING)
ALL = 1.0 - 1e-9


@dataclass(slots=True)
class Tenancy:
    """A piece of a stand on a part of the field, and what it left there."""

    stand: Stand
    piece: Piece
    remains: Remains | None

    @property
    def leaves(self) -> int:
        """Return the day of the calendar on which it stopped living."""
        return self.piece.gone


@dataclass(slots=True)
class Part:
    """A part of the field with one history; ``width`` is its share of the field."""

    width: float
    tenancies: list[Tenancy] = field(default_factory=list)

    def free_since(self, day: int) -> int:
        """Return when the last stand before left it; later than ``day`` if busy."""
        return max((row.leaves for row in self.tenancies), default=-FOR_EVER)


@dataclass(frozen=True, slots=True, eq=False)
class Carried:
    """A part's season: ``ground`` code and ``covered`` share of each counted day."""

    width: float
    ground: NDArray[np.int8]
    covered: NDArray[np.float64]


def parts_of(
    tenants: Sequence[tuple[Stand, Sequence[Remains]]], field_m2: float
) -> list[Part]:
    """Return the field cut into parts that each had one history.

    A stand takes free ground first, the longest free first; what it needs beyond
    that lies over other living stands, as a nurse crop and its crop do. Where within
    the field it stood is not written down, so this is the one reading that never
    counts ground twice.
    """
    parts = [Part(1.0)]
    for stand, left in sorted(tenants, key=_start):
        if stand.up is None:
            continue
        share = min(stand.planting.area_m2 / field_m2, 1.0)
        by_piece = {id(row.piece): row for row in left}
        taken = _take(parts, share if share < ALL else 1.0, stand.up)
        for piece in stand.pieces:
            tenancy = Tenancy(stand, piece, by_piece.get(id(piece)))
            _settle(parts, taken, share * piece.share, tenancy)
    return parts


def carried(part: Part, layers: Layers, reckoning: Reckoning) -> Carried:
    """Return what a part of the field carried on each counted day."""
    days, first = reckoning.counted, reckoning.offset
    ground = np.zeros(days, dtype=np.int8)
    layer: NDArray[np.float64] | None = None
    uncovered: NDArray[np.float64] | None = None
    for row in part.tenancies:
        one = None if row.remains is None else layers.get(id(row.remains))
        if one is not None:
            layer = one if layer is None else layer + one
    if layer is not None:
        uncovered = np.exp(-layer)
        least = 1.0 - reckoning.assumptions["residue_counts_from"]
        ground[uncovered <= least] = RESIDUE
    for code in (CASH, LIVING):
        for row in part.tenancies:
            span = _alive(row, first, days)
            if row.stand.cash is not (code == CASH) or span.stop <= span.start:
                continue
            ground[span] = code
            if uncovered is None:
                uncovered = np.ones(days)
            uncovered[span] *= 1.0 - canopy_cover(
                row.stand, span.start + first, span.stop + first, reckoning
            )
    covered = np.zeros(days) if uncovered is None else 1.0 - uncovered
    return Carried(part.width, ground, covered)


def cover_days(rows: Sequence[Carried], reckoning: Reckoning) -> CoverDays:
    """Return a field's days by ground, weighted by the parts' shares. [d]"""
    counts = np.zeros(len(GROUNDS))
    soil = at_least = 0.0
    least = reckoning.assumptions["residue_counts_from"]
    for row in rows:
        counts += row.width * np.bincount(row.ground, minlength=len(GROUNDS))
        soil += row.width * float(row.covered.sum())
        at_least += row.width * int(np.count_nonzero(row.covered >= least))
    bare, residue, cash, living = counts.tolist()
    return CoverDays(
        living=living,
        cash=cash,
        residue=residue,
        bare=bare,
        not_yet=float(reckoning.season.days - reckoning.counted),
        soil_cover_days=soil,
        days_at_least_30=at_least,
    )


def _alive(row: Tenancy, first: int, days: int) -> slice:
    up = row.stand.up
    assert up is not None
    return slice(max(up - first, 0), max(min(row.leaves - first, days), 0))


def _take(parts: list[Part], share: float, day: int) -> list[Part]:
    """Return the parts a stand stands on, one of them split where it must be."""
    free = [part for part in parts if part.free_since(day) <= day]
    busy = [part for part in parts if part.free_since(day) > day]
    free.sort(key=lambda part: part.free_since(day))
    taken, left = [], share
    for part in free + busy:
        if left <= 1.0 - ALL:
            break
        taken.append(part)
        if part.width > left + (1.0 - ALL):
            _split(parts, part, left)
        left -= part.width
    return taken


def _settle(
    parts: list[Part], taken: list[Part], share: float, tenancy: Tenancy
) -> None:
    left = share
    while taken and left > 1.0 - ALL:
        part = taken[0]
        if part.width > left + (1.0 - ALL):
            taken.insert(1, _split(parts, part, left))
        left -= part.width
        part.tenancies.append(tenancy)
        taken.pop(0)


def _split(parts: list[Part], part: Part, width: float) -> Part:
    rest = Part(part.width - width, list(part.tenancies))
    part.width = width
    parts.append(rest)
    return rest


def _start(row: tuple[Stand, Sequence[Remains]]) -> int:
    return FOR_EVER if row[0].up is None else row[0].up
