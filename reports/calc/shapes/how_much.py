"""How much seed for a piece of ground, kind by kind."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.basics import Between
from reports.calc.shapes.ledger import KindFacts, Method
from reports.calc.shapes.season import Verdict


class ToldBy(StrEnum):
    """How the seed of each kind is told."""

    RATE = "rate"
    SHARE = "share"
    WEIGHT = "weight"
    SEEDS = "seeds"


@dataclass(frozen=True, slots=True)
class Asked:
    """One kind asked for: its figure, and the live seed of the lot. [0–1]

    ``told`` is a rate of pure live seed [kg/m²], a share of the full rate [0–1], parts
    by weight, or live seeds [1/m²]; None takes the middle of the range in print.
    """

    kind: KindFacts
    told: float | None
    pls: float | None
    lot: str = ""


@dataclass(frozen=True, slots=True)
class Plot:
    """What is sown, how and when. [m²]"""

    area_m2: float
    method: Method
    on: dt.date


@dataclass(frozen=True, slots=True)
class Weighed:
    """What one kind takes. [kg/m², 1/m², kg]

    ``share`` is of the kind's full rate, None where no range is known. Bulk figures
    are None where the lot's live seed is not known, the verdict where kinds are mixed.
    """

    asked: Asked
    handbook: Between | None
    common: Between | None
    own: Between | None
    sources: tuple[str, ...]
    rate_kg_m2: float | None
    share: float | None
    seeds_m2: float | None
    pls_kg: float | None
    bulk_kg_m2: float | None
    bulk_kg: float | None
    verdict: Verdict | None


@dataclass(frozen=True, slots=True)
class HowMuch:
    """All kinds on the ground; ``fills`` where a hopper was told and bulk is known."""

    area_m2: float
    lines: tuple[Weighed, ...]
    share: float | None
    bulk_kg: float | None
    fills: int | None
    fill_kg: float | None
