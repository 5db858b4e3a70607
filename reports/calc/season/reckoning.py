"""What one reckoning of a season shares: the day, the station and what is cached."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from reports.calc.growth import Timetable, forecast, timetable
from reports.calc.nutrients import Climate, OnTop, plant_available_n
from reports.calc.season.decays import Decays
from reports.calc.season.halves import sown_as_if
from reports.calc.season.holds import Lasting
from reports.calc.season.makeup import Makeups
from reports.calc.season.rates import RateTable
from reports.calc.season.station import StationTotals
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import KindFacts, PlantingFacts, Residue
from reports.calc.shapes.season import StageDate


@dataclass(slots=True)
class Reckoning:
    """The season, the day it is counted to and everything summed only once.

    ``lasts`` and ``sides`` keep residues already reckoned, ``rises`` canopies by the
    days they take to close.
    """

    season: Span
    today: dt.date
    station: StationTotals
    assumptions: Mapping[str, float]
    climate: Climate
    makeups: Makeups
    decays: Decays
    rates: RateTable
    southern: bool = False
    # The season's first day in the calendar, and how many of its days have passed.
    offset: int = field(init=False)
    counted: int = field(init=False)
    lasts: dict[tuple[int, int, float, float], Lasting] = field(default_factory=dict)
    rises: dict[int, NDArray[np.float64]] = field(default_factory=dict)
    sides: dict[object, object] = field(default_factory=dict)
    _available: dict[tuple[float, Residue], float] = field(default_factory=dict)
    _forecasts: dict[object, tuple[StageDate, ...]] = field(default_factory=dict)
    _timetables: dict[tuple[str, int], Timetable] = field(default_factory=dict)
    _heat_days: dict[tuple[str, dt.date], dt.date | None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        past = (self.today - self.season.first).days + 1
        self.offset = self.station.index(self.season.first)
        self.counted = max(0, min(past, self.season.days))

    def forecast(self, planting: PlantingFacts) -> tuple[StageDate, ...]:
        """Return a planting's stages by heat and days, once for beds sown alike."""
        start = planting.start
        kinds = tuple(line.kind for line in planting.lines)
        slugs = tuple(kind.slug for kind in kinds)
        key = (slugs, start, planting.method, planting.purpose)
        if key not in self._forecasts:
            dated = kinds if start is not None else ()
            self._forecasts[key] = forecast(
                planting=planting,
                timetables=[self.timetable(kind, start) for kind in dated if start],
                closed_by_heat=[
                    self.closed_by_heat(kind, start) for kind in dated if start
                ],
            )
        return self._forecasts[key]

    def timetable(self, kind: KindFacts, sown_on: dt.date) -> Timetable:
        """Return a kind's timetable for the month sown, made once."""
        month = sown_as_if(sown_on, southern=self.southern).month
        key = (kind.slug, month)
        if key not in self._timetables:
            self._timetables[key] = timetable(
                kind, month=month, assumptions=self.assumptions
            )
        return self._timetables[key]

    def closed_by_heat(self, kind: KindFacts, sown_on: dt.date) -> dt.date | None:
        """Return the day a kind's heat rule was met, None where it has none."""
        rule = self.timetable(kind, sown_on).heat
        if rule is None:
            return None
        key = (kind.slug, sown_on)
        if key not in self._heat_days:
            found = self.station.heat_day(
                start=sown_on, base_c=rule.base_c, target=rule.sum_c_days
            )
            self._heat_days[key] = None if found is None else self.station.day(found)
        return self._heat_days[key]

    def available_n(self, nitrogen_share: float, placement: Residue) -> float:
        """Return the nitrogen freed from each kilogram of residue. [kg/kg]"""
        key = (nitrogen_share, placement)
        if key not in self._available:
            choices = self.assumptions
            self._available[key] = plant_available_n(
                nitrogen_share=nitrogen_share,
                mass_kg_m2=1.0,
                placement=placement,
                climate=self.climate,
                on_top=OnTop(
                    choices["nitrogen_on_top_warm"], choices["nitrogen_on_top_cool"]
                ),
            )
        return self._available[key]
