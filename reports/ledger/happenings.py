"""Everything written down about one field, of every noun, in the order of its days."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from records.models import Planting
from records.nouns import BY_MODEL
from reports.ledger.tellings import TELLINGS, Measured, Said, planting_told


@dataclass(frozen=True)
class Happening:
    """One record as a line: its day, what it is, what it says, and where it stands."""

    on: dt.date | None
    noun: str
    pk: int
    what: str
    words: tuple[str, ...]
    measures: tuple[Measured, ...]
    is_plan: bool
    is_late: bool
    void_reason: str


def happenings(field: Any) -> Iterator[Happening]:
    """Every record of a field, voided ones too: a fixed number of queries."""
    sown = Planting.objects.filter(field=field).select_related("farm")
    plantings = list(sown.prefetch_related("lines__kind"))
    kinds = {row.pk: _kinds(row) for row in plantings}
    found = [_line(row, planting_told(row, kinds)) for row in plantings]
    for telling in TELLINGS:
        rows = telling.model.objects.filter(**{telling.path: field})
        rows = rows.select_related("farm", *telling.related)
        for row in rows.prefetch_related(*telling.prefetch):
            found.append(_line(row, telling.tell(row, kinds)))
    yield from sorted(found, key=lambda one: (one.on or dt.date.max, one.noun, one.pk))


def _line(row: Any, said: Said) -> Happening:
    words, measures = said
    planned = getattr(row, "planned_on", None)
    return Happening(
        on=row.happened_on or planned,
        noun=BY_MODEL[row._meta.model_name].slug,
        pk=row.pk,
        what=str(row._meta.verbose_name),
        words=tuple(word for word in words if word),
        measures=tuple(measures),
        is_plan=row.happened_on is None and planned is not None,
        is_late=row.is_late,
        void_reason=row.void_reason,
    )


def _kinds(row: Planting) -> str:
    return " + ".join(str(line.kind) for line in row.lines.all())
