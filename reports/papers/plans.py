"""Planned sowings: each checked as it is typed, and all against what happened."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.utils.formats import date_format

from farm.models import Farm
from reports.calc.season.ahead.checking import checked, turned_out
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import FieldLedger, KindFacts
from reports.calc.shapes.plans import Came, Turned
from reports.ledger import season_ledger
from reports.ledger.ahead import cover_kinds, mix_kinds
from reports.ledger.given_up import plans_given_up
from reports.papers.ahead import ahead_of

ROW = re.compile(r"rows-\d{1,3}")


def check_paper(
    farm: Farm, typed: Mapping[str, str], *, today: dt.date
) -> dict[str, Any]:
    """What is found of one row of the sheet; nothing while it is not filled."""
    prefix = typed.get("prefix", "")
    names = ("kind", "mix", "field", "planting", "planned_on")
    told = {name: typed.get(f"{prefix}-{name}", "") for name in names}
    kinds = kinds_typed(farm, told)
    on = _day(told["planned_on"])
    if not kinds or on is None:
        return {"farm": farm, "checks": ()}
    place = _number(told["field"])
    ahead = ahead_of(farm, today, only=place)
    field = next((one for one in ahead.fields if one.id == place), None)
    found = [
        (
            kind,
            checked(
                kind,
                field,
                on=on,
                growing=ahead.growing,
                outlooks=ahead.outlooks,
                but=_number(told["planting"]),
            ),
        )
        for kind in kinds
    ]
    return {
        "farm": farm,
        "checks": found,
        "day": on,
        "cautions": sorted({key for kind in kinds for key in kind.cautions}),
        # The line a folded row is told by follows what is typed in it.
        "prefix": prefix,
        "gist": gist_of(field, told["mix"], kinds, on) if ROW.fullmatch(prefix) else "",
    }


@dataclass(frozen=True)
class Turnings:
    """Every planting that turned out one way."""

    came: Came
    rows: Sequence[Turned]


def gist_of(
    field: FieldLedger | None, mix: str, kinds: Sequence[KindFacts], on: dt.date
) -> str:
    what = mix or kinds[0].name
    return " · ".join(
        (*((field.name,) if field else ()), what, date_format(on, "j M Y"))
    )


def kinds_typed(farm: Farm, told: Mapping[str, str]) -> list[KindFacts]:
    """The kinds of a row: its mix, or the one chosen."""
    mix = list(mix_kinds(farm, told["mix"]).values())
    alone = cover_kinds(farm).get(_number(told["kind"])) if not mix else None
    return mix or [kind for kind in (alone,) if kind is not None]


def turned_paper(farm: Farm, year: int, *, today: dt.date) -> dict[str, Any]:
    """Plan against what happened, side by side, over one season."""
    season = Span(*farm.season(year))
    ledger = season_ledger(farm, season)
    rows = turned_out(ledger.fields, season=season, today=today)
    parts = [Turnings(came, [row for row in rows if row.came is came]) for came in Came]
    return {
        "farm": farm,
        "year": year,
        "rows": rows,
        "parts": [part for part in parts if part.rows],
        "given_up": plans_given_up(farm, season),
    }


def _number(typed: str) -> int:
    return int(typed) if typed.isdigit() else -1


def _day(typed: str) -> dt.date | None:
    try:
        return dt.date.fromisoformat(typed)
    except ValueError:
        return None
