"""Full seeding rates in print for a kind, a way of sowing and a time of year."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from reports.calc.growth import fitting
from reports.calc.season.halves import sown_as_if
from reports.calc.seed import broadcast_rate
from reports.calc.shapes.basics import Between
from reports.calc.shapes.ledger import Figure, KindFacts, Method
from reports.calc.sources import SOURCES, Tier

SMALL_GROUND_M2 = 500.0  # m², up to here rates for small ground come first, [ASSUMED]
ANY = "seeding_rate_any"
SMALL = "seeding_rate_small"
DRILLED = "seeding_rate_drilled"
BROADCAST = "seeding_rate_broadcast"
BY_METHOD: Mapping[Method, tuple[str, ...]] = {
    Method.DRILLED: (DRILLED, ANY),
    Method.BROADCAST: (BROADCAST, ANY),
    Method.FROST_SEEDED: (BROADCAST, ANY),
}
BY_DAY = "by_"


@dataclass(frozen=True, slots=True)
class Rates:
    """Full rates by who gives them. [kg/m²]"""

    handbook: Between | None = None
    common: Between | None = None
    own: Between | None = None
    sources: tuple[str, ...] = ()


class RateTable:
    """Rates looked up once for a kind, a method, a size of ground and a month."""

    def __init__(
        self, assumptions: Mapping[str, float], *, southern: bool = False
    ) -> None:
        self._assumptions, self._southern = assumptions, southern
        self._labels: dict[str, tuple[str, ...]] = {}
        self._kept: dict[tuple[str, Method, bool, int, str], Rates] = {}

    def rates(
        self, kind: KindFacts, method: Method, area_m2: float, sown_on: dt.date
    ) -> Rates:
        """Return the full rates that hold for a planting."""
        small = area_m2 <= SMALL_GROUND_M2
        sown_on = sown_as_if(sown_on, southern=self._southern)
        by_day = self._by_day(kind, sown_on)
        key = (kind.slug, method, small, sown_on.month, by_day)
        if key not in self._kept:
            self._kept[key] = self._find(kind, method, small, sown_on.month, by_day)
        return self._kept[key]

    def _by_day(self, kind: KindFacts, sown_on: dt.date) -> str:
        """Return the stage of the rates for seed sown by a day, the next to come."""
        if kind.slug not in self._labels:
            self._labels[kind.slug] = _days_named(kind)
        labels = self._labels[kind.slug]
        if not labels:
            return ""
        today = f"{BY_DAY}{sown_on:%m%d}"
        return next((label for label in labels if label >= today), labels[-1])

    def _find(
        self, kind: KindFacts, method: Method, small: bool, month: int, by_day: str
    ) -> Rates:
        attributes = BY_METHOD.get(method, ())
        if small and method is Method.BROADCAST:
            attributes = (SMALL, *attributes)
        for attribute in attributes:
            rows = _usable(fitting(kind, attribute, month), method, by_day)
            if rows:
                return _rates(rows)
        if BROADCAST not in attributes:
            return Rates()
        rows = _usable(fitting(kind, DRILLED, month), method, by_day)
        return _times(_rates(rows), self._assumptions["broadcast_factor"])


def _usable(rows: Iterable[Figure], method: Method, by_day: str) -> tuple[Figure, ...]:
    return tuple(
        row
        for row in rows
        if not row.unverified
        and (not row.stage.startswith(BY_DAY) or row.stage == by_day)
        and (row.stage != Method.FROST_SEEDED or method is Method.FROST_SEEDED)
    )


def _rates(rows: tuple[Figure, ...]) -> Rates:
    by_tier: dict[Tier, list[Figure]] = {}
    for row in rows:
        source = SOURCES.get(row.source)
        tier = source.tier if source is not None else Tier.A
        by_tier.setdefault(tier, []).append(row)
    own = [row for row in rows if row.farm_own]
    printed = [
        row
        for tier in (Tier.A, Tier.B)
        for row in by_tier.get(tier, [])
        if not row.farm_own
    ] or by_tier.get(Tier.C, [])
    common = by_tier.get(Tier.COMMON, [])
    return Rates(
        handbook=_span(printed),
        common=_span(common),
        own=_span(own),
        sources=tuple(dict.fromkeys(row.source for row in (*own, *printed, *common))),
    )


def _span(rows: Iterable[Figure]) -> Between | None:
    ends = [(row.low, row.high) for row in rows]
    if not ends:
        return None
    return Between(min(low for low, _ in ends), max(high for _, high in ends))


def _times(rates: Rates, factor: float) -> Rates:
    def broadcast(span: Between | None) -> Between | None:
        if span is None:
            return None
        ends = (
            broadcast_rate(drilled_kg_m2=end, factor=factor)
            for end in (span.low, span.high)
        )
        return Between(*ends)

    return Rates(
        broadcast(rates.handbook),
        broadcast(rates.common),
        broadcast(rates.own),
        rates.sources,
    )


def _days_named(kind: KindFacts) -> tuple[str, ...]:
    rows = (*kind.all(DRILLED), *kind.all(BROADCAST))
    return tuple(sorted({row.stage for row in rows if row.stage.startswith(BY_DAY)}))
