"""One stand's page: its stages, its windows and each date explained."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.weeks import rain_read, share_rain
from reports.calc.shapes.ledger import PlantingFacts
from reports.calc.windows import state_of
from reports.drawings.spread import spread_plot
from reports.papers.ahead import Ahead, ahead_of

RAIN_DAYS = 7


def stand_paper(farm: Farm, pk: int, *, on: dt.date) -> dict[str, Any] | None:
    """Everything a stand's page shows, None where the farm has no such stand."""
    ahead = ahead_of(farm, on)
    found = ahead.stand(pk)
    outlook = ahead.outlooks.get(pk)
    if found is None or outlook is None:
        return None
    field, planting = found
    return {
        "farm": farm,
        "on": on,
        "field": field,
        "planting": planting,
        "kinds": " + ".join(line.kind.name for line in planting.lines),
        "outlook": outlook,
        "windows": [
            (row, state_of(row.opens, row.closes, today=on)) for row in outlook.windows
        ],
        "drawing": spread_plot(outlook, today=on, ident=f"spread-{pk}"),
        "cautions": sorted({c for line in planting.lines for c in line.kind.cautions}),
        "rain": rain_of(planting, ahead),
    }


def rain_of(planting: PlantingFacts, ahead: Ahead) -> dict[str, Any]:
    """The chance of rain in the week after sowing, and what really came."""
    start, choices = planting.start, ahead.growing.assumptions
    if start is None:
        return {}
    sky = ahead.growing.sky
    least = choices["rain_week_mm"]
    share = float(share_rain(sky, [start], least_mm=least, over_days=RAIN_DAYS)[0])
    return {
        "least_mm": least,
        "chance": None if share != share else share,
        "came_mm": rain_read(sky, start, RAIN_DAYS) if planting.sown_on else None,
        "waits": planting.method.value == "broadcast",
    }
