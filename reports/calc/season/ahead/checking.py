"""Planned sowings held against the years, the field, and what came of them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

import numpy as np

from reports.calc import forecast
from reports.calc.season.ahead.chances import chances_of
from reports.calc.season.ahead.gaps import Outlooks
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.holding import ended_on, held_by
from reports.calc.season.ahead.sowing import warm_soil
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import FieldLedger, KindFacts
from reports.calc.shapes.plans import Came, Check, Checked, Turned
from reports.calc.windows import SOON_D


def checked(
    kind: KindFacts,
    field: FieldLedger | None,
    *,
    on: dt.date,
    growing: Growing,
    outlooks: Outlooks,
    but: int | None = None,
) -> Checked:
    """Return what is found of sowing a kind on a field on a day.

    ``but`` is the planting's own number, which does not overlap with itself.
    """
    wanted = growing.assumptions["sow_chance"]
    chances = chances_of(kind, growing, first=on, days=1)
    reached = chances.cover if np.isnan(chances.bloom).all() else chances.bloom
    chance = float(chances.share(reached)[0])
    warm, soil = warm_soil(kind, growing, first=on, days=1)
    share = float(warm[0])
    names = () if field is None else tuple(_holding(field, on, growing, outlooks, but))
    found = []
    if np.isnan(chance):
        found.append(Check.NOT_KNOWN)
    elif chance < wanted:
        found.append(Check.UNLIKELY)
    if share < wanted:
        found.append(Check.SOIL_COLD)
    if names:
        found.append(Check.OVERLAPS)
    return Checked(
        found=tuple(found) or (Check.GOOD,),
        chance=None if np.isnan(chance) else chance,
        warm=None if np.isnan(share) else share,
        years=int(forecast.years_known(chances.frost).max(initial=0)),
        overlaps=names,
        caveats=tuple(dict.fromkeys((*chances.caveats, *soil))),
    )


def _holding(
    field: FieldLedger,
    on: dt.date,
    growing: Growing,
    outlooks: Outlooks,
    but: int | None,
) -> Iterator[str]:
    today = growing.sky.today
    for row in field.plantings:
        if row.id == but:
            continue
        for held in held_by(row, outlooks.get(row.id), field.plantings, today=today):
            own = held.first == row.start
            if own and held.first <= on and (held.last is None or on <= held.last):
                yield " + ".join(line.kind.name for line in row.lines)


def turned_out(
    fields: Sequence[FieldLedger], *, season: Span, today: dt.date
) -> tuple[Turned, ...]:
    """Return every planting planned or sown in a season, as planned and as it was."""
    rows = [
        Turned(
            field.name, row, *_came(row.planned_on, row.sown_on, today), ended_on(row)
        )
        for field in fields
        for row in field.plantings
        if any(
            day is not None and day in season for day in (row.planned_on, row.sown_on)
        )
    ]
    return tuple(sorted(rows, key=_when))


def _when(row: Turned) -> tuple[dt.date, str]:
    planned, sown = row.planting.planned_on, row.planting.sown_on
    return (planned or sown or dt.date.min, row.field_name)


def _came(
    planned: dt.date | None, sown: dt.date | None, today: dt.date
) -> tuple[Came, int | None]:
    if planned is None:
        return Came.UNPLANNED, None
    if sown is None:
        return (Came.NOT_YET if planned >= today else Came.NEVER), None
    late = (sown - planned).days
    if abs(late) <= SOON_D:
        return Came.ON_TIME, late
    return (Came.LATE if late > 0 else Came.EARLY), late
