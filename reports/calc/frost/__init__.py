"""Frost: the dates of every year on record and the odds they give."""

from reports.calc.frost.odds import (
    Enough,
    FrostDate,
    FrostOdds,
    chance_by_day,
    chance_from_day,
    date_quantile,
    frost_odds,
    plain_day,
)
from reports.calc.frost.years import (
    FREEZE_C,
    YearFrost,
    at_or_below,
    season_lengths,
    year_frosts,
)

__all__ = [
    "FREEZE_C",
    "Enough",
    "FrostDate",
    "FrostOdds",
    "YearFrost",
    "at_or_below",
    "chance_by_day",
    "chance_from_day",
    "date_quantile",
    "frost_odds",
    "plain_day",
    "season_lengths",
    "year_frosts",
]
