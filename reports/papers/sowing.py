"""When to sow one kind, and why: the chance of every day."""

from __future__ import annotations

import datetime as dt
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.sowing import soil_wanted, sow_window
from reports.calc.windows import state_of
from reports.ledger.ahead import ahead_ledger, kind_named
from reports.papers.ahead import growing_for, station_told


def sowing_paper(
    farm: Farm, slug: str, *, on: dt.date, wanted: float | None = None
) -> dict[str, Any] | None:
    """Everything the page of one kind's sowing shows, None for an unknown kind."""
    kind = kind_named(farm, slug)
    if kind is None:
        return None
    growing = growing_for(farm, ahead_ledger(farm, on), on)
    least = growing.assumptions["sow_chance"] if wanted is None else wanted
    window = sow_window(kind, growing, first=on, wanted=least)
    return {
        "farm": farm,
        "on": on,
        "kind": kind,
        "window": window,
        "soil": soil_wanted(kind),
        "soil_days": int(growing.assumptions["soil_warm_days"]),
        "state": state_of(window.opens, window.closes, today=on),
        "wanted": least,
        "station": station_told(growing),
        "choices": (0.5, 0.6, 0.7, 0.8, 0.9, 0.95),
    }


def asked_chance(asked: str) -> float | None:
    """The chance asked for in whole per cents, None where none fits."""
    if not asked.isdigit() or not 50 <= int(asked) <= 95:
        return None
    return int(asked) / 100
