"""A seed order worked out: needs, stock, the bags of each supplier, and posts."""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from django.utils.translation import gettext as _

from farm.models import Farm
from reports.calc.season.buying import buying
from reports.calc.season.dressings import (
    Dressings,
    dressed,
    in_packets,
    together,
    undosed,
)
from reports.calc.season.needs import needs_of
from reports.calc.shapes.dressing import Dressed, Packets
from reports.calc.shapes.order import Bought, Draw, Plan
from reports.calc.shapes.seed import Buying, Need, OfferFacts
from reports.forms.seed import OrderForm
from reports.labels.order import RULE
from reports.ledger.coming import on_the_way
from reports.ledger.dressings import dressings_of, dressings_ordered
from reports.ledger.searches import kinds_with_searches
from reports.ledger.seed import LotOnHand, SeedLedger, seed_ledger
from reports.papers.order_boxes import (
    LinePart,
    PacketsPart,
    ParcelPart,
    order_boxes,
)


@dataclass(frozen=True, slots=True)
class DrawPart:
    """Seed on hand put to a planting."""

    draw: Draw
    lot: LotOnHand
    need: Need


def seed_order_paper(farm: Farm, form: OrderForm) -> dict[str, Any]:
    """Everything the page of a seed order shows."""
    asked = form.cleaned_data
    ledger = seed_ledger(farm, asked["first"], asked["last"], by=asked["on"])
    coming = on_the_way(farm, by=asked["on"])
    stock = {**ledger.lots, **{one.stock.lot: one for one in coming}}
    told = _buying(ledger, form, stock)
    searched = kinds_with_searches(farm, by=asked["on"])
    names = {need.kind.slug: need.kind.name for need in told.needs}
    best = told.comparison.best
    dressings = dressings_of(farm)
    rows = together(_dressed(dressings, told))
    packets = in_packets(rows, dressings_ordered(farm, by=asked["on"]))
    kept = _overruled(told, ledger, form, farm.currency)
    return {
        "farm": farm,
        "form": form,
        "told": told,
        "above": best.cost - told.plain.cost if told.plain else None,
        "below": told.plain.cost - best.cost if told.plain else None,
        "best": best,
        "drawn": tuple(_draws(told, stock)),
        "uncounted": [one for one in coming if one.stock.pls is None],
        "dressed": rows,
        "undosed": undosed((need.kind for need in told.needs), dressings),
        "to_buy": [(names[kind], kg) for kind, kg in sorted(told.needs_kg.items())],
        "short": [(names[kind], kg) for kind, kg in best.short_kg.items()],
        "parcels": tuple(_parcels(told, ledger, searched, packets, asked["on"], kept)),
        "apart": tuple(_apart(told, ledger, packets, asked["on"], kept)),
        "unplaced": [one for one in packets if one.supplier not in ledger.suppliers],
        "next_best": _suppliers(told.comparison.other, ledger),
    }


def _buying(
    ledger: SeedLedger, form: OrderForm, stock: Mapping[int, LotOnHand]
) -> Buying:
    asked = form.cleaned_data
    needs = needs_of(
        ledger.planned,
        assumptions=ledger.assumptions,
        overage=asked["overage"],
        headlands=asked["headlands"],
    )
    return buying(
        needs,
        [lot.stock for lot in stock.values()],
        ledger.offers,
        ledger.terms,
        assumptions=ledger.assumptions,
        today=asked["on"],
        skipped=form.left_out,
        let_go=form.rules_let_go,
        in_full=asked["in_full"],
    )


def _draws(told: Buying, stock: Mapping[int, LotOnHand]) -> Iterator[DrawPart]:
    needs = {(need.planned.id, need.kind.slug): need for need in told.needs}
    for draw in told.draws:
        need = needs[draw.planting, draw.kind]
        yield DrawPart(draw, stock[draw.lot], need)


