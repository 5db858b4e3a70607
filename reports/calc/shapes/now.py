"""What a farm's morning page tells: windows by state, frost, missing records."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.ahead import StageOdds, Window, WindowState
from reports.calc.shapes.ledger import PlantingFacts


class Missing(StrEnum):
    """A record that ought to be there and is not."""

    PLANNED_NOT_SOWN = "planned_not_sown"
    NEVER_SEEN_UP = "never_seen_up"
    PAST_SEED = "past_seed"
    NO_REASON = "no_reason"


@dataclass(frozen=True, slots=True)
class Due:
    """One window of one stand as it stands today, and the stages seen of it."""

    field_id: int
    field_name: str
    planting: PlantingFacts
    window: Window
    state: WindowState
    seen: tuple[StageOdds, ...] = ()

    @property
    def kinds(self) -> str:
        """Return the kinds of the stand, by name."""
        return " + ".join(line.kind.name for line in self.planting.lines)


@dataclass(frozen=True, slots=True)
class Lack:
    """A record missing about a stand; ``since`` the day from which it is missed."""

    field_id: int
    field_name: str
    planting: PlantingFacts
    missing: Missing
    since: dt.date
    end_id: int | None = None

    @property
    def kinds(self) -> str:
        """Return the kinds of the stand, by name."""
        return " + ".join(line.kind.name for line in self.planting.lines)


@dataclass(frozen=True, slots=True)
class FrostWeek:
    """The share of years with a frost in the next seven days. [0–1]"""

    temp_c: float
    chance: float | None
    years: int


@dataclass(frozen=True, slots=True)
class Now:
    """The farm on a day."""

    today: dt.date
    due: tuple[Due, ...]
    lacks: tuple[Lack, ...]
    frost: tuple[FrostWeek, ...]
    read_to: dt.date | None
