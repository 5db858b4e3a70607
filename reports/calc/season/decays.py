"""How residues go from a day on, each makeup and day reckoned once."""

from __future__ import annotations

from array import array
from bisect import bisect_right

import numpy as np
from numpy.typing import NDArray

from reports.calc import residue
from reports.calc.season.makeup import Makeup
from reports.calc.season.station import StationTotals

HORIZON_DAYS = 300  # d, how far residue is followed, [ASSUMED]
OFFSETS = (0, 7, 14, 28, 42, 56, 84, 112)  # d, points of the curve
SLOW, LIKELY, FAST = 0, 1, 2
PLACES = 3  # columns of each placement: slow, likely, fast
MORE_THAN_HALF = 0.5 + 1e-9  # share, with slack for the last bit, [CALC]
Row = tuple[float, ...]
Days = int | None


class Decay:
    """What is left by day since the end, for every kilogram there was.

    Attributes
    ----------
    left : NDArray, shape (days, 6)
        Share of the mass on top slow, likely, fast, then worked in. [0–1]
    layer : NDArray, shape (days, 3)
        Exponent of ground cover for each kg/m², on top slow, likely, fast. [m²/kg]
    offsets, on_top, worked_in, cover : tuple
        Days of the curve's points, and shares and exponents there: fast, likely, slow.
    half : tuple of int or None
        Days with more than half the mass, by column of ``left``. [d]
    """

    __slots__ = (
        "_cover",
        "_mass",
        "cover",
        "half",
        "layer",
        "left",
        "offsets",
        "on_top",
        "worked_in",
    )

    def __init__(self, left: NDArray[np.float64], layer: NDArray[np.float64]) -> None:
        self.left, self.layer = left, layer
        self._mass = _rising(left)
        self._cover = _rising(layer)
        self.offsets = tuple(day for day in OFFSETS if day < len(left))
        points = np.array(self.offsets)
        self.on_top = _rows(left[points, :PLACES])
        self.worked_in = _rows(left[points, PLACES:])
        self.cover = _rows(layer[points])
        self.half = tuple(_days(column, MORE_THAN_HALF) for column in self._mass)

    def __len__(self) -> int:
        return len(self.left)

    def days_with(self, share: float, column: int) -> Days:
        """Return the days with a share of the mass or more; None past the end."""
        return _days(self._mass[column], share)

    def days_covered(self, exponent: float, column: int) -> Days:
        """Return the days with an exponent of cover for a kg/m², or more."""
        return _days(self._cover[column], exponent)


def _rising(falling: NDArray[np.float64]) -> tuple[array[float], ...]:
    # Turned round they rise, and a plain array is the quickest thing to halve.
    return tuple(array("d", column.tobytes()) for column in -falling.T)


def _days(rising: array[float], least: float) -> Days:
    days = bisect_right(rising, -least)
    return None if days >= len(rising) else days


class Decays:
    """Decays by makeup and first day, kept so that beds ended together share one."""

    def __init__(self, station: StationTotals) -> None:
        self._station = station
        self._kept: dict[tuple[int, int], tuple[Makeup, Decay]] = {}

    def of(self, makeup: Makeup, start: int) -> Decay:
        """Return how a residue goes from a day of the calendar on."""
        # The makeup is kept beside its decay, so that its id stays its own.
        key = (id(makeup), start)
        if key not in self._kept:
            self._kept[key] = makeup, self._reckon(makeup, start)
        return self._kept[key][1]

    def _reckon(self, makeup: Makeup, start: int) -> Decay:
        stop = min(start + HORIZON_DAYS, self._station.days)
        days = np.arange(stop - start + 1)
        left, layer = np.zeros((len(days), 2 * PLACES)), np.zeros((len(days), PLACES))
        for part in makeup.parts:
            logs = self._station.logs(part.k_per_dd)
            share = part.weight * residue.share_left(
                stem_log=logs.stem[start : stop + 1],
                leaf_log=logs.leaf[start : stop + 1],
                leaf_share=part.leaf_share,
                start=0,
                stop=days,
            )
            left += share
            layer += part.area_m2_per_kg * share[:, :PLACES]
        return Decay(left, layer)


def _rows(points: NDArray[np.float64]) -> tuple[Row, ...]:
    return tuple(tuple(row) for row in points[:, ::-1].tolist())
