"""The order as a table of columns and rows that a solver of whole numbers reads."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
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


@dataclass(frozen=True, slots=True)
class BlendUse:
    """A mix put to a planting of several kinds: a column, in parts of the most."""

    offer: Offer
    planting: int
    column: int
    most_kg: float


@dataclass(slots=True)
class Model:
    """Columns and rows, and where to find what they stand for."""

    columns: list[Column] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)
    tiers: list[Tier] = field(default_factory=list)
    suppliers: dict[int, int] = field(default_factory=dict)
    short: dict[str, int] = field(default_factory=dict)
    not_organic: dict[str, int] = field(default_factory=dict)
    uses: list[BlendUse] = field(default_factory=list)

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
    blends: Sequence[Mapping[str, float]] = (),
) -> Model:
    """Return the model of an order; rules in ``without`` are let go.

    Cover is counted in parts of the need, so that an ounce of clover weighs as much
    as a ton of rye. Shortfalls are columns, held at nothing by the plan that is sought.
    ``blends`` are the needs of each planting of several kinds: a mix covers those
    only that want all of its kinds, and over none of them.
    """
    model = Model()
    usable = [one for one in offers if _usable(one, needs_kg, without)]
    most = {offer.id: mixed_kg(offer, blends) for offer in usable if offer.also}
    usable = [one for one in usable if not one.also or most[one.id]]
    for supplier in sorted({offer.supplier for offer in usable}):
        told = terms.get(supplier, NO_TERMS)
        model.suppliers[supplier] = model.column(1, cost=told.freight_order)
    for offer in usable:
        enough_kg = most.get(offer.id) or needs_kg[offer.kind] / offer.pls
        _add_offer(model, offer, enough_kg, terms, without)
    add_blends(model, [offer for offer in usable if offer.also], blends)
    for kind, need_kg in needs_kg.items():
        _add_cover(model, kind, need_kg, without)
    for supplier, ordered in model.suppliers.items():
        _add_supplier(model, supplier, ordered, terms.get(supplier, NO_TERMS), without)
    return model


def _usable(
    offer: Offer, needs_kg: Mapping[str, float], without: Collection[Rule]
) -> bool:
    wanted = all(needs_kg.get(kind, 0.0) > 0 for kind, _ in offer.contents)
    if not wanted or trouble_with(offer) is not None:
        return False
    return offer.in_stock or Rule.IN_STOCK in without


def _add_offer(
    model: Model,
    offer: Offer,
    enough_kg: float,
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
            most = _most_bags(price, enough_kg, told)
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


def _most_bags(price: Price, enough_kg: float, terms: Terms) -> int:
    """Return a number of bags that no cheapest order passes at the last price.

    One bag fewer would still cover the need, keep the price and reach the least order.
    """
    enough = math.ceil(enough_kg / price.bag_kg)
    reached = math.ceil(terms.least_order / price.each) if price.each > 0 else 0
    return max(enough, price.from_bags, reached)


def _add_cover(
    model: Model, kind: str, need_kg: float, without: Collection[Rule]
) -> None:
    if need_kg <= 0:
        return
    shares = list(_shares(model, kind, need_kg))
    model.short[kind] = model.column(1, whole=False)
    every = [share for _, share in shares]
    model.row([*every, (model.short[kind], PARTS)], low=PARTS)
    if Rule.ORGANIC_FIRST in without:
        return
    organic = [share for offer, share in shares if offer.organic]
    model.not_organic[kind] = model.column(1, whole=False)
    model.row([*organic, (model.not_organic[kind], PARTS)], low=PARTS)


def _shares(
    model: Model, kind: str, need_kg: float
) -> Iterator[tuple[Offer, tuple[int, float]]]:
    """Return what covers a kind: columns with the parts of the need in one of each."""
    for tier in model.tiers:
        if tier.offer.kind == kind and not tier.offer.also:
            pls_kg = tier.price.bag_kg * tier.offer.pls
            yield tier.offer, (tier.bags, PARTS * pls_kg / need_kg)
    for use in model.uses:
        for held, pls in use.offer.contents:
            if held == kind:
                yield use.offer, (use.column, use.most_kg * pls / need_kg)


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


def mixed_kg(offer: Offer, blends: Sequence[Mapping[str, float]]) -> float:
    """Return the most of a mix that plantings of all its kinds can take. [kg]"""
    return sum(_most_kg(offer, blend) for blend in blends)


def _most_kg(offer: Offer, blend: Mapping[str, float]) -> float:
    return min(blend.get(kind, 0.0) / pls for kind, pls in offer.contents)


def add_blends(
    model: Model, mixes: Sequence[Offer], blends: Sequence[Mapping[str, float]]
) -> None:
    """Put bags of mixes to plantings that want them, each kind up to what it wants."""
    for offer in mixes:
        put = []
        for planting, blend in enumerate(blends):
            most = _most_kg(offer, blend)
            if most > 0:
                column = model.column(PARTS, whole=False)
                model.uses.append(BlendUse(offer, planting, column, most))
                put.append((column, most / PARTS))
        scale = PARTS / mixed_kg(offer, blends)
        bags = [
            (tier.bags, -tier.price.bag_kg * scale)
            for tier in model.tiers
            if tier.offer is offer
        ]
        model.row([*((at, kg * scale) for at, kg in put), *bags], high=0.0)
    for planting, blend in enumerate(blends):
        for kind, need_kg in blend.items():
            terms = [
                (use.column, use.most_kg * pls / need_kg)
                for use in model.uses
                if use.planting == planting
                for held, pls in use.offer.contents
                if held == kind
            ]
            if len(terms) > 1:
                model.row(terms, high=PARTS)
