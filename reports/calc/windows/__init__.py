"""Windows: from which day to which a thing may be done, and why."""

from reports.calc.windows.end import Days, bloom_day, cut_days, end_days
from reports.calc.windows.second import SecondStand, second_stand
from reports.calc.windows.sow import SowDays, sow_days
from reports.calc.windows.standing import MISSED_D, SOON_D, state_of

__all__ = [
    "MISSED_D",
    "SOON_D",
    "Days",
    "SecondStand",
    "SowDays",
    "bloom_day",
    "cut_days",
    "end_days",
    "second_stand",
    "sow_days",
    "state_of",
]
