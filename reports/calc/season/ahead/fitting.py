"""Which kinds fit a gap: when to sow, with what chance, for how long, what against."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast, weeds
from reports.calc.gaps import aims_of
from reports.calc.growth import whole_days
from reports.calc.season.ahead.chances import Chances, chances_of
from reports.calc.season.ahead.gaps import AHEAD_D, DAY
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.objections import Farm, objections
from reports.calc.season.ahead.room import day_at, look_on, room_for, share_at
from reports.calc.season.ahead.sowing import warm_soil
from reports.calc.season.ahead.weeks import share_rain
from reports.calc.season.plant_back import waits_of
from reports.calc.season.rates import RateTable
from reports.calc.shapes.ahead import Caveat
from reports.calc.shapes.basics import Between
from reports.calc.shapes.gaps import Bound, Fit, Gap, SeedHand
from reports.calc.shapes.ledger import KindFacts, Method

LARGE_SEED, PLANTS = 1, 2  # places among the waits after working in
RAIN_DAYS = 7  # d, a week after sowing
Days = NDArray[np.float64]


@dataclass(slots=True)
class Fitter:
    """Kinds with what the years would make of them, each reckoned once."""

    growing: Growing
    farm: Farm
    rates: RateTable
    _years: dict[str, tuple[Chances, Days, tuple[Caveat, ...]]] = field(
        default_factory=dict
    )
    _rain: Days | None = None

    def fits(self, gap: Gap, kinds: Mapping[int, KindFacts]) -> Iterator[Fit]:
        """Yield how each kind would do in a gap."""
        for kind_id, kind in kinds.items():
            yield self._fit(gap, kind_id, kind)

    def _of(self, kind: KindFacts) -> tuple[Chances, Days, tuple[Caveat, ...]]:
        if kind.slug not in self._years:
            first = self.growing.sky.today
            chances = chances_of(kind, self.growing, first=first, days=AHEAD_D + 1)
            warm, soil = warm_soil(kind, self.growing, first=first, days=AHEAD_D + 1)
            self._years[kind.slug] = chances, warm, soil
        return self._years[kind.slug]

    def _fit(self, gap: Gap, kind_id: int, kind: KindFacts) -> Fit:
        chances, warm, soil = self._of(kind)
        end_by = self._end_by(gap, kind)
        days = self._days(gap, kind, end_by)
        wanted = self.growing.assumptions["sow_chance"]
        room = room_for(chances, warm, days, end_by=end_by, wanted=wanted)
        limit, place = room.limit, room.place
        held = self._weed_days(kind, chances, days, limit, place) if len(days) else None
        seed = self._seed(gap, kind, days, place)
        against = objections(gap, kind, seed, self.farm, time=room.time, warm=room.warm)
        return Fit(
            slug=kind.slug,
            kind_id=kind_id,
            name=kind.name,
            sow_from=day_at(chances, days, room.first),
            sow_until=day_at(chances, days, room.last),
            chance_cover=share_at(room.cover, place),
            chance_flower=self._flower(chances, days, limit, place),
            weed_days=held,
            end_by=end_by,
            wait_days=(gap.last + DAY - end_by).days if gap.last and end_by else None,
            seed=seed,
            aims=aims_of(kind, weed_days=held),
            against=tuple(against),
            caveats=tuple(dict.fromkeys((*chances.caveats, *soil))),
            years=int(forecast.years_known(limit[place])) if len(days) else 0,
            rain_week=self._rain_week(days, place),
            look_on=look_on(chances, days, room.first),
            seed_on=_seed_on(kind, day_at(chances, days, room.first)),
        )

    def _end_by(self, gap: Gap, kind: KindFacts) -> dt.date | None:
        """Return the last day to end it so that the next crop need not wait."""
        if gap.last is None:
            return None
        row = kind.best("plant_back_days")
        own = None
        if row is not None and not row.unverified:
            own = weeds.Wait(whole_days(row.low), whole_days(row.high), row.source)
        waits = waits_of({kind.group}, own, self.growing.assumptions).worked_in
        wait = waits[PLANTS if gap.transplanted_after else LARGE_SEED]
        return gap.last + DAY - dt.timedelta(wait.low_d)

    def _days(
        self, gap: Gap, kind: KindFacts, end_by: dt.date | None
    ) -> NDArray[np.int64]:
        """Return the days of a gap a kind may be sown on, as places from today on."""
        today = self.growing.sky.today
        first = (gap.first - today).days
        row = kind.best("wait_before_sowing")
        if row is not None and gap.before and gap.opens is Bound.STAND_ENDS:
            first += whole_days(row.low)
        last = AHEAD_D if end_by is None else (end_by - today).days
        return np.arange(first, min(last, AHEAD_D) + 1)

    def _flower(
        self, chances: Chances, days: NDArray[np.int64], limit: Days, place: int
    ) -> float | None:
        if not len(days):
            return None
        flower = chances.flower[days[place]]
        known = ~np.isnan(flower) & ~np.isnan(limit[place])
        share = forecast.share_of_years(flower < limit[place], known)
        return None if np.isnan(share) else float(share)

    def _weed_days(
        self,
        kind: KindFacts,
        chances: Chances,
        days: NDArray[np.int64],
        limit: Days,
        place: int,
    ) -> float | None:
        """Return the middle of the days from closing to frost, seed or next crop."""
        seed = kind.best("viable_seed_days")
        most = np.inf if seed is None else seed.between.middle
        held = np.clip(
            np.minimum(limit[place], most) - chances.cover[days[place]], 0, AHEAD_D
        )
        middle = forecast.days_by_chance(held, (0.5,))[0]
        return None if np.isnan(middle) else float(middle)

    def _seed(
        self, gap: Gap, kind: KindFacts, days: NDArray[np.int64], place: int
    ) -> SeedHand:
        sown = gap.first
        if len(days):
            sown = self.growing.sky.today + dt.timedelta(int(days[place]))
        rates = self.rates.rates(kind, Method.BROADCAST, gap.area_m2, sown)
        rate = rates.own or rates.handbook or rates.common
        lots = self.farm.lots.get(kind.slug, ())
        return SeedHand(
            needed_kg=rate and Between(rate.low * gap.area_m2, rate.high * gap.area_m2),
            on_hand_kg=sum(lot.live_kg for lot in lots),
            lots=len(lots),
            untested=any(not lot.tested for lot in lots),
        )

    def _rain_week(self, days: NDArray[np.int64], place: int) -> float | None:
        if not len(days):
            return None
        if self._rain is None:
            sky = self.growing.sky
            self._rain = share_rain(
                sky,
                [sky.today + dt.timedelta(day) for day in range(AHEAD_D + 1)],
                least_mm=self.growing.assumptions["rain_week_mm"],
                over_days=RAIN_DAYS,
            )
        share = self._rain[days[place]]
        return None if np.isnan(share) else float(share)


def _seed_on(kind: KindFacts, sown: dt.date | None) -> dt.date | None:
    """Return the day from which the seed of such a sowing can sprout."""
    row = kind.best("viable_seed_days")
    if sown is None or row is None:
        return None
    return sown + dt.timedelta(whole_days(row.between.middle))
