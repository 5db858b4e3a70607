"""Seed that was sown, and the rates it came to."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from reports.calc.shapes.ledger import KindFacts, Method
from reports.calc.shapes.season import Verdict


@dataclass(frozen=True, slots=True)
class Sown:
    """One kind of a planting that was sown, with its seed. [m², kg, 0–1]"""

    planting: int
    field_name: str
    on: dt.date
    method: Method
    area_m2: float
    kind: KindFacts
    share: float
    lot: str
    seed_kg: float
    pls: float | None


@dataclass(frozen=True, slots=True)
class SownRate:
    """What a line came to. [kg/m²] ``off`` is live seed over the plan, less 1."""

    sown: Sown
    bulk_kg_m2: float
    live_kg_m2: float | None
    plan_kg_m2: float | None
    off: float | None
    verdict: Verdict
