"""What would have been foretold on the day of sowing, against what was seen."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from reports.calc.growth import Timetable
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.sky import DAY, Sky
from reports.calc.season.ahead.stages import stages_of
from reports.calc.shapes.ahead import SpreadOf, StageOdds
from reports.calc.shapes.ledger import PlantingFacts, Weather
from reports.calc.shapes.season import StageName


@dataclass(frozen=True, slots=True)
class Hindsight:
    """One stage of one stand: foretold at sowing, and seen.

    ``late_days`` is above 0 where it came later than foretold. [d]
    """

    planting: PlantingFacts
    told: StageOdds
    seen: dt.date

    @property
    def late_days(self) -> int:
        """Return how many days later than foretold it came. [d]"""
        assert self.told.on is not None
        return (self.seen - self.told.on).days

    @property
    def inside(self) -> bool:
        """Return whether it came between the early and the late day."""
        early, late = self.told.early, self.told.late
        return early is not None and late is not None and early <= self.seen <= late


@dataclass(frozen=True, slots=True)
class Record:
    """How one stage has been foretold so far."""

    name: StageName
    stands: int
    mean_late_days: float
    mean_miss_days: float
    inside: int


def hindsight(
    plantings: Sequence[PlantingFacts],
    *,
    weather: Weather | None,
    assumptions: Mapping[str, float],
    whole_fahrenheit: bool = True,
    southern: bool = False,
) -> tuple[Hindsight, ...]:
    """Return every stage seen, beside what was known of it on the day of sowing.

    Parameters
    ----------
    plantings : sequence of PlantingFacts
        Those sown and looked at tell something.
    weather, assumptions, whole_fahrenheit, southern
        As in :func:`~reports.calc.season.ahead.outlook.growing_under`.

    Returns
    -------
    tuple of Hindsight
        By planting and stage. Weather of the day of sowing and after is not used.
    """
    out: list[Hindsight] = []
    skies: dict[dt.date, Sky] = {}
    tables: dict[tuple[str, int], Timetable] = {}
    for planting in plantings:
        sown = planting.sown_on
        if sown is None or not planting.observations or not planting.lines:
            continue
        if sown not in skies:
            skies[sown] = Sky(
                weather, today=sown - DAY, whole_fahrenheit=whole_fahrenheit
            )
        growing = Growing(skies[sown], assumptions, southern, tables)
        out += _of(planting, growing)
    return tuple(out)


def _of(planting: PlantingFacts, growing: Growing) -> Iterator[Hindsight]:
    (blind,) = stages_of([replace(planting, observations=())], growing)
    (seen,) = stages_of([planting], growing)
    for told, found in zip(blind.rows, seen.rows, strict=True):
        if found.spread is not SpreadOf.SEEN or told.spread is SpreadOf.SEEN:
            continue
        if found.on is not None and told.on is not None:
            yield Hindsight(planting, told, found.on)


def records_of(rows: Sequence[Hindsight]) -> tuple[Record, ...]:
    """Return how each stage has been foretold, over all stands."""
    out = []
    for name in StageName:
        here = [row for row in rows if row.told.name is name]
        if here:
            late = [row.late_days for row in here]
            out.append(
                Record(
                    name=name,
                    stands=len(here),
                    mean_late_days=sum(late) / len(late),
                    mean_miss_days=sum(map(abs, late)) / len(late),
                    inside=sum(row.inside for row in here),
                )
            )
    return tuple(out)