def _suppliers(plan: Plan | None, ledger: SeedLedger) -> list[str]:
    if plan is None:
        return []
    return sorted(ledger.suppliers[one] for one in plan.suppliers)


def _parcels(
    told: Buying,
    ledger: SeedLedger,
    searched: set[int],
    packets: Sequence[Packets],
    on: dt.date,
    kept: str,
) -> Iterator[ParcelPart]:
    offers = {offer.id: offer for offer in ledger.offers}
    for parcel in told.comparison.best.parcels:
        lines = tuple(
            _line(line, offers[line.offer.id], searched, told, ledger.kind_ids)
            for line in parcel.lines
        )
        own = tuple(one for one in packets if one.supplier == parcel.terms.supplier)
        yield ParcelPart(
            supplier=ledger.suppliers[parcel.terms.supplier],
            parcel=parcel,
            lines=lines,
            packets=own,
            boxes=order_boxes(parcel.terms, on=on, kept=kept, lines=lines, packets=own),
        )


def _line(
    line: Bought,
    facts: OfferFacts,
    searched: set[int],
    told: Buying,
    kind_ids: Mapping[str, int],
) -> LinePart:
    offered = ((facts.kind, facts.pls), *facts.also)
    contents = tuple((kind_ids[kind], pls or 0.0) for kind, pls in offered)
    return LinePart(
        line=line,
        offer=facts,
        is_searched=all(kind in searched for kind, _pls in contents),
        live=_live(line, told),
        contents=contents,
    )


def _apart(
    told: Buying, ledger: SeedLedger, packets: Sequence[Packets], on: dt.date, kept: str
) -> Iterator[PacketsPart]:
    """Packets from each supplier that no seed is bought of."""
    sending = told.comparison.best.suppliers
    others = {one.supplier for one in packets if one.supplier in ledger.suppliers}
    for supplier in sorted(filter(None, others - sending)):
        own = tuple(one for one in packets if one.supplier == supplier)
        terms = ledger.terms[supplier]
        boxes = order_boxes(terms, on=on, kept=kept, packets=own)
        yield PacketsPart(ledger.suppliers[supplier], own, boxes)


def _dressed(by_kind: Dressings, told: Buying) -> Iterator[Dressed]:
    """What goes onto the seed drawn and bought, by the first sowing of its kind."""
    seed: defaultdict[str, float] = defaultdict(float)
    for draw in told.draws:
        seed[draw.kind] += draw.seed_kg
    for parcel in told.comparison.best.parcels:
        for line in parcel.lines:
            whole = sum(pls for _kind, pls in line.offer.contents)
            for kind, pls in line.offer.contents:
                seed[kind] += line.seed_kg * pls / whole
    first: dict[str, dt.date] = {}
    for need in told.needs:
        first.setdefault(need.kind.slug, need.planned.on)
    for kind, seed_kg in seed.items():
        yield from dressed(by_kind, kind=kind, seed_kg=seed_kg, on=first[kind])


def _live(line: Bought, told: Buying) -> tuple[tuple[str, float], ...]:
    names = {need.kind.slug: need.kind.name for need in told.needs}
    return tuple((names[kind], line.seed_kg * pls) for kind, pls in line.offer.contents)


def _overruled(told: Buying, ledger: SeedLedger, form: OrderForm, money: str) -> str:
    """What was overruled, by how much money and why, as a note of the order."""
    names = [ledger.suppliers[one] for one in sorted(form.left_out)]
    names += [str(RULE[rule]) for rule in sorted(form.rules_let_go)]
    if told.plain is None or not names:
        return ""
    more = told.comparison.best.cost - told.plain.cost
    sentence = _("%(names)s. %(sum).2f %(money)s above the cheapest.")
    if more < 0:
        sentence = _("%(names)s. %(sum).2f %(money)s below the full order.")
    said = sentence % {"names": ", ".join(names), "sum": abs(more), "money": money}
    return f"{said} {form.cleaned_data['why']}".strip()
