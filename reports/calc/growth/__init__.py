"""Growth: the day a stand comes to each stage, seen or reckoned."""

from reports.calc.growth.dates import (
    as_seen,
    closed_again,
    forecast,
    stage_dates,
    up_on_its_date,
)
from reports.calc.growth.timetable import (
    BUCKWHEAT,
    HeatRule,
    StageDays,
    Timetable,
    fitting,
    timetable,
    whole_days,
)

__all__ = [
    "BUCKWHEAT",
    "HeatRule",
    "StageDays",
    "Timetable",
    "as_seen",
    "closed_again",
    "fitting",
    "forecast",
    "stage_dates",
    "timetable",
    "up_on_its_date",
    "whole_days",
]
