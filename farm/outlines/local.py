"""A farm laid flat: longitude and latitude as metres east and north of its middle."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from farm.outlines.plane import Position, Ring, unrolled

# WGS 84: half the long axis [m] and the square of its eccentricity.
_A_M = 6_378_137.0
_E2 = 6.694379990141317e-3


@dataclass(frozen=True, slots=True)
class Local:
    """A plane about one place, for farms and not for continents.

    Each parallel is laid off at its own length, so that areas keep their proportions
    wherever on the farm they lie (the sinusoidal projection about the middle).
    """

    middle: Position

    def ring(self, ring: Ring) -> Ring:
        """Return a ring in metres east and north of the middle."""
        return tuple(map(self.at, unrolled(ring, self.middle[0])))

    def at(self, position: Position) -> Position:
        """Return one position in metres east and north, on this side of the middle."""
        lon, lat = position
        across, _ = _radii_m(lat)
        _, along = _radii_m(self.middle[1])
        east = across * math.cos(math.radians(lat))
        return (
            math.radians(lon - self.middle[0]) * east,
            math.radians(lat - self.middle[1]) * along,
        )


def local_to(rings: Iterable[Ring]) -> Local:
    """Return the plane about the middle of all these rings; there must be one."""
    all_rings = list(rings)
    lon = all_rings[0][0][0]
    flat = [corner for ring in all_rings for corner in unrolled(ring, lon)]
    lons, lats = [x for x, _ in flat], [y for _, y in flat]
    middle = (min(lons) + max(lons)) / 2
    wrapped = (middle + 180.0) % 360.0 - 180.0
    return Local((wrapped, (min(lats) + max(lats)) / 2))


def _radii_m(lat: float) -> Position:
    """Return the radii of curvature across and along the meridian. [m]"""
    flattened = 1 - _E2 * math.sin(math.radians(lat)) ** 2
    across = _A_M / math.sqrt(flattened)
    return across, across * (1 - _E2) / flattened
