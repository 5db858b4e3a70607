"""Relative erosion under residues left on top, all of them in one sweep."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import numpy as np

from reports.calc.erosion import surface_cover_factor
from reports.calc.season.decays import LIKELY
from reports.calc.season.remains import Remains

EROSION_DAYS = 60  # d, spell over which the index is averaged, [ASSUMED]
BARE_SOIL = float(surface_cover_factor(cover=0.0))
Indices = Mapping[int, float]


def erosion_indices(left: Iterable[Remains]) -> Indices:
    """Return the mean index of the first days by the residue's id. [unitless]

    The caller keeps the residues, or their ids would stand for others.
    """
    rows = [
        (id(row), row.decay.layer[:EROSION_DAYS, LIKELY] * row.mass.likely)
        for row in left
        if row.decay is not None and row.mass.likely is not None
    ]
    if not rows:
        return {}
    exponents = np.stack([exponent for _, exponent in rows])
    loss = surface_cover_factor(cover=-np.expm1(-exponents)).mean(axis=1)
    return dict(zip((key for key, _ in rows), loss.tolist(), strict=True))
