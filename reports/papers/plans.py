"""Planned sowings: each checked as it is typed, and all against what happened."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.checking import checked, turned_out
from reports.calc.shapes.basics import Span
from reports.ledger import season_ledger
from reports.ledger.ahead import cover_kinds
from reports.papers.ahead import ahead_of


def check_paper(
    farm: Farm, typed: Mapping[str, str], *, today: dt.date
) -> dict[str, Any]:
    """What is found of one row of the sheet; nothing while it is not filled."""
    prefix = typed.get("prefix", "")
    told = {name: typed.get(f"{prefix}-{name}", "") for name in ("kind", "field")}
    kind = cover_kinds(farm).get(_number(told["kind"]))
    on = _day(typed.get(f"{prefix}-planned_on", ""))
    if kind is None or on is None:
        return {"farm": farm, "check": None}
    place = _number(told["field"])
    ahead = ahead_of(farm, today, only=place)
    field = next((one for one in ahead.fields if one.id == place), None)
    found = checked(
        kind,
        field,
        on=on,
        growing=ahead.growing,
        outlooks=ahead.outlooks,
        but=_number(typed.get(f"{prefix}-planting", "")),
    )
    return {"farm": farm, "check": found, "kind": kind, "day": on}


def turned_paper(farm: Farm, year: int, *, today: dt.date) -> dict[str, Any]:
    """Plan against what happened, side by side, over one season."""
    season = Span(*farm.season(year))
    ledger = season_ledger(farm, season)
    rows = turned_out(ledger.fields, season=season, today=today)
    return {"farm": farm, "year": year, "rows": rows}


def _number(typed: str) -> int:
    return int(typed) if typed.isdigit() else -1


def _day(typed: str) -> dt.date | None:
    try:
        return dt.date.fromisoformat(typed)
    except ValueError:
        return None
