"""Foretold on the day of sowing against what was seen: every stand of the farm."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.hindsight import hindsight, records_of
from reports.calc.shapes.basics import Span
from reports.ledger import season_ledger

# Stands of ten years; older ones say little of how the farm works now.
BACK = dt.timedelta(days=3653)


def hindsight_paper(farm: Farm, *, today: dt.date) -> dict[str, Any]:
    """Every stage seen in the farm's stands, beside what was foretold of it."""
    ledger = season_ledger(farm, Span(today - BACK, today))
    names = {field.id: field.name for field in ledger.fields}
    rows = hindsight(
        [row for field in ledger.fields for row in field.plantings],
        weather=ledger.weather,
        assumptions=dict(ledger.assumptions),
        whole_fahrenheit=ledger.whole_fahrenheit,
        southern=farm.is_southern,
    )
    told = [(names[row.planting.field_id], row) for row in rows]
    records = records_of(rows)
    return {
        "farm": farm,
        "records": records,
        "rows": told,
        "by_stage": [
            (one, [pair for pair in told if pair[1].told.name is one.name])
            for one in records
        ],
    }
