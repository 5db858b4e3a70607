"""The cautions for what a form is about to write down, as its boxes are chosen."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

from django.http import QueryDict

from farm.models import Farm
from reports.calc.season.ahead.acts import SOURCES, acts_in
from reports.calc.shapes.acts import Act, Warned
from reports.calc.shapes.ledger import PlantingFacts
from reports.calc.shapes.season import StageName
from reports.ledger.ahead import product_type
from reports.papers.ahead import ahead_of

# What a duty will come to when it is done, as the form of an end would say it.
BY_DUTY: Mapping[str, str] = {"cut": "mown", "end": "mown", "work_in": "tilled_in"}
Stand = tuple[PlantingFacts | None, dt.date | None]


def acts_paper(farm: Farm, typed: QueryDict, *, today: dt.date) -> dict[str, Any]:
    """Cautions for the choices in a form; none while nothing is chosen."""
    ending = typed.get("method", "") or BY_DUTY.get(typed.get("what", ""), "")
    kind_of = product_type(farm, typed.get("product", ""))
    found: dict[Act, set[str]] = {}
    for planting, seed_from in stands_typed(farm, typed, today=today):
        for one in acts_in(
            ending=ending or ("grazed" if "in_on" in typed else ""),
            residue=typed.get("residue", ""),
            manure=kind_of == "manure",
            pests=kind_of == "pest",
            planting=planting,
            seed_from=seed_from,
            on=_day(typed.get("ended_on", "") or typed.get("latest_on", "")),
        ):
            found.setdefault(one.act, set()).update(one.kinds)
    warned = [act for act in Act if act in found]
    told = (Warned(act, tuple(sorted(found[act])), SOURCES[act]) for act in warned)
    return {"farm": farm, "warned": tuple(told)}


def stands_typed(farm: Farm, typed: QueryDict, *, today: dt.date) -> Iterator[Stand]:
    """The stands a form is about, each with the day its seed can sprout from."""
    asked = [*typed.getlist("planting"), *typed.getlist("place")]
    numbers = [int(one) for one in asked if one.isdigit()]
    ahead = ahead_of(farm, today) if numbers else None
    if ahead is None:
        yield None, None
        return
    for number in numbers:
        found, outlook = ahead.stand(number), ahead.outlooks.get(number)
        seed_from = outlook.stage(StageName.VIABLE_SEED).on if outlook else None
        yield found[1] if found else None, seed_from


def every_act() -> tuple[Warned, ...]:
    """Every act with its sources, for the page of assumptions."""
    return tuple(Warned(act, (), SOURCES[act]) for act in Act)


def _day(typed: str) -> dt.date | None:
    try:
        return dt.date.fromisoformat(typed)
    except ValueError:
        return None
