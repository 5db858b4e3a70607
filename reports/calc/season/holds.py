"""How long a residue lasts, covers the soil and holds weeds, counted in days."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc.season.decays import LIKELY, PLACES, Decay
from reports.calc.season.makeup import Makeup
from reports.calc.season.remains import Remains

HALF = 0.5
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


def lasting(remains: Remains, assumptions: Mapping[str, float]) -> Lasting | None:
    """Return how long the residue of an ended piece lasts, None where unknown."""
    makeup, between, likely = remains.makeup, remains.mass.between, remains.mass.likely
    if remains.decay is None or makeup is None or between is None or likely is None:
        return None
    masses = np.array([between.high, likely, between.low])
    return _count(remains.decay, makeup, masses, assumptions)


def _count(
    decay: Decay,
    makeup: Makeup,
    masses: NDArray[np.float64],
    assumptions: Mapping[str, float],
) -> Lasting:
    mass = decay.left[:, :PLACES] * masses
    layer = decay.layer * masses
    covered = layer >= _exponent(assumptions["residue_counts_from"])
    half = (decay.left > HALF).sum(axis=0).tolist()
    bare_at = int(covered[:, LIKELY].sum())
    left_then = decay.left[min(bare_at, len(decay) - 1), LIKELY]
    strong = moderate = NEVER
    if not makeup.buckwheat:
        strong = _days(mass >= assumptions["mulch_strong"])
        moderate = _days(mass >= assumptions["mulch_moderate"])
    return Lasting(
        strong=strong,
        moderate=moderate,
        partial=_days(layer >= _exponent(assumptions["mulch_partial_cover"])),
        counts_as_cover=_days(covered),
        half_on_top=_three(half[:PLACES], len(decay)),
        half_worked_in=_three(half[PLACES:], len(decay)),
        doubtful_cover=bool(left_then < assumptions["doubtful_below_left"]),
    )


def _days(holds: NDArray[np.bool_]) -> Three:
    return _three(holds.sum(axis=0).tolist(), len(holds))


def _three(slow_to_fast: list[int], days: int) -> Three:
    slow, likely, fast = (None if n >= days else n for n in slow_to_fast)
    return fast, likely, slow


def _exponent(cover: float) -> float:
    return -math.log1p(-cover)
