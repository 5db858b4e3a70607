"""The order as a table of columns and rows that a solver of whole numbers reads."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import zip_longest

from reports.calc.order.checks import by_size, trouble_with
from reports.calc.shapes.order import Offer, Price, Rule, Terms

INFINITY = math.inf
NO_TERMS = Terms(0)
# A need in parts: the solver lets a row be short of 0.000001, here of a billionth.
PARTS = 1000.0
GRAIN = 1e-9


@dataclass(slots=True)
class Column:
    """One thing to be decided, between ``low`` and ``high``."""

    high: float
    cost: float = 0.0
    whole: bool = True
    low: float = 0.0


@dataclass(slots=True)
class Row:
    """A sum of columns that must lie between ``low`` and ``high``."""

    terms: list[tuple[int, float]]
    low: float = -INFINITY
    high: float = INFINITY


@dataclass(frozen=True, slots=True)
class Tier:
    """Bags at one price: the columns for how many, and whether at this price."""

    offer: Offer
    price: Price
    bags: int
    taken: int


@dataclass(slots=True)
class Model:
    """Columns and rows, and where to find what they stand for."""

    columns: list[Column] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)
    tiers: list[Tier] = field(default_factory=list)
    suppliers: dict[int, int] = field(default_factory=dict)
    short: dict[str, int] = field(default_factory=dict)
    not_organic: dict[str, int] = field(default_factory=dict)

    def column(self, high: float, cost: float = 0.0, *, whole: bool = True) -> int:
        """Add a column and return its place."""
        self.columns.append(Column(high, cost, whole))
        return len(self.columns) - 1

    def row(self, terms: list[tuple[int, float]], **ends: float) -> Row:
        """Add a row."""
        self.rows.append(Row(terms, **ends))
        return self.rows[-1]


def model_of(
    needs_kg: Mapping[str, float],
    offers: Sequence[Offer],
    terms: Mapping[int, Terms],
    *,
    without: Collection[Rule] = (),
) -> Model:
    """Return the model of an order; rules in ``without`` are let go.

    Cover is counted in parts of the need, so that an ounce of clover weighs as much
    as a ton of rye. Shortfalls are columns, held at nothing by the plan that is sought.
    """
    model = Model()
    usable = [one for one in offers if _usable(one, needs_kg, without)]
    for supplier in sorted({offer.supplier for offer in usable}):
        told = terms.get(supplier, NO_TERMS)
        model.suppliers[supplier] = model.column(1, cost=told.freight_order)
    for offer in usable:
        _add_offer(model, offer, needs_kg[offer.kind], terms, without)
    for kind, need_kg in needs_kg.items():
        _add_cover(model, kind, need_kg, without)
    for supplier, ordered in model.suppliers.items():
        _add_supplier(model, supplier, ordered, terms.get(supplier, NO_TERMS), without)
    return model


def _usable(
    offer: Offer, needs_kg: Mapping[str, float], without: Collection[Rule]
) -> bool:
    if needs_kg.get(offer.kind, 0.0) <= 0 or trouble_with(offer) is not None:
        return False
    return offer.in_stock or Rule.IN_STOCK in without


def _add_offer(
    model: Model,
    offer: Offer,
    need_kg: float,
    terms: Mapping[int, Terms],
    without: Collection[Rule],
) -> None:
    told = terms.get(offer.supplier, NO_TERMS)
    whole = Rule.WHOLE_BAGS not in without
    weighed: list[tuple[int, float]] = []
    for rows in by_size(offer.prices):
        taken: list[tuple[int, float]] = []
        breaks = [row.from_bags for row in rows[1:]]
        for price, next_break in zip_longest(rows, breaks):
            most = _most_bags(offer, price, need_kg, told)
            if next_break is not None:
                most = next_break - 1
            cost = price.each + told.freight_kg * price.bag_kg
            bags = model.column(most, cost=cost, whole=whole)
            at = model.column(1)
            least = price.from_bags if whole or price.from_bags > 1 else 0
            model.row([(bags, 1.0), (at, -float(most))], high=0.0)
            model.row([(bags, 1.0), (at, -float(least))], low=0.0)
            model.row([(at, 1.0), (model.suppliers[offer.supplier], -1.0)], high=0.0)
            model.tiers.append(Tier(offer, price, bags, at))
            taken.append((at, 1.0))
            weighed.append((bags, price.bag_kg))
        if len(taken) > 1:
            model.row(taken, high=1.0)
    if offer.most_kg is not None:
        model.row(weighed, high=offer.most_kg * (1 + GRAIN))


def _most_bags(offer: Offer, price: Price, need_kg: float, terms: Terms) -> int:
    """Return a number of bags that no cheapest order passes at the last price.

    One bag fewer would still cover the need, keep the price and reach the least order.
    """
    enough = math.ceil(need_kg / (price.bag_kg * offer.pls))
    reached = math.ceil(terms.least_order / price.each) if price.each > 0 else 0
    return max(enough, price.from_bags, reached)


def _add_cover(
    model: Model, kind: str, need_kg: float, without: Collection[Rule]
) -> None:
    if need_kg <= 0:
        return
    rows = [tier for tier in model.tiers if tier.offer.kind == kind]
    shares = [
        (tier.bags, PARTS * tier.price.bag_kg * tier.offer.pls / need_kg)
        for tier in rows
    ]
    model.short[kind] = model.column(1, whole=False)
    model.row([*shares, (model.short[kind], PARTS)], low=PARTS)
    if Rule.ORGANIC_FIRST in without:
        return
    both = zip(rows, shares, strict=True)
    organic = [share for tier, share in both if tier.offer.organic]
    model.not_organic[kind] = model.column(1, whole=False)
    model.row([*organic, (model.not_organic[kind], PARTS)], low=PARTS)


def _add_supplier(
    model: Model,
    supplier: int,
    ordered: int,
    terms: Terms,
    without: Collection[Rule],
) -> None:
    rows = [tier for tier in model.tiers if tier.offer.supplier == supplier]
    model.row([*((tier.taken, 1.0) for tier in rows), (ordered, -1.0)], low=0.0)
    if terms.least_order > 0 and Rule.LEAST_ORDER not in without:
        goods = [(tier.bags, tier.price.each) for tier in rows]
        model.row([*goods, (ordered, -terms.least_order)], low=0.0)
