"""The live seed of a kind in a lot, also where the lot is a mix."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence

from records.models import SeedLot

# The planting, the kind and the lot of a seed line, and its weight. [kg]
Taken = tuple[int, int, SeedLot | None, float | None]


def live_shares(lines: Sequence[Taken]) -> list[float | None]:
    """Live seed of its own kind in the weight of each line.

    However the weight of a mix is parted over its lines, all of them together hold
    what the tag says of each kind.
    """
    weighed: defaultdict[tuple[int, int], float] = defaultdict(float)
    for planting, _kind, lot, seed_kg in lines:
        if lot is not None:
            weighed[planting, lot.pk] += seed_kg or 0.0
    return [_share(line, weighed) for line in lines]


def _share(line: Taken, weighed: dict[tuple[int, int], float]) -> float | None:
    planting, kind, lot, seed_kg = line
    if lot is None:
        return None
    share = lot.pls_of(kind)
    if share is None or not lot.components.all() or not seed_kg:
        return share
    return share * weighed[planting, lot.pk] / seed_kg
