"""Plans that were given up: voided before anybody sowed them, and why."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from records.models import Planting
from reports.calc.shapes.basics import Span


@dataclass(frozen=True)
class GivenUp:
    """One plan, as it stood when it was struck out."""

    id: int
    field_name: str
    kinds: str
    planned_on: dt.date
    why: str
    who: str


def plans_given_up(farm: Farm, season: Span) -> tuple[GivenUp, ...]:
    rows: Any = Planting.objects.on(farm).exclude(voided_at=None)
    rows = rows.filter(sown_on=None, planned_on__range=(season.first, season.last))
    rows = rows.select_related("field", "voided_by").prefetch_related("lines__kind")
    return tuple(
        GivenUp(
            row.pk,
            row.field.name,
            " + ".join(str(line.kind) for line in row.lines.all()),
            row.planned_on,
            row.void_reason,
            str(row.voided_by),
        )
        for row in rows.order_by("planned_on", "pk")
    )
