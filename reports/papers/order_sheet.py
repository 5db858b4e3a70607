"""The sheet that goes to a supplier, and what came of it."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from farm.units import KG_PER_LB
from reports.calc.season.receipts import receipts_of
from reports.calc.shapes.receipt import OrderedLine, OrderFacts
from reports.ledger.orders import order_facts
from reports.ledger.searches import kinds_with_searches, sources_needed

ORGANIC = "organic"
HEADER = (
    "kind",
    "variety",
    "status",
    "bags",
    "bag [lb]",
    "bag [kg]",
    "price of a bag",
    "cost",
    "money",
    "pure live seed [%]",
    "onto the seed",
    "for seed of",
    "amount needed [lb]",
    "amount needed [kg]",
    "live seed of each kind of a mix [%]",
)
NOT_SEED = 4


@dataclass(frozen=True, slots=True)
class SearchPart:
    """A kind that is not organic, and whether its search is complete."""

    kind_name: str
    is_complete: bool


def order_paper(farm: Farm, pk: int, *, today: dt.date) -> dict[str, Any]:
    """An order as it is sent, with what came of it."""
    order = order_facts(farm, pk)
    return {
        "farm": farm,
        "order": order,
        "receipts": receipts_of(order),
        "searches": tuple(_searches(farm, order, order.sent_on or today)),
        "least_sources": sources_needed(farm),
        "printed_on": today,
    }


def _searches(farm: Farm, order: OrderFacts, by: dt.date) -> Iterator[SearchPart]:
    """Each kind that is not organic, those of mixes too, and whether it is searched."""
    others = {
        one.kind_id: one.kind_name
        for line in order.lines
        if line.status != ORGANIC
        for one in line.held
    }
    searched = kinds_with_searches(farm, by=by) if others else set()
    for kind_id, name in others.items():
        yield SearchPart(name, kind_id in searched)


def order_rows(
    order: OrderFacts, currency: str
) -> Iterator[tuple[str | int | float | None, ...]]:
    """Rows of the sheet for a spreadsheet."""
    for line in order.lines:
        yield (
            line.kind_name,
            line.variety,
            line.status,
            line.bags,
            _in_lb(line.bag_kg),
            round(line.bag_kg, 4),
            line.price,
            line.cost,
            currency,
            None if line.pls is None else round(line.pls * 100, 2),
            *[None] * NOT_SEED,
            _mixed(line),
        )
    for one in order.packets:
        yield (
            None,
            None,
            None,
            one.packets,
            _in_lb(one.packet_kg),
            None if one.packet_kg is None else round(one.packet_kg, 4),
            one.price,
            one.cost,
            currency,
            None,
            one.product,
            one.for_seed,
            _in_lb(one.needed_kg),
            round(one.needed_kg, 4),
            None,
        )


def _mixed(line: OrderedLine) -> str | None:
    """The kinds of a mix with their live seed; one kind has a column of its own."""
    if len(line.held) == 1:
        return None
    shares = [
        one.kind_name if one.pls is None else f"{one.kind_name} {one.pls * 100:.4g}"
        for one in line.held
    ]
    return " + ".join(shares)


def _in_lb(mass_kg: float | None) -> float | None:
    return None if mass_kg is None else round(mass_kg / KG_PER_LB, 4)
