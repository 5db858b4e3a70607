"""What was really sown, beside the rate it was planned by."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reports.calc.season.rates import RateTable
from reports.calc.season.seed_use import against
from reports.calc.seed import spread_rate
from reports.calc.shapes.season import Verdict
from reports.calc.shapes.sown import Sown, SownRate


def sown_rates(
    rows: Iterable[Sown],
    *,
    assumptions: Mapping[str, float],
    southern: bool = False,
) -> tuple[SownRate, ...]:
    """Return the rate of each line out of the bag and alive, with that of the plan.

    The plan is the farm's own rate, or the middle of the range in print, for the way
    and the day of sowing, by the kind's share.
    """
    table = RateTable(assumptions, southern=southern)
    return tuple(_rate(row, table, assumptions["rate_tolerance"]) for row in rows)


def _rate(row: Sown, table: RateTable, tolerance: float) -> SownRate:
    rates = table.rates(row.kind, row.method, row.area_m2, row.on)
    span = rates.own or rates.handbook or rates.common
    bulk = spread_rate(spread_kg=row.seed_kg, area_m2=row.area_m2)
    live = None if row.pls is None else bulk * row.pls
    plan = span.middle * row.share if span and row.share else None
    return SownRate(
        sown=row,
        bulk_kg_m2=bulk,
        live_kg_m2=live,
        plan_kg_m2=plan,
        off=live / plan - 1 if live is not None and plan else None,
        verdict=Verdict.NO_WEIGHT
        if live is None or not row.share
        else against(span, live / row.share, tolerance),
    )
