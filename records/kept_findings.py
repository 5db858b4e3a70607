"""Keeping a list of findings as it stood, and reading the kept ones again."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping

from farm.models import Farm, User
from records.models import KeptFindings

Why = KeptFindings.Why
Lines = Mapping[str, Mapping[str, str]]


def keep(
    farm: Farm, year: int, lines: Lines, *, why: str, by: User, now: dt.datetime
) -> KeptFindings:
    """Keep a list; one that says the same as the last one is not kept twice."""
    last = KeptFindings.objects.filter(farm=farm, year=year).order_by("kept_at").last()
    if last is not None and set(last.lines) == set(lines):
        return last
    return KeptFindings.objects.create(
        farm=farm, year=year, lines=dict(lines), why=why, kept_by=by, kept_at=now
    )


def kept(farm: Farm, year: int) -> list[KeptFindings]:
    """The lists of a season, the oldest first."""
    rows = KeptFindings.objects.filter(farm=farm, year=year)
    return list(rows.select_related("kept_by").order_by("kept_at", "pk"))
