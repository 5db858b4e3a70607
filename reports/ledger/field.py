"""One field through all its seasons: what it is, what grew, what was written down."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from farm.models import Farm, Field
from records.models import Planting
from reports.calc.shapes.ledger import FieldLedger
from reports.ledger.happenings import Happening, happenings
from reports.ledger.season import SeasonLedger, gathered, ledger_of


@dataclass(frozen=True)
class Neighbour:
    """A field this one is part of, or that is part of it."""

    id: int
    name: str
    area_m2: float


@dataclass(frozen=True)
class FieldFacts:
    """What a field is, in the words of its record."""

    id: int
    name: str
    kind: str
    area_m2: float
    measured: str
    length_m: float | None
    width_m: float | None
    has_outline: bool
    status: str
    status_since: dt.date | None
    notes: str
    void_reason: str
    part_of: Neighbour | None
    parts: tuple[Neighbour, ...]


@dataclass(frozen=True)
class FieldHistory:
    """A field, its plantings for the workshop, and every record in order."""

    facts: FieldFacts
    ledger: SeasonLedger
    happenings: tuple[Happening, ...]


def field_history(farm: Farm, pk: int) -> FieldHistory | None:
    """Read a field: the same number of queries for one season or for fifty."""
    row = Field.objects.on(farm).filter(pk=pk).select_related("parent").first()
    if row is None:
        return None
    facts = _facts(row)
    plantings = gathered(farm, Planting.objects.filter(field=row))[row.pk]
    told = FieldLedger(
        id=row.pk,
        name=row.name,
        area_m2=row.area_m2,
        status=row.status,
        plantings=tuple(plantings),
        part_of=row.parent.name if row.parent else "",
        parts_m2=sum(part.area_m2 for part in facts.parts),
    )
    return FieldHistory(facts, ledger_of(farm, [told]), tuple(happenings(row)))


def _facts(row: Field) -> FieldFacts:
    return FieldFacts(
        id=row.pk,
        name=row.name,
        kind=row.get_kind_display(),
        area_m2=row.area_m2,
        measured=row.get_measured_display(),
        length_m=row.length_m,
        width_m=row.width_m,
        has_outline=bool(row.outline),
        status=row.get_status_display(),
        status_since=row.status_since,
        notes=row.notes,
        void_reason=row.void_reason,
        part_of=_neighbour(row.parent) if row.parent else None,
        parts=tuple(map(_neighbour, row.parts.live().order_by("name", "pk"))),
    )


def _neighbour(row: Field) -> Neighbour:
    return Neighbour(row.pk, row.name, row.area_m2)
