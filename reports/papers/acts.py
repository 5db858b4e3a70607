"""The cautions for what a form is about to write down, as its boxes are chosen."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Any

from farm.models import Farm
from reports.calc.season.ahead.acts import SOURCES, acts_in
from reports.calc.shapes.acts import Act, Warned
from reports.calc.shapes.season import StageName
from reports.ledger.ahead import is_manure
from reports.papers.ahead import ahead_of


def acts_paper(
    farm: Farm, typed: Mapping[str, str], *, today: dt.date
) -> dict[str, Any]:
    """Cautions for the choices in a form; none while nothing is chosen."""
    asked = typed.get("planting", "")
    planting, seed_from = None, None
    if asked.isdigit():
        ahead = ahead_of(farm, today)
        found = ahead.stand(int(asked))
        planting = found[1] if found else None
        outlook = ahead.outlooks.get(int(asked))
        seed_from = outlook.stage(StageName.VIABLE_SEED).on if outlook else None
    warned = acts_in(
        ending=typed.get("method", "") or ("grazed" if "in_on" in typed else ""),
        residue=typed.get("residue", ""),
        manure=is_manure(farm, typed.get("product", "")),
        planting=planting,
        seed_from=seed_from,
        on=_day(typed.get("ended_on", "")),
    )
    return {"farm": farm, "warned": tuple(warned)}


def every_act() -> tuple[Warned, ...]:
    """Every act with its sources, for the page of assumptions."""
    return tuple(Warned(act, (), SOURCES[act]) for act in Act)


def _day(typed: str) -> dt.date | None:
    try:
        return dt.date.fromisoformat(typed)
    except ValueError:
        return None
