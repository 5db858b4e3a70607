"""Seed for one piece of ground: by rate, share, weight or number of seeds."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reports.calc.season.needs import seed_count, seeds_of
from reports.calc.season.rates import Rates, RateTable
from reports.calc.season.seed_use import against
from reports.calc.seed import (
    bulk_for,
    fills,
    mix_by_weight,
    rate_for_seeds,
    seed_weight,
    with_overage,
)
from reports.calc.shapes.how_much import Asked, HowMuch, Plot, ToldBy, Weighed
from reports.calc.shapes.season import Verdict


def how_much(
    rows: Sequence[Asked],
    plot: Plot,
    *,
    told_by: ToldBy,
    assumptions: Mapping[str, float],
    mix_kg_m2: float | None = None,
    overage: float = 0.0,
    hopper_kg: float | None = None,
    southern: bool = False,
) -> HowMuch:
    """Return what every kind takes; ``mix_kg_m2`` is the whole mix told by weight."""
    table = RateTable(assumptions, southern=southern)
    rates = [_rates(row, plot, table) for row in rows]
    found = _found(rows, rates, told_by, mix_kg_m2)
    lines = tuple(
        _weighed(row, one, rate, plot, overage)
        for row, one, rate in zip(rows, rates, found, strict=True)
    )
    if len(lines) == 1:
        verdict = _verdict(lines[0], rates[0], assumptions["rate_tolerance"])
        lines = (replace(lines[0], verdict=verdict),)
    bulk = _all(line.bulk_kg for line in lines)
    count, each = (None, None)
    if bulk and hopper_kg:
        count, each = fills(seed_kg=bulk, hopper_kg=hopper_kg)
    share = _all(line.share for line in lines)
    return HowMuch(plot.area_m2, lines, share, bulk, count, each)


def _rates(row: Asked, plot: Plot, table: RateTable) -> Rates:
    return table.rates(row.kind, plot.method, plot.area_m2, plot.on)


def _found(
    rows: Sequence[Asked],
    rates: Sequence[Rates],
    told_by: ToldBy,
    mix_kg_m2: float | None,
) -> list[float | None]:
    """Return the rate of pure live seed of each kind. [kg/m²]"""
    parts = [row.told for row in rows]
    if told_by is ToldBy.WEIGHT and mix_kg_m2 and None not in parts:
        weights = [part or 0.0 for part in parts]
        return list(mix_by_weight(rate_kg_m2=mix_kg_m2, weights=weights))
    return [_rate(row, one, told_by) for row, one in zip(rows, rates, strict=True)]


def _rate(row: Asked, rates: Rates, told_by: ToldBy) -> float | None:
    full = _middle(rates)
    if row.told is None or told_by is ToldBy.WEIGHT:
        return full
    if told_by is ToldBy.SHARE:
        return None if full is None else full * row.told
    if told_by is ToldBy.SEEDS:
        seeds = seed_count(row.kind)
        if seeds is None:
            return None
        return rate_for_seeds(seeds_m2=row.told, seeds_per_kg=seeds)
    return row.told


def _middle(rates: Rates) -> float | None:
    span = rates.own or rates.handbook or rates.common
    return None if span is None else span.middle


def _weighed(
    row: Asked,
    rates: Rates,
    rate: float | None,
    plot: Plot,
    overage: float,
) -> Weighed:
    full = _middle(rates)
    alive = None
    if rate is not None:
        alone = seed_weight(rate_kg_m2=rate, area_m2=plot.area_m2)
        alive = with_overage(seed_kg=alone, overage=overage)
    return Weighed(
        asked=row,
        handbook=rates.handbook,
        common=rates.common,
        own=rates.own,
        sources=rates.sources,
        rate_kg_m2=rate,
        share=rate / full if rate is not None and full else None,
        seeds_m2=seeds_of(row.kind, rate),
        pls_kg=alive,
        bulk_kg_m2=_bulk(rate, row.pls),
        bulk_kg=_bulk(alive, row.pls),
        verdict=None,
    )


def _verdict(line: Weighed, rates: Rates, tolerance: float) -> Verdict:
    if line.rate_kg_m2 is None:
        return Verdict.NO_WEIGHT
    span = rates.own or rates.handbook or rates.common
    return against(span, line.rate_kg_m2, tolerance)


def _bulk(amount: float | None, pls: float | None) -> float | None:
    if amount is None or not pls:
        return None
    return bulk_for(pls_amount=amount, pls_share=pls)


def _all(values: Iterable[float | None]) -> float | None:
    told = list(values)
    known = [value for value in told if value is not None]
    return sum(known) if len(known) == len(told) else None
