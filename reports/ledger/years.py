"""The seasons on which a farm has anything written down."""

from __future__ import annotations

import datetime as dt

from django.db.models import Min

from farm.models import Farm
from records.models import Planting


def season_years(farm: Farm, *, today: dt.date) -> range:
    """From this season back to that of the first planting, latest first."""
    rows = Planting.objects.on(farm).live()
    found = rows.aggregate(sown=Min("sown_on"), planned=Min("planned_on"))
    days = [day for day in found.values() if day is not None]
    this = farm.season_year(today)
    first = min(this, farm.season_year(min(days, default=today)))
    return range(this, first - 1, -1)
