"""Forecast: what every year on record says of the days ahead."""

from reports.calc.forecast.odds import (
    CHANCES,
    YEARS_FEW,
    YEARS_LEAST,
    days_by_chance,
    share_of_years,
    years_known,
)
from reports.calc.forecast.spells import (
    HORIZON_D,
    days_to_event,
    days_to_heat,
    running,
)
from reports.calc.forecast.stages import lay_seen
from reports.calc.forecast.years import GAP_SHARE, Aligned, align, made_good

__all__ = [
    "CHANCES",
    "GAP_SHARE",
    "HORIZON_D",
    "YEARS_FEW",
    "YEARS_LEAST",
    "Aligned",
    "align",
    "days_by_chance",
    "days_to_event",
    "days_to_heat",
    "lay_seen",
    "made_good",
    "running",
    "share_of_years",
    "years_known",
]
