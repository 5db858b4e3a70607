"""What makes a planting's dates doubtful."""

from __future__ import annotations

import datetime as dt

from reports.calc.shapes.ledger import PlantingFacts
from reports.calc.shapes.season import Doubt, StageDate


def doubts_of(
    planting: PlantingFacts, stages: tuple[StageDate, ...], today: dt.date
) -> tuple[Doubt, ...]:
    """Return what is odd about the dates of a planting, as written down."""
    sown = planting.sown_on
    doubts = []
    if planting.start is None:
        doubts.append(Doubt.NO_DATE)
    elif sown is None:
        doubts.append(Doubt.PLANNED_NOT_SOWN)
    else:
        if sown > today:
            doubts.append(Doubt.SOWN_AFTER_TODAY)
        if any(row.on < sown for row in planting.observations):
            doubts.append(Doubt.SEEN_BEFORE_SOWN)
        if any(end.on < sown for end in planting.ends):
            doubts.append(Doubt.ENDED_BEFORE_SOWN)
        if stages[0].on is None:
            doubts.append(Doubt.EMERGENCE_UNKNOWN)
    if planting.late_entry:
        doubts.append(Doubt.WRITTEN_LATE)
    return tuple(doubts)
