"""One field's season as a row of segments and ticks."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence

import numpy as np

from reports.calc.season.ground import GROUNDS, Carried
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.stands import Stand
from reports.calc.shapes.basics import How
from reports.calc.shapes.season import (
    Ground,
    Segment,
    StageName,
    Strip,
    Tick,
    TickKind,
)

Mark = tuple[dt.date, int, TickKind, How]
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
    first, last = reckoning.season.first, reckoning.season.last
    marks = [mark for stand in stands for mark in _marks(stand, reckoning)]
    marks = sorted(mark for mark in marks if first <= mark[0] <= last)
    ticks = tuple([Tick(on, kind, how, key) for on, key, kind, how in marks])
    return Strip(tuple(segments), ticks)


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


def _marks(stand: Stand, reckoning: Reckoning) -> Iterator[Mark]:
    key, sown = stand.planting.id, stand.planting.sown_on
    if sown is None or sown > reckoning.today:
        return
    yield sown, key, TickKind.SOWN, How.OBSERVED
    for row in stand.reached:
        kind = TICKED.get(row.name)
        if kind and row.on and row.on <= reckoning.today and row.on != sown:
            yield row.on, key, kind, row.how
    for end in stand.planting.ends:
        kind = TickKind.CUT if end.regrows else TickKind.ENDED
        yield end.on, key, kind, How.OBSERVED
    for piece in stand.pieces:
        if piece.end is None and piece.dead is not None:
            yield reckoning.station.day(piece.dead), key, TickKind.ENDED, How.OBSERVED
