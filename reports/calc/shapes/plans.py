"""A planned sowing held against the years and the field, and against what happened."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.ahead import Caveat
from reports.calc.shapes.ledger import PlantingFacts


class Check(StrEnum):
    """What a check of a planned sowing finds."""

    GOOD = "good"
    UNLIKELY = "unlikely"
    SOIL_COLD = "soil_cold"
    OVERLAPS = "overlaps"
    NOT_KNOWN = "not_known"


class Came(StrEnum):
    """How a plan turned out."""

    ON_TIME = "on_time"
    LATE = "late"
    EARLY = "early"
    NOT_YET = "not_yet"
    NEVER = "never"
    UNPLANNED = "unplanned"


@dataclass(frozen=True, slots=True)
class Checked:
    """What is found of one planned sowing; ``chance`` is a share of years [0–1]."""

    found: tuple[Check, ...]
    chance: float | None
    warm: float | None
    years: int
    overlaps: tuple[str, ...]
    caveats: tuple[Caveat, ...]


@dataclass(frozen=True, slots=True)
class Turned:
    """A planting as planned and as it was; ``late_days`` None until it was sown."""

    field_name: str
    planting: PlantingFacts
    came: Came
    late_days: int | None
    ended_on: dt.date | None

    @property
    def kinds(self) -> str:
        """Return its kinds, by name."""
        return " + ".join(line.kind.name for line in self.planting.lines)
