"""How far a stand was when it ended, and the figures that come nearest."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from enum import StrEnum

from reports.calc.shapes.ledger import Figure, KindFacts
from reports.calc.shapes.season import StageDate, StageName


class Ripeness(StrEnum):
    """How far a stand was when it ended."""

    BEFORE_BLOOM = "before_bloom"
    AT_BLOOM = "at_bloom"
    MATURE = "mature"


# The stages figures are given for, the nearest to the stand first.
NEAREST: Mapping[Ripeness, tuple[str, ...]] = {
    Ripeness.BEFORE_BLOOM: ("before_bloom", "vegetative", "boot", "", "growing"),
    Ripeness.AT_BLOOM: ("at_bloom", "anthesis", "heading", ""),
    Ripeness.MATURE: ("mature", "straw", "", "at_bloom", "anthesis"),
}


def ripeness(stages: Sequence[StageDate], on: dt.date, bloom: float | None) -> Ripeness:
    """Return how far a stand was on the day it ended."""
    dates = {row.name: row.on for row in stages if row.on is not None and row.on <= on}
    if StageName.FIRST_SEED in dates or StageName.VIABLE_SEED in dates:
        return Ripeness.MATURE
    flowering = StageName.FIRST_FLOWER in dates or StageName.FULL_BLOOM in dates
    return Ripeness.AT_BLOOM if flowering or bloom else Ripeness.BEFORE_BLOOM


def nearest(kind: KindFacts, attribute: str, ripe: Ripeness) -> Figure | None:
    """Return a kind's figure for the stage nearest to a ripeness, best first."""
    rows = kind.all(attribute)
    for stage in NEAREST[ripe]:
        for row in rows:
            if row.stage == stage:
                return row
    return rows[0] if rows else None
