"""How residues go from a day on, each makeup and day reckoned once."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc import residue
from reports.calc.season.makeup import Makeup
from reports.calc.season.station import StationTotals

HORIZON_DAYS = 300  # d, how far residue is followed, [ASSUMED]
SLOW, LIKELY, FAST = 0, 1, 2
PLACES = 3  # columns of each placement: slow, likely, fast


@dataclass(frozen=True, slots=True, eq=False)
class Decay:
    """What is left by day since the end, for every kilogram there was.

    ``left`` of shape (days, 6): share of the mass on top slow, likely, fast, then
    worked in. ``layer`` of shape (days, 3): the exponent of ground cover for each
    kg/m², on top slow, likely, fast. [m²/kg]
    """

    left: NDArray[np.float64]
    layer: NDArray[np.float64]

    def __len__(self) -> int:
        return len(self.left)


class Decays:
    """Decays by makeup and first day, kept so that beds ended together share one."""

    def __init__(self, station: StationTotals) -> None:
        self._station = station
        self._kept: dict[tuple[Makeup, int], Decay] = {}

    def of(self, makeup: Makeup, start: int) -> Decay:
        """Return how a residue goes from a day of the calendar on."""
        key = (makeup, start)
        if key not in self._kept:
            self._kept[key] = self._reckon(makeup, start)
        return self._kept[key]

    def _reckon(self, makeup: Makeup, start: int) -> Decay:
        stop = slice(start, min(start + HORIZON_DAYS, self._station.days) + 1)
        left = layer = np.zeros(1)
        for part in makeup.parts:
            logs = self._station.logs(part.k_per_dd)
            share = part.weight * residue.share_left(
                stem_log=logs.stem[stop],
                leaf_log=logs.leaf[stop],
                leaf_share=part.leaf_share,
                start=0,
                stop=np.arange(stop.stop - start),
            )
            left = left + share
            layer = layer + part.area_m2_per_kg * share[:, :PLACES]
        return Decay(left, layer)
