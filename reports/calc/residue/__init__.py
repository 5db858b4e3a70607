"""Residue: how fast a killed stand rots, on top of the soil or worked in."""

from reports.calc.residue.days import (
    DecompositionDays,
    decomposition_days,
    rain_wetness,
    soil_wetness,
    temperature_factor,
)
from reports.calc.residue.left import (
    BURIED_HALF_LIFE_D,
    LEAF_FACTOR,
    RANGE_FAST,
    RANGE_SLOW,
    SURFACE_HALF_LIFE_D,
    closed_form,
    half_life_day,
    pools_left,
    share_left,
    share_left_without_weather,
    step_running_log,
)

__all__ = [
    "BURIED_HALF_LIFE_D",
    "LEAF_FACTOR",
    "RANGE_FAST",
    "RANGE_SLOW",
    "SURFACE_HALF_LIFE_D",
    "DecompositionDays",
    "closed_form",
    "decomposition_days",
    "half_life_day",
    "pools_left",
    "rain_wetness",
    "share_left",
    "share_left_without_weather",
    "soil_wetness",
    "step_running_log",
    "temperature_factor",
]
