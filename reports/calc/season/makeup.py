"""What a residue is made of: its mass, its rates and its nitrogen, by the figures."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from reports.calc import weeds
from reports.calc.growth import BUCKWHEAT, whole_days
from reports.calc.residue.left import K_QUICKEST
from reports.calc.season.plant_back import NextCropWaits, waits_of
from reports.calc.season.ripeness import Ripeness, nearest
from reports.calc.shapes.basics import Between, How
from reports.calc.shapes.ledger import Group, KindFacts, PlantingFacts, Sample

MOSTLY = 0.5  # share of a mix from which its kind speaks for the whole


@dataclass(frozen=True, slots=True)
class Part:
    """One kind's part in a residue: rate, leaf, cover factor, share of the mass."""

    k_per_dd: float
    leaf_share: float
    area_m2_per_kg: float
    weight: float


@dataclass(frozen=True, slots=True)
class Makeup:
    """A residue's parts, and what kind of stand it was."""

    parts: tuple[Part, ...]
    grass: bool
    buckwheat: bool
    thin_evidence: bool
    waits: NextCropWaits
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount with its range and how it is known; ``likely`` None if unknown."""

    between: Between | None
    likely: float | None
    how: How
    source: str = ""


NOTHING_KNOWN = Amount(None, None, How.UNKNOWN)


def sampled_mass(samples: Iterable[Sample], on: dt.date, days: float) -> Sample | None:
    """Return the latest sample in the days before the end, None if there is none."""
    near = [row for row in samples if 0 <= (on - row.on).days <= days]
    return max(near, key=_sampled_on, default=None)


@dataclass(frozen=True, slots=True)
class InPrint:
    """What the figures say of a stand: its residue, dry matter and nitrogen.

    ``mass`` [kg/m²], ``nitrogen`` as a share of the dry matter [0–1], both for a mix
    by its shares; ``makeup`` None where no rate of decay is known.
    """

    makeup: Makeup | None
    mass: Amount
    nitrogen: Amount


class Makeups:
    """What stands are made of by their kinds, looked up once a mix and ripeness."""

    def __init__(self, assumptions: Mapping[str, float]) -> None:
        self._assumptions = assumptions
        self._kept: dict[tuple[object, Ripeness], InPrint] = {}

    def of(self, planting: PlantingFacts, ripe: Ripeness) -> InPrint:
        """Return what the figures say of a stand of some ripeness."""
        mix = tuple([(line.kind.slug, line.share) for line in planting.lines])
        if (mix, ripe) not in self._kept:
            self._kept[mix, ripe] = InPrint(
                makeup=_makeup(planting, ripe, self._assumptions),
                mass=_by_share(planting, "dry_matter", None),
                nitrogen=_by_share(planting, "nitrogen_percent", ripe),
            )
        return self._kept[mix, ripe]


def _makeup(
    planting: PlantingFacts, ripe: Ripeness, assumptions: Mapping[str, float]
) -> Makeup | None:
    parts, sources, thin = [], [], False
    for kind, share in _shares(planting):
        rate = nearest(kind, "decay_k", ripe)
        if rate is None or not 0 < rate.between.middle <= K_QUICKEST:
            continue
        leaf = nearest(kind, "leaf_share", ripe)
        area = nearest(kind, "cover_area", ripe)
        parts.append(
            Part(
                rate.between.middle,
                assumptions["leaf_share"] if leaf is None else leaf.between.middle,
                assumptions["cover_area"] if area is None else area.between.middle,
                share,
            )
        )
        thin = thin or kind.slug == BUCKWHEAT or rate.unverified
        sources += [row.source for row in (rate, leaf, area) if row is not None]
    if not parts:
        return None
    kinds = tuple(_shares(planting))
    return Makeup(
        parts=_whole(parts),
        grass=_mostly(share for kind, share in kinds if kind.group is Group.GRASS),
        buckwheat=_mostly(share for kind, share in kinds if kind.slug == BUCKWHEAT),
        thin_evidence=thin,
        waits=waits_of(
            {kind.group for kind, _ in kinds},
            _longest_wait(kind for kind, _ in kinds),
            assumptions,
        ),
        sources=tuple(dict.fromkeys(sources)),
    )


def _by_share(planting: PlantingFacts, attribute: str, ripe: Ripeness | None) -> Amount:
    low = likely = high = weight = 0.0
    sources = []
    for kind, share in _shares(planting):
        best = kind.best(attribute) if ripe is None else nearest(kind, attribute, ripe)
        if best is None:
            continue
        stage = "" if ripe is None else best.stage
        spread = kind.spread(attribute, stage) or best.between
        if best.farm_own:
            spread = best.between
        low, high = low + share * spread.low, high + share * spread.high
        likely, weight = likely + share * best.between.middle, weight + share
        sources.append(best.source)
    if not weight:
        return NOTHING_KNOWN
    between = Between(low / weight, high / weight)
    return Amount(between, likely / weight, How.HANDBOOK, sources[0])


def _shares(planting: PlantingFacts) -> tuple[tuple[KindFacts, float], ...]:
    total = sum(line.share for line in planting.lines)
    if total <= 0:
        return tuple((line.kind, 1 / len(planting.lines)) for line in planting.lines)
    return tuple((line.kind, line.share / total) for line in planting.lines)


def _longest_wait(kinds: Iterable[KindFacts]) -> weeds.Wait | None:
    rows = [kind.best("plant_back_days") for kind in kinds]
    waits = [
        weeds.Wait(whole_days(row.low), whole_days(row.high), row.source)
        for row in rows
        if row is not None and not row.unverified
    ]
    return max(waits, key=lambda wait: (wait.low_d, wait.high_d), default=None)


def _whole(parts: list[Part]) -> tuple[Part, ...]:
    total = sum(part.weight for part in parts) or 1.0
    return tuple(
        Part(part.k_per_dd, part.leaf_share, part.area_m2_per_kg, part.weight / total)
        for part in parts
    )


def _mostly(shares: Iterable[float]) -> bool:
    return sum(shares) >= MOSTLY


def _sampled_on(row: Sample) -> dt.date:
    return row.on
