"""How long a residue lasts, covers the soil and holds weeds, counted in days."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from reports.calc.season.decays import FAST, LIKELY, PLACES, SLOW, Decay
from reports.calc.season.makeup import Makeup
from reports.calc.shapes.basics import Between

LEAST_KG_M2 = 1e-9  # kg/m², stands in for no mass at all
Three = tuple[int | None, int | None, int | None]
NEVER: Three = (0, 0, 0)


@dataclass(slots=True)
class Lasting:
    """Days since the end for which something holds; None past the reckoning.

    Each has three counts: early, likely and late, from the lightest and fastest to
    the heaviest and slowest. ``half_on_top`` and ``half_worked_in`` go by mass left.
    """

    strong: Three
    moderate: Three
    partial: Three
    counts_as_cover: Three
    half_on_top: Three
    half_worked_in: Three
    doubtful_cover: bool


def lasting(
    decay: Decay,
    makeup: Makeup,
    mass: Between,
    likely: float,
    assumptions: Mapping[str, float],
) -> Lasting:
    """Return how long a residue of a mass lasts. [kg/m²]"""
    masses = tuple(max(kg_m2, LEAST_KG_M2) for kg_m2 in (mass.low, likely, mass.high))
    strong = moderate = NEVER
    if not makeup.buckwheat:
        strong = _weighing(decay, masses, assumptions["mulch_strong"])
        moderate = _weighing(decay, masses, assumptions["mulch_moderate"])
    covers = _covering(decay, masses, assumptions["residue_counts_from"])
    bare_at = covers[LIKELY]
    last = len(decay) - 1 if bare_at is None else bare_at
    left_then = float(decay.left[last, LIKELY])
    half, buried = decay.half[:PLACES], decay.half[PLACES:]
    return Lasting(
        strong=strong,
        moderate=moderate,
        partial=_covering(decay, masses, assumptions["mulch_partial_cover"]),
        counts_as_cover=covers,
        half_on_top=(half[FAST], half[LIKELY], half[SLOW]),
        half_worked_in=(buried[FAST], buried[LIKELY], buried[SLOW]),
        doubtful_cover=left_then < assumptions["doubtful_below_left"],
    )


def _weighing(decay: Decay, masses: tuple[float, ...], least: float) -> Three:
    low, likely, high = masses
    return (
        decay.days_with(least / low, FAST),
        decay.days_with(least / likely, LIKELY),
        decay.days_with(least / high, SLOW),
    )


def _covering(decay: Decay, masses: tuple[float, ...], cover: float) -> Three:
    exponent, (low, likely, high) = -math.log1p(-cover), masses
    return (
        decay.days_covered(exponent / low, FAST),
        decay.days_covered(exponent / likely, LIKELY),
        decay.days_covered(exponent / high, SLOW),
    )
