"""A seed order worked out: needs, stock, the bags of each supplier, and posts."""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from farm.models import Farm
from reports.calc.season.buying import buying
from reports.calc.season.needs import needs_of
from reports.calc.shapes.order import Bought, Draw, Parcel, Plan
from reports.calc.shapes.seed import Buying, Need, OfferFacts
from reports.forms.seed import PeriodForm
from reports.ledger.searches import kinds_with_searches
from reports.ledger.seed import LotOnHand, SeedLedger, seed_ledger

NO_STANDARD = "none"


@dataclass(frozen=True, slots=True)
class LinePart:
    """A line of a parcel with the offer behind it."""

    line: Bought
    offer: OfferFacts
    is_searched: bool

    @property
    def bags(self) -> int:
        """Whole bags."""
        return round(self.line.bags)


@dataclass(frozen=True, slots=True)
class ParcelPart:
    """What is bought from one supplier, and the boxes of the order it becomes."""

    supplier: str
    parcel: Parcel
    lines: tuple[LinePart, ...]
    boxes: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class DrawPart:
    """Seed on hand put to a planting."""

    draw: Draw
    lot: LotOnHand
    need: Need


def seed_order_paper(farm: Farm, form: PeriodForm, *, today: dt.date) -> dict[str, Any]:
    """Everything the page of a seed order shows."""
    asked = form.cleaned_data
    ledger = seed_ledger(farm, asked["first"], asked["last"])
    told = _buying(farm, ledger, form, today)
    searched = kinds_with_searches(farm, by=today)
    names = {need.kind.slug: need.kind.name for need in told.needs}
    return {
        "farm": farm,
        "form": form,
        "told": told,
        "best": told.comparison.best,
        "drawn": tuple(_draws(told, ledger)),
        "to_buy": [(names[kind], kg) for kind, kg in sorted(told.needs_kg.items())],
        "short": [
            (names[kind], kg) for kind, kg in told.comparison.best.short_kg.items()
        ],
        "parcels": tuple(_parcels(told.comparison.best, ledger, searched, form, today)),
        "next_best": _suppliers(told.comparison.other, ledger),
    }


def _buying(farm: Farm, ledger: SeedLedger, form: PeriodForm, today: dt.date) -> Buying:
    asked, left_out = form.cleaned_data, form.left_out
    needs = needs_of(
        ledger.planned,
        assumptions=ledger.assumptions,
        overage=asked["overage"],
        headlands=asked["headlands"],
    )
    return buying(
        needs,
        [lot.stock for lot in ledger.lots.values()],
        [offer for offer in ledger.offers if offer.supplier not in left_out],
        ledger.terms,
        assumptions=ledger.assumptions,
        today=today,
        takes_treated=farm.standard == NO_STANDARD,
    )


def _draws(told: Buying, ledger: SeedLedger) -> Iterator[DrawPart]:
    needs = {(need.planned.id, need.kind.slug): need for need in told.needs}
    for draw in told.draws:
        need = needs[draw.planting, draw.kind]
        yield DrawPart(draw, ledger.lots[draw.lot], need)


def _suppliers(plan: Plan | None, ledger: SeedLedger) -> list[str]:
    if plan is None:
        return []
    return sorted(ledger.suppliers[one] for one in plan.suppliers)


def _parcels(
    plan: Plan,
    ledger: SeedLedger,
    searched: set[int],
    form: PeriodForm,
    today: dt.date,
) -> Iterator[ParcelPart]:
    offers = {offer.id: offer for offer in ledger.offers}
    for parcel in plan.parcels:
        lines = tuple(
            LinePart(
                line,
                offers[line.offer.id],
                offers[line.offer.id].kind_id in searched,
            )
            for line in parcel.lines
        )
        yield ParcelPart(
            supplier=ledger.suppliers[parcel.terms.supplier],
            parcel=parcel,
            lines=lines,
            boxes=tuple(_boxes(parcel, lines, form, today).items()),
        )


def _boxes(
    parcel: Parcel, lines: tuple[LinePart, ...], form: PeriodForm, today: dt.date
) -> Mapping[str, str]:
    """The order as its entry form would send it."""
    sent = {
        "client_key": str(uuid.uuid4()),
        "supplier": str(parcel.terms.supplier),
        "drawn_up_on": today.isoformat(),
        "freight": f"{parcel.freight:.2f}",
        "lines-TOTAL_FORMS": str(len(lines)),
        "lines-INITIAL_FORMS": "0",
    }
    for place, part in enumerate(lines):
        told = {
            "kind": str(part.offer.kind_id),
            "variety": part.offer.variety,
            "status": part.offer.status,
            "bag_kg": f"{part.line.price.bag_kg!r} kg",
            "bags": str(part.bags),
            "price": f"{part.line.price.each:.2f}",
            "pls_share": f"{part.offer.pls * 100:.6g}" if part.offer.pls else "",
        }
        sent |= {f"lines-{place}-{name}": value for name, value in told.items()}
    return sent
