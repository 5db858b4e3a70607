"""Days from sowing to each stage in every year on record, many sowings at once."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from reports.calc import forecast
from reports.calc.growth import HeatRule, Timetable, timetable
from reports.calc.season.ahead.sky import Sky
from reports.calc.season.halves import sown_as_if
from reports.calc.shapes.ledger import KindFacts, Method
from reports.calc.shapes.season import StageName

NAMES = tuple(StageName)
CLOSED = NAMES.index(StageName.CLOSED)
Days = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Sowing:
    """One kind sown on a day; ``up`` where it stands from that very day."""

    kind: KindFacts
    start: dt.date
    method: Method
    up: bool = False


@dataclass(slots=True)
class Growing:
    """Timetables looked up once, and the days they give in every year.

    ``southern`` moves figures for a month of sowing by half a year.
    """

    sky: Sky
    assumptions: Mapping[str, float]
    southern: bool = False
    _tables: dict[tuple[str, int], Timetable] = field(default_factory=dict)

    def table(self, kind: KindFacts, start: dt.date) -> Timetable:
        """Return a kind's timetable for the month sown."""
        month = sown_as_if(start, southern=self.southern).month
        key = (kind.slug, month)
        if key not in self._tables:
            self._tables[key] = timetable(
                kind, month=month, assumptions=self.assumptions
            )
        return self._tables[key]

    def by_days(self, sowings: Sequence[Sowing]) -> Days:
        """Return days since sowing by stage, the same in every year. (n, s)"""
        out = np.full((len(sowings), len(NAMES)), np.nan)
        for row, sowing in zip(out, sowings, strict=True):
            stages = self.table(sowing.kind, sowing.start).stages
            for place, name in enumerate(NAMES):
                if name in stages:
                    row[place] = stages[name].days
            if sowing.up:
                row[0] = 0.0
            elif sowing.method is Method.FROST_SEEDED:
                row[0] = np.nan
        return out

    def by_year(self, sowings: Sequence[Sowing]) -> Days:
        """Return days since sowing by year and stage, heat before days. (n, y, s)"""
        years = len(self.sky.aligned([self.sky.today]).years)
        flat = self.by_days(sowings)
        out = np.repeat(flat[:, None, :], max(years, 1), axis=1)
        if years:
            out[:, :, CLOSED] = self._closed(sowings, flat[:, CLOSED], years)
        return out

    def _closed(self, sowings: Sequence[Sowing], days: Days, years: int) -> Days:
        out = np.repeat(days[:, None], years, axis=1)
        rules: dict[HeatRule, list[int]] = {}
        for place, sowing in enumerate(sowings):
            rule = self.table(sowing.kind, sowing.start).heat
            if rule is not None:
                rules.setdefault(rule, []).append(place)
        for rule, places in rules.items():
            heat_days = self.heat_days([sowings[one].start for one in places], rule)
            flat = out[places]
            if rule.or_days_first:
                # A year that tells nothing by heat tells nothing at all.
                out[places] = np.minimum(heat_days, np.fmin(flat, np.inf))
            else:
                out[places] = heat_days
        return out

    def heat_days(self, starts: Sequence[dt.date], rule: HeatRule) -> Days:
        """Return days to a sum of heat: read so far, then as in every year. (n, y)"""
        sky = self.sky
        sums, gaps = sky.heat_sums(rule.base_c)
        turns = [max(start, sky.unread_from) for start in starts]
        so_far, told = sky.heat_so_far(starts=starts, base_c=rule.base_c)
        ahead = forecast.days_to_heat(
            total=sums,
            missing=gaps,
            aligned=sky.aligned(turns),
            wanted=np.maximum(rule.sum_c_days - so_far, 0.0),
        )
        waited = np.array([(t - s).days for t, s in zip(turns, starts, strict=True)])
        out = np.where(told[:, None], waited[:, None] + ahead, np.nan)
        return self._met(starts, rule, so_far, told, out)

    def _met(
        self,
        starts: Sequence[dt.date],
        rule: HeatRule,
        so_far: Days,
        told: NDArray[np.bool_],
        out: Days,
    ) -> Days:
        """Put in the day on which the sum was met already, the same for every year."""
        weather = self.sky.weather
        assert weather is not None
        sums, _ = self.sky.heat_sums(rule.base_c)
        for place in np.flatnonzero(told & (so_far >= rule.sum_c_days)).tolist():
            at = weather.index(starts[place])
            goal = sums[at] + rule.sum_c_days - 1e-9
            out[place] = max(int(np.searchsorted(sums, goal)) - 1 - at, 0)
        return out
