"""Seed that went into a planting, beside the rates in print."""

from __future__ import annotations

from collections.abc import Mapping

from reports.calc.season.rates import Rates
from reports.calc.season.reckoning import Reckoning
from reports.calc.shapes.basics import Between
from reports.calc.shapes.ledger import PlantingFacts, SeedLine
from reports.calc.shapes.season import SeedUse, Verdict

NO_RATES = Rates()


def seed_uses(planting: PlantingFacts, reckoning: Reckoning) -> tuple[SeedUse, ...]:
    """Return one use a seed line; its rate is set against the kind's full rate."""
    return tuple(_use(planting, line, reckoning) for line in planting.lines)


def _use(planting: PlantingFacts, line: SeedLine, reckoning: Reckoning) -> SeedUse:
    start = planting.start
    rates = NO_RATES
    if start is not None:
        rates = reckoning.rates.rates(
            line.kind, planting.method, planting.area_m2, start
        )
    pls = line.lot.pls if line.lot else None
    pls_kg = line.seed_kg * pls if line.seed_kg is not None and pls else None
    full_m2 = planting.area_m2 * line.share
    bulk = None if line.seed_kg is None else line.seed_kg / planting.area_m2
    return SeedUse(
        planting_id=planting.id,
        field_id=planting.field_id,
        kind_slug=line.kind.slug,
        kind_name=line.kind.name,
        lot=line.lot,
        share=line.share,
        area_m2=planting.area_m2,
        method=planting.method,
        seed_kg=line.seed_kg,
        pls=pls,
        pls_kg=pls_kg,
        rate_pls_kg_m2=pls_kg / full_m2 if pls_kg is not None and full_m2 else None,
        bulk_rate_kg_m2=bulk,
        handbook_kg_m2=rates.handbook,
        common_practice_kg_m2=rates.common,
        sources=rates.sources,
        verdict=_verdict(line, full_m2, pls_kg, rates, reckoning.assumptions),
        farm_own_kg_m2=rates.own,
    )


def _verdict(
    line: SeedLine,
    full_m2: float,
    pls_kg: float | None,
    rates: Rates,
    assumptions: Mapping[str, float],
) -> Verdict:
    weight = line.seed_kg if pls_kg is None else pls_kg
    span = rates.own or rates.handbook or rates.common
    if weight is None or not full_m2:
        return Verdict.NO_WEIGHT
    return against(span, weight / full_m2, assumptions["rate_tolerance"])


def against(span: Between | None, rate: float, tolerance: float) -> Verdict:
    """Return how a full rate stands to a range, with some tolerance at its ends."""
    if span is None:
        return Verdict.NO_RANGE
    if rate < span.low * (1 - tolerance):
        return Verdict.BELOW
    return Verdict.ABOVE if rate > span.high * (1 + tolerance) else Verdict.WITHIN
