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


@dataclass(frozen=True, slots=True)
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
    heavy = [assumptions["mulch_strong"], assumptions["mulch_moderate"]]
    hidden = [
        -math.log1p(-assumptions["mulch_partial_cover"]),
        -math.log1p(-assumptions["residue_counts_from"]),
    ]
    weighing, covering = [], []
    for kg_m2, column in ((mass.low, FAST), (likely, LIKELY), (mass.high, SLOW)):
        least = [one / max(kg_m2, LEAST_KG_M2) for one in heavy]
        weighing.append(decay.days_with(least, column))
        least = [one / max(kg_m2, LEAST_KG_M2) for one in hidden]
        covering.append(decay.days_covered(least, column))
    strong, moderate = zip(*weighing, strict=True)
    partial, covers = zip(*covering, strict=True)
    bare_at = covers[LIKELY]
    last = len(decay) - 1 if bare_at is None else bare_at
    left_then = float(decay.left[last, LIKELY])
    return Lasting(
        strong=NEVER if makeup.buckwheat else strong,
        moderate=NEVER if makeup.buckwheat else moderate,
        partial=partial,
        counts_as_cover=covers,
        half_on_top=(decay.half[FAST], decay.half[LIKELY], decay.half[SLOW]),
        half_worked_in=(
            decay.half[PLACES + FAST],
            decay.half[PLACES + LIKELY],
            decay.half[PLACES + SLOW],
        ),
        doubtful_cover=left_then < assumptions["doubtful_below_left"],
    )
