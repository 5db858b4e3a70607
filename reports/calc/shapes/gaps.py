"""Gaps in a field's year, and the kinds that would fill them, as plain values."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.ahead import Caveat
from reports.calc.shapes.basics import Between


class Aim(StrEnum):
    """What a grower wants of a cover crop."""

    WEEDS = "weeds"
    NITROGEN = "nitrogen"
    CATCHING = "catching"
    LOOSENING = "loosening"
    BEES = "bees"
    FORAGE = "forage"
    MULCH = "mulch"


class Against(StrEnum):
    """What speaks against a kind in a gap; the first four weigh in the order."""

    FAMILY_BEFORE = "family_before"
    FAMILY_AFTER = "family_after"
    WHEAT_NEAR = "wheat_near"
    ANIMALS = "animals"
    COMES_BACK = "comes_back"
    NO_TIME = "no_time"
    SOIL_COLD = "soil_cold"
    SEED_UNTESTED = "seed_untested"
    SEED_SHORT = "seed_short"
    NO_SEED = "no_seed"
    RATE_UNKNOWN = "rate_unknown"


class RankBy(StrEnum):
    """By what one kind stands before the next, in the order it is asked."""

    FITS = "fits"
    AGAINST = "against"
    COVER = "cover"
    WEED_DAYS = "weed_days"
    SEED = "seed"
    NAME = "name"


class Bound(StrEnum):
    """What bounds a gap."""

    TODAY = "today"
    STAND_ENDS = "stand_ends"
    NOTHING_BEFORE = "nothing_before"
    NEXT_CROP = "next_crop"
    HORIZON = "horizon"


@dataclass(frozen=True, slots=True)
class Gap:
    """Days on which nothing grows or is planned on a field.

    ``last`` is the day before the next crop, None where nothing is planned within
    the time looked ahead. Families are those of the crops before and after.
    """

    field_id: int
    field_name: str
    area_m2: float
    first: dt.date
    last: dt.date | None
    opens: Bound
    before: tuple[str, ...] = ()
    families_before: frozenset[str] = frozenset()
    after: str = ""
    families_after: frozenset[str] = frozenset()
    transplanted_after: bool | None = None
    end_unknown: bool = False

    @property
    def days(self) -> int | None:
        """Return how long it is, None where it has no end. [d]"""
        return None if self.last is None else (self.last - self.first).days + 1

    @property
    def next_on(self) -> dt.date | None:
        """Return the day of the next crop, None where none is planned."""
        return None if self.last is None else self.last + dt.timedelta(1)


@dataclass(frozen=True, slots=True)
class SeedHand:
    """Seed needed and on hand, both as pure live seed. [kg]

    ``needed_kg`` is None where no rate is in print.
    """

    needed_kg: Between | None
    on_hand_kg: float
    lots: int
    untested: bool

    @property
    def enough(self) -> bool:
        """Return whether what is on hand meets the lower need."""
        return self.needed_kg is not None and self.on_hand_kg >= self.needed_kg.low


@dataclass(frozen=True, slots=True)
class Fit:
    """One kind in one gap.

    ``chance_cover`` and ``chance_flower`` are shares of years [0–1] of a sowing on
    ``sow_from``; ``weed_days`` the middle over the years [d]. None where the years
    tell nothing. ``seed_on`` is the day from which its seed can sprout.
    """

    slug: str
    kind_id: int
    name: str
    sow_from: dt.date | None
    sow_until: dt.date | None
    chance_cover: float | None
    chance_flower: float | None
    weed_days: float | None
    end_by: dt.date | None
    seed: SeedHand
    aims: tuple[Aim, ...]
    against: tuple[Against, ...]
    caveats: tuple[Caveat, ...]
    years: int = 0
    rain_week: float | None = None
    look_on: dt.date | None = None
    wait_days: int | None = None
    seed_on: dt.date | None = None

    @property
    def over_by(self) -> dt.date | None:
        """Return the last day to end it: before its seed, and for the next crop."""
        seed = self.seed_on and self.seed_on - dt.timedelta(1)
        return min((day for day in (self.end_by, seed) if day), default=None)


@dataclass(frozen=True, slots=True)
class Ranked:
    """A kind in its place, and what puts it before the next; None for the last."""

    fit: Fit
    ahead_by: RankBy | None
