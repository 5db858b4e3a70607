"""One field's season as a row of segments and ticks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from reports.calc.season.ground import GROUNDS, Carried
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.stands import Stand, reached
from reports.calc.shapes.basics import How
from reports.calc.shapes.season import (
    Ground,
    Segment,
    StageName,
    Strip,
    Tick,
    TickKind,
)

TICKED = {
    StageName.EMERGED: TickKind.EMERGED,
    StageName.FIRST_FLOWER: TickKind.FIRST_FLOWER,
}


def strip_of(
    rows: Sequence[Carried], stands: Sequence[Stand], reckoning: Reckoning
) -> Strip:
    """Return what each part of a field carried, and the marks of its stands."""
    segments = [segment for row in rows for segment in _segments(row, reckoning)]
    if reckoning.counted < reckoning.season.days:
        ahead = reckoning.station.day(reckoning.offset + reckoning.counted)
        last = reckoning.season.last
        segments.append(Segment(ahead, last, Ground.NOT_YET, 1.0))
    ticks = [tick for stand in stands for tick in _ticks(stand, reckoning)]
    ticks = [tick for tick in ticks if tick.on in reckoning.season]
    return Strip(tuple(segments), tuple(sorted(ticks, key=lambda tick: tick.on)))


def _segments(row: Carried, reckoning: Reckoning) -> Iterator[Segment]:
    if not len(row.ground):
        return
    turns = np.flatnonzero(row.ground[1:] != row.ground[:-1]) + 1
    starts = [0, *turns.tolist()]
    stops = [*turns.tolist(), len(row.ground)]
    day, first = reckoning.station.day, reckoning.offset
    for start, stop in zip(starts, stops, strict=True):
        ground = GROUNDS[row.ground[start]]
        yield Segment(day(first + start), day(first + stop - 1), ground, row.width)


def _ticks(stand: Stand, reckoning: Reckoning) -> Iterator[Tick]:
    planting = stand.planting
    sown = planting.sown_on
    if sown is None or sown > reckoning.today:
        return
    yield Tick(sown, TickKind.SOWN, How.OBSERVED, planting.id)
    for row in reached(stand, reckoning):
        kind = TICKED.get(row.name)
        if kind and row.on and row.on <= reckoning.today and row.on != sown:
            yield Tick(row.on, kind, row.how, planting.id)
    for end in planting.ends:
        kind = TickKind.CUT if end.regrows else TickKind.ENDED
        yield Tick(end.on, kind, How.OBSERVED, planting.id)
    for piece in stand.pieces:
        if piece.end is None and piece.dead is not None:
            on = reckoning.station.day(piece.dead)
            yield Tick(on, TickKind.ENDED, How.OBSERVED, planting.id)
