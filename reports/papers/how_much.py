"""How much seed for a field, a bed or any piece of ground."""

from __future__ import annotations

from typing import Any

from farm.models import Farm
from reports.calc.season.dressings import dressed, together, undosed
from reports.calc.season.how_much import how_much
from reports.calc.seed import after_headlands
from reports.calc.shapes.how_much import Asked, Plot, ToldBy
from reports.calc.shapes.ledger import Method
from reports.forms.how_much import HowMuchForm
from reports.ledger.assumptions import own_assumptions
from reports.ledger.dressings import dressings_of
from reports.ledger.figures import kind_facts


def how_much_paper(farm: Farm, form: HowMuchForm) -> dict[str, Any]:
    """The answer to a form that is filled in soundly."""
    asked, rows = form.cleaned_data, form.rows()
    facts = kind_facts(farm, {kind.pk for kind, _lot, _told in rows})
    answer = how_much(
        [
            Asked(
                facts[kind.pk],
                told,
                lot.pls_share if lot else None,
                lot.lot_number if lot else "",
            )
            for kind, lot, told in rows
        ],
        Plot(_area(asked), Method(asked["method"]), asked["on"]),
        told_by=ToldBy(asked["told_by"]),
        assumptions=own_assumptions(farm),
        mix_kg_m2=asked["mix"],
        overage=asked["overage"],
        hopper_kg=asked["hopper_kg"],
        southern=farm.is_southern,
    )
    by_kind = dressings_of(farm)
    on = [
        one
        for line in answer.lines
        for one in dressed(
            by_kind, kind=line.asked.kind.slug, seed_kg=line.bulk_kg, on=asked["on"]
        )
    ]
    bare = [line.asked.kind for line in answer.lines]
    return {
        "farm": farm,
        "form": form,
        "answer": answer,
        "dressed": together(on),
        "undosed": undosed(bare, by_kind),
    }


def _area(asked: dict[str, Any]) -> float:
    """Sides go before an area typed, an area typed before that of the field."""
    if asked["length_m"] and asked["width_m"]:
        return after_headlands(
            length_m=asked["length_m"],
            width_m=asked["width_m"],
            headland_m=asked["headland_m"] or 0.0,
        )
    area: float = asked["area_m2"] or asked["field"].area_m2
    return area
