"""Which days each planting holds its field, seen, written down or foretold."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping

from reports.calc.gaps import Held
from reports.calc.season.endings import killed_on
from reports.calc.shapes.ahead import Outlook, WindowKind
from reports.calc.shapes.ledger import PlantingFacts, Purpose
from reports.calc.windows import MISSED_D

DAY = dt.timedelta(days=1)
WHOLE = 0.995  # share of the area, areas ended in parts are typed with rounding


def held_by(
    planting: PlantingFacts,
    outlook: Outlook | None,
    others: Iterable[PlantingFacts],
    *,
    today: dt.date,
) -> Iterator[Held]:
    """Yield the days a planting holds, and those of the crop named to follow it.

    What has no end known ends where the next planting on the field begins, and a
    crop named to follow counts until one is written down.
    """
    start, after = planting.start, planting.next_crop_on
    if start is None or is_stale(planting, today):
        return
    later = sorted(on for row in others if (on := row.start) and on > start)
    last = last_day(planting, outlook, today=today)
    if last is None and later:
        last = later[0] - DAY
    yield Held(start, last)
    if after is None or (today - after).days > MISSED_D:
        return
    if not any((on - after).days >= -MISSED_D for on in later):
        yield Held(after, None)


def is_stale(planting: PlantingFacts, today: dt.date) -> bool:
    """Return whether a plan lies so far back that nobody will sow it."""
    planned = planting.planned_on
    if planting.sown_on is not None or planned is None:
        return False
    return (today - planned).days > MISSED_D


def ended_on(planting: PlantingFacts) -> dt.date | None:
    """Return the day on which the last of a stand ended, None while any lives."""
    ends = [end for end in planting.ends if not end.regrows]
    area = sum(end.area_m2 for end in ends)
    if ends and area >= planting.area_m2 * WHOLE:
        return max(end.on for end in ends)
    return killed_on(planting)


def last_day(
    planting: PlantingFacts, outlook: Outlook | None, *, today: dt.date
) -> dt.date | None:
    """Return the last day a planting holds its ground; None where nobody knows."""
    ended = ended_on(planting)
    if ended is not None:
        return ended - DAY
    if planting.next_crop_on is not None:
        return planting.next_crop_on - DAY
    if planting.purpose is Purpose.CASH or outlook is None:
        return None
    foretold = _foretold(outlook)
    return None if foretold is None else max(foretold, today)


def _foretold(outlook: Outlook) -> dt.date | None:
    kinds: Mapping[WindowKind, dt.date | None] = {
        row.kind: row.closes for row in outlook.windows
    }
    ends = [kinds.get(WindowKind.END_MOWING), kinds.get(WindowKind.END_WORKING_IN)]
    known = [day for day in ends if day is not None]
    if known:
        return max(known)
    return outlook.kill.likely if outlook.kill else None
