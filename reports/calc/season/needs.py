"""What plantings to come need of each kind, in pure live seed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from reports.calc.season.rates import Rates, RateTable
from reports.calc.seed import seeds_per_m2, with_overage
from reports.calc.shapes.ledger import KindFacts, Method
from reports.calc.shapes.seed import Need, Planned, PlannedLine

NO_SEED = frozenset({Method.TRANSPLANTED, Method.SELF_SOWN})
SEEDS = ("seeds_per_gram", "seeds_per_lb")


def needs_of(
    planned: Sequence[Planned],
    *,
    assumptions: Mapping[str, float],
    overage: float,
    headlands: float = 0.0,
    southern: bool = False,
) -> tuple[Need, ...]:
    """Return a need for every kind of every planting that is sown.

    ``headlands`` is the share of each area left out, ``overage`` the share of seed
    taken along on top. [0–1]
    """
    table = RateTable(assumptions, southern=southern)
    return tuple(
        need
        for one in sorted(planned, key=lambda row: (row.on, row.field_name, row.id))
        if one.method not in NO_SEED
        for need in _needs(one, table, overage, 1.0 - headlands)
    )


def _needs(
    one: Planned, table: RateTable, overage: float, sown: float
) -> Iterator[Need]:
    for line in one.lines:
        rates = table.rates(line.kind, one.method, one.area_m2, one.on)
        area_m2 = one.area_m2 * sown
        full = full_rate(line, rates, area_m2)
        kept = full * line.share * area_m2 if full is not None else None
        yield Need(
            planned=one,
            kind=line.kind,
            share=line.share,
            area_m2=area_m2,
            handbook_kg_m2=rates.handbook,
            common_kg_m2=rates.common,
            own_kg_m2=rates.own,
            sources=rates.sources,
            full_kg_m2=full,
            seeds_m2=seeds_of(line.kind, full),
            pls_kg=None
            if kept is None
            else with_overage(seed_kg=kept, overage=overage),
        )


def _spare(seed_kg: float | None, overage: float) -> float | None:
    return None if seed_kg is None else with_overage(seed_kg=seed_kg, overage=overage)


def full_rate(line: PlannedLine, rates: Rates, area_m2: float) -> float | None:
    """Return the full rate: from the weight planned, the farm's own, or in print."""
    if line.seed_kg is not None and line.share and area_m2:
        alive = line.seed_kg * (1.0 if line.lot_pls is None else line.lot_pls)
        return alive / (line.share * area_m2)
    span = rates.own or rates.handbook or rates.common
    return None if span is None else span.middle


def seeds_of(kind: KindFacts, rate_kg_m2: float | None) -> float | None:
    """Return the live seeds that a rate puts on a square metre. [1/m²]"""
    count = seed_count(kind)
    if count is None or rate_kg_m2 is None:
        return None
    return seeds_per_m2(rate_kg_m2=rate_kg_m2, seeds_per_kg=count)


def seed_count(kind: KindFacts) -> float | None:
    """Return the seeds in a kilogram of a kind, None where none was verified."""
    figures = (figure for name in SEEDS for figure in kind.all(name))
    known = next((figure for figure in figures if not figure.unverified), None)
    return None if known is None else known.between.middle
