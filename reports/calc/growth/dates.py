"""The date of each stage of a stand, and of its canopy closing again after a cut."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from reports.calc.growth.seen import lay_over, read
from reports.calc.growth.timetable import HeatRule, StageDays, Timetable
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import Method, PlantingFacts, Purpose
from reports.calc.shapes.season import StageDate, StageName

NAMES = tuple(StageName)


def forecast(
    *,
    planting: PlantingFacts,
    timetables: Sequence[Timetable],
    closed_by_heat: Sequence[dt.date | None],
) -> tuple[StageDate, ...]:
    """Return the date of each stage by heat, else by days, whatever was seen.

    Parameters
    ----------
    planting : PlantingFacts
        The planting; only its start, method and purpose matter.
    timetables : sequence of Timetable
        One a kind in the planting. In a mix the first kind to come to a stage gives
        its date, so that no kind sets seed unnoticed.
    closed_by_heat : sequence of datetime.date or None
        For each timetable the day its heat rule was met, None where it has none.

    Returns
    -------
    tuple of StageDate
        In the order the stages come; ``on`` is None where nothing tells the date.
        Forecasts run on past the end of a stand; the caller cuts them.

    Raises
    ------
    ValueError
        If the two sequences differ in length.

    Notes
    -----
    A transplanted, self-sown or cash crop is up on its own date. A frost-seeded stand
    comes up when spring lets it, which no figure gives: it must be seen ([ASSUMED]_).
    """
    if len(timetables) != len(closed_by_heat):
        raise ValueError("timetables and heat dates differ in length")
    start = planting.start
    if start is None:
        return tuple(StageDate(name, None, How.UNKNOWN) for name in NAMES)
    kinds = tuple(zip(timetables, closed_by_heat, strict=True))
    return tuple(_forecast(planting, start, name, kinds) for name in NAMES)


def as_seen(
    rows: tuple[StageDate, ...],
    *,
    planting: PlantingFacts,
    assumptions: Mapping[str, float],
) -> tuple[StageDate, ...]:
    """Return the forecast with everything seen in the stand laid over it.

    Parameters
    ----------
    rows : tuple of StageDate
        From :func:`forecast`.
    planting : PlantingFacts
        The planting and what was seen in it.
    assumptions : Mapping of str to float
        Our choices, by key.

    Returns
    -------
    tuple of StageDate
        In the order the stages come.

    Notes
    -----
    What was seen replaces the forecast, moves later forecasts by as many days as it
    came sooner or later, and bounds earlier ones: what flowers has emerged
    ([ASSUMED]_).
    """
    if planting.start is None or not planting.observations:
        return rows
    return lay_over(rows, read(planting, planting.start, assumptions))


def stage_dates(
    *,
    planting: PlantingFacts,
    timetables: Sequence[Timetable],
    closed_by_heat: Sequence[dt.date | None],
    assumptions: Mapping[str, float],
) -> tuple[StageDate, ...]:
    """Return the date of each stage: as seen, else by heat, else by days.

    Parameters
    ----------
    planting, timetables, closed_by_heat
        As in :func:`forecast`.
    assumptions : Mapping of str to float
        Our choices, by key.

    Returns
    -------
    tuple of StageDate
        As :func:`forecast` with :func:`as_seen` laid over it.
    """
    rows = forecast(
        planting=planting, timetables=timetables, closed_by_heat=closed_by_heat
    )
    return as_seen(rows, planting=planting, assumptions=assumptions)


def up_on_its_date(planting: PlantingFacts) -> bool:
    """Return whether a planting counts as up on the very day it was set.

    Parameters
    ----------
    planting : PlantingFacts
        The planting.

    Returns
    -------
    bool
        True for cash crops, transplants and stands that sowed themselves.
    """
    return planting.purpose is Purpose.CASH or planting.method in (
        Method.TRANSPLANTED,
        Method.SELF_SOWN,
    )


def closed_again(
    *,
    planting: PlantingFacts,
    cut_on: dt.date,
    stages: tuple[StageDate, ...],
    closed_cover: float,
) -> StageDate:
    """Return when the canopy closes again after a cut that grows back.

    Parameters
    ----------
    planting : PlantingFacts
        The planting and what was seen in it.
    cut_on : datetime.date
        Day of the cut.
    stages : tuple of StageDate
        The stand's first stages, from :func:`stage_dates`.
    closed_cover : float
        Share of canopy that counts as closed. [0–1]

    Returns
    -------
    StageDate
        As seen after the cut, else as long after it as from emergence to closure
        the first time ([ASSUMED]_).
    """
    seen = (
        row.on
        for row in planting.observations
        if row.on > cut_on and (row.canopy_share or 0.0) >= closed_cover
    )
    if (on := min(seen, default=None)) is not None:
        return StageDate(StageName.CLOSED, on, How.OBSERVED, on, on)
    up, closed = stages[0].on, stages[1]
    if up is None or closed.on is None:
        return StageDate(StageName.CLOSED, None, How.UNKNOWN)
    return StageDate(
        StageName.CLOSED,
        cut_on + (closed.on - up),
        How.ASSUMED,
        cut_on + ((closed.early or closed.on) - up),
        cut_on + ((closed.late or closed.on) - up),
        closed.source,
        closed.unverified,
    )


def _forecast(
    planting: PlantingFacts,
    start: dt.date,
    name: StageName,
    kinds: tuple[tuple[Timetable, dt.date | None], ...],
) -> StageDate:
    if name is StageName.EMERGED:
        if up_on_its_date(planting):
            return StageDate(name, start, How.OBSERVED, start, start)
        if planting.method is Method.FROST_SEEDED:
            return StageDate(name, None, How.UNKNOWN)
    found = [
        row
        for table, heat_on in kinds
        if (row := _of_kind(start, name, table, heat_on)) is not None
    ]
    if not found:
        return StageDate(name, None, How.UNKNOWN)
    return found[0] if len(found) == 1 else min(found, key=_on)


def _of_kind(
    start: dt.date, name: StageName, table: Timetable, heat_on: dt.date | None
) -> StageDate | None:
    days = table.stages.get(name)
    by_days = None if days is None else _by_days(start, name, days)
    if name is StageName.CLOSED and table.heat is not None and heat_on is not None:
        return _by_heat(table.heat, heat_on, by_days)
    return by_days


def _by_days(start: dt.date, name: StageName, days: StageDays) -> StageDate:
    return StageDate(
        name,
        start + dt.timedelta(days.days),
        days.how,
        start + dt.timedelta(days.early),
        start + dt.timedelta(days.late),
        days.source,
        days.unverified,
    )


def _by_heat(rule: HeatRule, heat_on: dt.date, by_days: StageDate | None) -> StageDate:
    early = late = heat_on
    if by_days is not None:
        early = min(by_days.early or heat_on, heat_on)
        late = max(by_days.late or heat_on, heat_on)
        if rule.or_days_first and _on(by_days) <= heat_on:
            return by_days
    return StageDate(
        StageName.CLOSED, heat_on, How.HEAT, early, late, rule.source, rule.unverified
    )


def _on(row: StageDate) -> dt.date:
    return row.on or dt.date.max
