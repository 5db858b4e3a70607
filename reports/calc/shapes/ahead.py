"""What lies ahead of a stand: dates with their odds, and windows with reasons."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.basics import How
from reports.calc.shapes.season import StageName


class SpreadOf(StrEnum):
    """What the early and the late day of a forecast are."""

    YEARS = "years"
    FIGURES = "figures"
    SEEN = "seen"
    NONE = "none"


class Caveat(StrEnum):
    """What a forecast or a window cannot say, and why."""

    NO_WEATHER = "no_weather"
    TOO_FEW_YEARS = "too_few_years"
    FEW_YEARS = "few_years"
    YEARS_LEFT_OUT = "years_left_out"
    BY_DAYS = "by_days"
    NO_FROST_ON_RECORD = "no_frost_on_record"
    SOUTHERN_FIGURES = "southern_figures"
    PAST_EVERY_WINDOW = "past_every_window"
    BLOOM_UNKNOWN = "bloom_unknown"
    CLOSURE_ASSUMED = "closure_assumed"
    KILL_ASSUMED = "kill_assumed"
    SEED_UNKNOWN = "seed_unknown"
    SOIL_FROM_AIR = "soil_from_air"
    SOIL_UNKNOWN = "soil_unknown"


class WhyOut(StrEnum):
    """Why a year does not, or not always, stand in for the days ahead."""

    THIS_YEAR = "this_year"
    GAPS = "gaps"
    BEGINS = "begins"


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A year of the record with why it is left out, and its days not read. [d]"""

    year: int
    why: WhyOut
    unread_days: int


class WindowKind(StrEnum):
    """What a window is for."""

    SOW = "sow"
    CUT = "cut"
    END_MOWING = "end_mowing"
    END_WORKING_IN = "end_working_in"
    FROST_KILL = "frost_kill"
    LARGE_SEED_ON_TOP = "large_seed_on_top"
    PLANTS_ON_TOP = "plants_on_top"
    SMALL_SEED_WORKED_IN = "small_seed_worked_in"
    LARGE_SEED_WORKED_IN = "large_seed_worked_in"
    PLANTS_WORKED_IN = "plants_worked_in"
    SELF_SOWN = "self_sown"


class Why(StrEnum):
    """Why a window opens or closes on its day."""

    TODAY = "today"
    SPRING_FROST = "spring_frost"
    SOIL_COLD = "soil_cold"
    FROST_BEFORE_BLOOM = "frost_before_bloom"
    FROST_BEFORE_COVER = "frost_before_cover"
    NO_END_IN_A_YEAR = "no_end_in_a_year"
    CANOPY_CLOSED = "canopy_closed"
    BLOOM_LIMIT = "bloom_limit"
    AFTER_FIRST_FLOWER = "after_first_flower"
    DAYS_AFTER_FLOWER_UP = "days_after_flower_up"
    SEED_CAN_SPROUT = "seed_can_sprout"
    SOURCE_MOWING = "source_mowing"
    SOURCE_WORKING_IN = "source_working_in"
    KILLING_FROST = "killing_frost"
    RESIDUE_WAIT = "residue_wait"
    SEED_SHED = "seed_shed"
    NOT_KNOWN = "not_known"


class WindowState(StrEnum):
    """How a window stands on a day."""

    OPEN = "open"
    OPENING = "opening"
    CLOSING = "closing"
    MISSED = "missed"
    LATER = "later"
    OVER = "over"


@dataclass(frozen=True, slots=True)
class StageOdds:
    """A stage ahead or behind: the day, an early and a late one, and from what.

    With ``spread`` of the years, ``early`` and ``late`` are the days by which it came
    in one year of ten and in nine of ten; of the figures, the ends of all in print.
    """

    name: StageName
    on: dt.date | None
    early: dt.date | None
    late: dt.date | None
    how: How
    spread: SpreadOf
    years: int = 0
    source: str = ""
    unverified: bool = False


@dataclass(frozen=True, slots=True)
class KillOdds:
    """The frost that kills a stand, over the years on record.

    ``chance`` is the share of years with such a frost within a year [0–1],
    ``seed_first`` the share in which its seed can sprout before it [0–1].
    """

    temp_c: float
    early: dt.date | None
    likely: dt.date | None
    late: dt.date | None
    chance: float | None
    seed_first: float | None
    years: int
    source: str


@dataclass(frozen=True, slots=True)
class Window:
    """Days for one thing, with why it opens and closes.

    ``closes`` is the last good day; None has no end in sight. ``early`` and ``late``
    are the range of the day that closes it. ``chance`` is the share of years in which
    what the window is for would have come true [0–1]. ``is_next_years`` says that no
    day is left in the year asked about.
    """

    kind: WindowKind
    opens: dt.date | None
    closes: dt.date | None
    opens_why: Why
    closes_why: Why
    how: How
    years: int = 0
    chance: float | None = None
    early: dt.date | None = None
    late: dt.date | None = None
    sources: tuple[str, ...] = ()
    caveats: tuple[Caveat, ...] = ()
    is_next_years: bool = False


@dataclass(frozen=True, slots=True)
class Outlook:
    """One stand, planned or sown: its stages, its killing frost, its windows."""

    planting_id: int
    stages: tuple[StageOdds, ...]
    kill: KillOdds | None
    windows: tuple[Window, ...]
    caveats: tuple[Caveat, ...]
    years: tuple[int, ...] = ()
    spoilt_years: tuple[int, ...] = ()

    def stage(self, name: StageName) -> StageOdds:
        """Return one stage; every stage has a row, with a day or without."""
        return next(row for row in self.stages if row.name is name)

    @property
    def seen(self) -> tuple[StageOdds, ...]:
        """Return the stages that were seen; their days stand for those reckoned."""
        return tuple(row for row in self.stages if row.spread is SpreadOf.SEEN)

    def window(self, kind: WindowKind) -> Window | None:
        """Return one window, or None where the stand has none."""
        return next((row for row in self.windows if row.kind is kind), None)
