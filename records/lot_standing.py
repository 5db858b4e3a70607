"""What the page of a seed lot says beyond its tag: how it stands, day by day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.models import Farm, Record
from records.engineered import kinds_asked
from records.freshness import months_at_sowing, months_between
from records.models import (
    ApplicatorLicence,
    Kind,
    LotMove,
    SeedLine,
    SeedLot,
    StockCount,
)
from records.models.balances import ADDING
from records.searching import days_searched, has_search, search_standing

# Less than this is dust or a rounding. [kg]
DUST_KG = 1e-9
# The day, whether it is a count, its number, its words, and the weight. [kg]
Happened = tuple[dt.date, bool, int, str, float]


@dataclass(frozen=True, slots=True)
class Step:
    """One thing that became of a lot, and what was left of it then. [kg]"""

    on: dt.date
    words: str | Promise
    change_kg: float
    left_kg: float
    is_count: bool = False


@dataclass(frozen=True, slots=True)
class LotStanding:
    """A lot on a day."""

    live: list[tuple[Kind, float | None]]
    months: int | None
    is_old: bool
    steps: tuple[Step, ...]
    # None for organic seed, which needs no search.
    is_searched: bool | None
    # None where nobody asks whether it is engineered.
    is_shown: bool | None = None

    @property
    def left_kg(self) -> float:
        """What is left after all of it."""
        return self.steps[-1].left_kg


def standings(row: Record, *, today: dt.date) -> dict[str, Any]:
    """What a page says of how its record stands, where there is more to say of it."""
    return {
        "lot": lot_standing(row, today=today),
        "search": search_standing(row),
        "licence": licence_standing(row, today=today),
    }


@dataclass(frozen=True, slots=True)
class LicenceStanding:
    """A licence on a day: whether it has begun, and the days it still holds. [d]"""

    has_begun: bool
    days_left: int

    @property
    def days_over(self) -> int:
        """For how many days it has held no more."""
        return -self.days_left


def licence_standing(row: Record, *, today: dt.date) -> LicenceStanding | None:
    if not isinstance(row, ApplicatorLicence):
        return None
    begun = row.since is None or row.since <= today
    return LicenceStanding(begun, (row.until - today).days)


def lot_standing(row: Record, *, today: dt.date) -> LotStanding | None:
    """How a lot stands on a day, by its tag and all that became of it; else None."""
    if not isinstance(row, SeedLot):
        return None
    months = months_between(row.tested_on, today) if row.tested_on else None
    is_organic = row.status == SeedLot.Status.ORGANIC
    farm: Farm = row.farm
    return LotStanding(
        live=row.contents(),
        months=months,
        is_old=months is not None and months > months_at_sowing(farm),
        steps=tuple(_steps(row)),
        is_searched=None if is_organic else has_search(row, days_searched(farm)),
        is_shown=bool(row.non_gmo) if kinds_asked(row) else None,
    )


def _steps(row: SeedLot) -> Iterator[Step]:
    left = row.received_kg
    yield Step(row.received_on, row.get_came_display(), left, left)
    # A count sets it anew, after all else that happened on its day.
    happened = sorted([*_sown(row), *_moved(row), *_counted(row)])
    for on, is_count, _pk, words, kg in happened:
        before, left = left, kg if is_count else left + kg
        left = 0.0 if abs(left) < DUST_KG else left
        yield Step(on, words, left - before, left, is_count)


def _sown(row: SeedLot) -> Iterator[Happened]:
    lines = SeedLine.objects.filter(lot=row, planting__voided_at=None)
    lines = lines.exclude(planting__sown_on=None)
    # A mix is sown in one line for each kind, and each line is a step of its own.
    is_mix = len(row.contents()) > 1
    said = str(_("%(kind)s sown on %(field)s") if is_mix else _("sown on %(field)s"))
    for line in lines.select_related("planting__field", "kind"):
        planting: Any = line.planting
        words = said % {"field": planting.field, "kind": line.kind}
        yield planting.sown_on, False, line.pk, words, -(line.seed_kg or 0.0)


def _moved(row: SeedLot) -> Iterator[Happened]:
    for move in LotMove.objects.filter(lot=row, voided_at=None):
        kg = move.mass_kg if move.what in ADDING else -move.mass_kg
        yield move.moved_on, False, move.pk, str(move.get_what_display()), kg


def _counted(row: SeedLot) -> Iterator[Happened]:
    for count in StockCount.objects.filter(seed_lot=row, voided_at=None):
        yield count.counted_on, True, count.pk, str(_("counted")), count.mass_kg
