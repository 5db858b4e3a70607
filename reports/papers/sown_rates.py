"""What was really sown in a period, beside the plan and the setting used."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from farm.models import Farm
from reports.calc.season.sown_rates import sown_rates
from reports.calc.shapes.sown import SownRate
from reports.ledger.assumptions import own_assumptions
from reports.ledger.settings import Setting, latest
from reports.ledger.sown import sown_lines


@dataclass(frozen=True, slots=True)
class SownPart:
    """One line sown, and the setting last found for its kind by then."""

    rate: SownRate
    setting: Setting | None


def sown_parts(
    farm: Farm, first: dt.date, last: dt.date, settings: list[Setting]
) -> tuple[SownPart, ...]:
    """Every line of seed sown in the period."""
    lines = sown_lines(farm, first, last)
    rates = sown_rates(
        lines, assumptions=own_assumptions(farm), southern=farm.is_southern
    )
    return tuple(SownPart(row, _setting(row, settings)) for row in rates)


def _setting(row: SownRate, settings: list[Setting]) -> Setting | None:
    told = row.sown
    return latest(settings, told.kind.slug, told.on, told.method)
