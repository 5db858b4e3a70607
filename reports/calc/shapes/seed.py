"""Seed planned, needed, on hand and offered, as plain values."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from reports.calc.shapes.basics import Between
from reports.calc.shapes.ledger import KindFacts, Method
from reports.calc.shapes.order import Comparison, Draw, OfferTrouble, Plan, Price, Want


@dataclass(frozen=True, slots=True)
class PlannedLine:
    """One kind of a planting to come; a weight written down is of pure live seed. [kg]

    ``lot_pls`` is that of the lot named with the weight [0–1]; the weight is then
    seed out of the bag.
    """

    kind: KindFacts
    share: float
    seed_kg: float | None = None
    lot_pls: float | None = None


@dataclass(frozen=True, slots=True)
class Planned:
    """One planting to come. [m²]"""

    id: int
    field_id: int
    field_name: str
    on: dt.date
    area_m2: float
    method: Method
    lines: tuple[PlannedLine, ...]


@dataclass(frozen=True, slots=True)
class Need:
    """Pure live seed for one kind of one planting.

    ``area_m2`` is what is sown once headlands are left out; ``full_kg_m2`` the full
    rate reckoned with, None where no rate is known, and then ``pls_kg`` is None too.
    """

    planned: Planned
    kind: KindFacts
    share: float
    area_m2: float
    handbook_kg_m2: Between | None
    common_kg_m2: Between | None
    own_kg_m2: Between | None
    sources: tuple[str, ...]
    full_kg_m2: float | None
    seeds_m2: float | None
    pls_kg: float | None


@dataclass(frozen=True, slots=True)
class OfferFacts:
    """One offer as it was written down; ``pls`` by its own test. [0–1]"""

    id: int
    supplier: int
    supplier_name: str
    kind: str
    kind_id: int
    kind_name: str
    variety: str
    status: str
    pls: float | None
    tested_on: dt.date | None
    first: dt.date | None
    last: dt.date | None
    most_kg: float | None
    prices: tuple[Price, ...]
    # Of a mix, the further kinds with their own pure live seed in the whole. [0–1]
    also: tuple[tuple[str, float | None], ...] = ()
    treatment: str = ""
    is_allowed: bool = True


@dataclass(frozen=True, slots=True)
class LeftOut:
    """An offer not reckoned with, and why; seed not allowed has no trouble named."""

    offer: OfferFacts
    trouble: OfferTrouble | None


@dataclass(frozen=True, slots=True)
class Buying:
    """From what is planned to what is bought.

    ``needs_kg`` is pure live seed to buy by kind. [kg] ``unknown`` are needs of which
    no rate is known.
    """

    needs: tuple[Need, ...]
    unknown: tuple[Need, ...]
    draws: tuple[Draw, ...]
    wants: tuple[Want, ...]
    needs_kg: dict[str, float]
    left_out: tuple[LeftOut, ...]
    comparison: Comparison
    # The cheapest order where nothing is overruled; None where nothing is.
    plain: Plan | None = None
