"""Seed to be bought: what is needed, what is offered, and the cheapest order."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

CENT = 0.01  # money


class Rule(StrEnum):
    """What an order is held to; each may be let go to see what it costs."""

    ORGANIC_FIRST = "organic_first"
    LEAST_ORDER = "least_order"
    WHOLE_BAGS = "whole_bags"
    IN_STOCK = "in_stock"


class Outcome(StrEnum):
    """How far an order was worked out."""

    NOTHING_NEEDED = "nothing_needed"
    CHEAPEST = "cheapest"
    BEST_FOUND = "best_found"
    NOT_COVERED = "not_covered"


class OfferTrouble(StrEnum):
    """Why an offer is left out."""

    NO_PRICE = "no_price"
    NO_BAG_SIZE = "no_bag_size"
    NO_PURE_LIVE_SEED = "no_pure_live_seed"
    BREAKS_OUT_OF_ORDER = "breaks_out_of_order"


@dataclass(frozen=True, slots=True)
class Price:
    """What one bag costs from a number of bags of that size on. [kg, money]"""

    bag_kg: float
    from_bags: int
    each: float


@dataclass(frozen=True, slots=True)
class Offer:
    """One kind offered by one supplier.

    ``pls`` is the pure live seed expected on the day of sowing [0–1, above 0];
    ``most_kg`` what the supplier has, None where that is not told. ``in_stock`` is
    False where it cannot be had when it is wanted. A mix holds ``also`` other kinds,
    each with its own pure live seed in the whole.
    """

    id: int
    supplier: int
    kind: str
    organic: bool
    pls: float
    prices: tuple[Price, ...]
    most_kg: float | None = None
    in_stock: bool = True
    also: tuple[tuple[str, float], ...] = ()

    @property
    def contents(self) -> tuple[tuple[str, float], ...]:
        """Return every kind in it, with its pure live seed in the whole. [0–1]"""
        return ((self.kind, self.pls), *self.also)


@dataclass(frozen=True, slots=True)
class Terms:
    """What a supplier asks beside the price of the bags. [money, money/kg]"""

    supplier: int
    freight_order: float = 0.0
    freight_kg: float = 0.0
    least_order: float = 0.0


@dataclass(frozen=True, slots=True)
class Bought:
    """Bags of one size of one offer; ``bags`` is whole unless that was let go."""

    offer: Offer
    price: Price
    bags: float

    @property
    def seed_kg(self) -> float:
        """Return the weight of the bags. [kg]"""
        return self.bags * self.price.bag_kg

    @property
    def pls_kg(self) -> float:
        """Return the pure live seed of all kinds in the bags. [kg]"""
        return self.seed_kg * sum(pls for _, pls in self.offer.contents)

    @property
    def cost(self) -> float:
        """Return what the bags cost, without freight. [money]"""
        return self.bags * self.price.each


@dataclass(frozen=True, slots=True)
class Parcel:
    """All that is bought from one supplier."""

    terms: Terms
    lines: tuple[Bought, ...]

    @property
    def goods(self) -> float:
        """Return what the bags cost. [money]"""
        return sum(line.cost for line in self.lines)

    @property
    def seed_kg(self) -> float:
        """Return the weight sent. [kg]"""
        return sum(line.seed_kg for line in self.lines)

    @property
    def freight(self) -> float:
        """Return the freight by order and by weight. [money]"""
        return self.terms.freight_order + self.terms.freight_kg * self.seed_kg

    @property
    def cost(self) -> float:
        """Return goods and freight. [money]"""
        return self.goods + self.freight


@dataclass(frozen=True, slots=True)
class Plan:
    """One way to buy what is needed.

    ``short_kg`` holds, by kind, the pure live seed that no offer covers [kg], and
    ``not_organic_kg`` what organic offers leave to others. ``bound`` is what no order
    of this kind can cost less than [money].
    """

    outcome: Outcome
    parcels: tuple[Parcel, ...]
    bound: float
    short_kg: Mapping[str, float]
    not_organic_kg: Mapping[str, float]

    @property
    def cost(self) -> float:
        """Return what all of it costs, with freight. [money]"""
        return sum(parcel.cost for parcel in self.parcels)

    @property
    def suppliers(self) -> frozenset[int]:
        """Return who it is bought from."""
        return frozenset(parcel.terms.supplier for parcel in self.parcels)

    def pls_kg(self, kind: str) -> float:
        """Return the pure live seed bought of a kind. [kg]"""
        return sum(
            line.seed_kg * pls
            for parcel in self.parcels
            for line in parcel.lines
            for held, pls in line.offer.contents
            if held == kind
        )


@dataclass(frozen=True, slots=True)
class RuleCost:
    """What is saved by letting a rule go [money]; None where that does not compare.

    ``most`` is what no plan without it can save more than; it is above ``saved``
    where the time was too short to prove the best plan.
    """

    rule: Rule
    saved: float | None
    plan: Plan
    most: float | None = None

    @property
    def is_proved(self) -> bool:
        """Return whether no plan without the rule saves more, to a cent."""
        if self.saved is None or self.most is None:
            return True
        return self.most - self.saved < CENT


@dataclass(frozen=True, slots=True)
class Comparison:
    """The cheapest order, the best that leaves out one of its suppliers, and rules."""

    best: Plan
    other: Plan | None
    rules: tuple[RuleCost, ...]


@dataclass(frozen=True, slots=True)
class OnHand:
    """What is left of a lot [kg], its pure live seed by the tag [0–1] and its test.

    A mix holds ``also`` other kinds, as an offer does.
    """

    lot: int
    kind: str
    left_kg: float
    pls: float | None
    tested_on: dt.date | None
    organic: bool
    also: tuple[tuple[str, float | None], ...] = ()

    @property
    def contents(self) -> tuple[tuple[str, float | None], ...]:
        """Return every kind in it, with its pure live seed in the whole. [0–1]"""
        return ((self.kind, self.pls), *self.also)


@dataclass(frozen=True, slots=True)
class Want:
    """Pure live seed that one planting wants of a kind. [kg]"""

    planting: int
    kind: str
    on: dt.date
    pls_kg: float


@dataclass(frozen=True, slots=True)
class Draw:
    """Seed taken from a lot for a planting, and the pure live seed of a kind. [kg]

    Of a mix, ``seed_kg`` is the kind's part by its live seed and ``whole_kg`` all
    that is taken of the lot for that planting.
    """

    planting: int
    kind: str
    lot: int
    seed_kg: float
    pls_kg: float
    whole_kg: float | None = None
