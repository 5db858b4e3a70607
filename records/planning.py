"""Plan: a planned planting and its duties, or many at once, all saved or none."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.db import transaction

from farm.models import Farm, User
from farm.writing import write
from records.models import Duty, Kind, Planting, SeedLine

WEEK = dt.timedelta(days=7)


@dataclass(frozen=True)
class Planned:
    """A planting as one plans it: where, what, from when, and when it must be over."""

    field: Any
    kind: Kind
    planned_on: dt.date
    area_m2: float
    method: str = Planting.Method.BROADCAST
    sow_until: dt.date | None = None
    look_on: dt.date | None = None
    end_from: dt.date | None = None
    end_by: dt.date | None = None
    next_crop: str = ""
    next_crop_on: dt.date | None = None
    notes: str = ""
    client_key: Any = None
    mix: Sequence[tuple[Kind, float]] = ()

    @property
    def kinds(self) -> Sequence[tuple[Kind, float]]:
        """The kinds with their shares: the mix, or the one kind alone."""
        return self.mix or ((self.kind, 1.0),)


def plan(
    rows: Sequence[Planned], farm: Farm, *, by: User, now: dt.datetime
) -> list[Planting]:
    """Write every row down with its duties, or none of them."""
    with transaction.atomic():
        return [_plan_one(row, farm, by=by, now=now) for row in rows]


def _plan_one(row: Planned, farm: Farm, *, by: User, now: dt.datetime) -> Planting:
    planting = Planting(
        farm=farm,
        field=row.field,
        area_m2=row.area_m2,
        method=row.method,
        planned_on=row.planned_on,
        next_crop=row.next_crop,
        next_crop_on=row.next_crop_on,
        notes=row.notes,
    )
    if row.client_key is not None:
        planting.client_key = row.client_key
    lines = [SeedLine(kind=kind, share=share) for kind, share in row.kinds]
    written = write(planting, by=by, now=now, parts={"lines": lines})
    if written is planting:
        for told in duties_of(row):
            duty = Duty(farm=farm, field=row.field, planting=written, **told)
            write(duty, by=by, now=now)
    return written


def duties_of(row: Planned) -> list[Mapping[str, Any]]:
    """What a plan asks for: sow it, look whether it is up, end it in time."""
    until = max(row.sow_until or row.planned_on + WEEK, row.planned_on)
    told: list[Mapping[str, Any]] = [
        {
            "what": Duty.What.SOW,
            "earliest_on": row.planned_on,
            "latest_on": until,
            "from_window": Duty.Window.SOW,
        }
    ]
    if row.look_on is not None and row.look_on > row.planned_on:
        told.append(
            {
                "what": Duty.What.LOOK,
                "earliest_on": row.look_on,
                "latest_on": row.look_on + WEEK,
            }
        )
    if row.end_by is not None and row.end_by > row.planned_on:
        first = row.end_from or row.end_by - WEEK
        told.append(
            {
                "what": Duty.What.END,
                "earliest_on": max(min(first, row.end_by), row.planned_on),
                "latest_on": row.end_by,
                "from_window": Duty.Window.END_MOWING,
            }
        )
    return told
