"""First days the next crop may go in after a stand has ended."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping

from reports.calc import weeds
from reports.calc.season.makeup import Makeup
from reports.calc.shapes.choice import PlantBack
from reports.calc.shapes.ledger import Residue

NEXT = (
    weeds.NextCrop.SMALL_SEED,
    weeds.NextCrop.LARGE_SEED,
    weeds.NextCrop.TRANSPLANT,
)


def plant_back_in_mulch(
    makeup: Makeup,
    ended_on: dt.date,
    thin_on: dt.date | None,
    assumptions: Mapping[str, float],
) -> PlantBack:
    """Return the first planting days into residue left on top.

    Small seed waits until the mulch is thin; transplants go in at once.
    """
    waits = [_wait(makeup, Residue.ON_TOP, crop, assumptions) for crop in NEXT[1:]]
    return _first_days(ended_on, waits, small=thin_on)


def plant_back_worked_in(
    makeup: Makeup, ended_on: dt.date, assumptions: Mapping[str, float]
) -> PlantBack:
    """Return the first planting days into residue worked in the day it ended."""
    waits = [_wait(makeup, Residue.WORKED_IN, crop, assumptions) for crop in NEXT]
    small = ended_on + dt.timedelta(waits[0].low_d)
    days = _first_days(ended_on, waits[1:], small=small)
    careful = ended_on + dt.timedelta(waits[0].high_d)
    sources = tuple(dict.fromkeys((waits[0].source, *days.sources)))
    return PlantBack(
        days.direct_small_seed,
        days.direct_large_seed,
        days.transplants,
        days.source,
        (careful, *days.careful),
        sources,
    )


def _first_days(
    ended_on: dt.date, waits: list[weeds.Wait], *, small: dt.date | None
) -> PlantBack:
    large, plants = (ended_on + dt.timedelta(row.low_d) for row in waits)
    return PlantBack(
        direct_small_seed=small,
        direct_large_seed=large,
        transplants=plants,
        source=waits[0].source,
        careful=tuple(ended_on + dt.timedelta(row.high_d) for row in waits),
        sources=tuple(dict.fromkeys(row.source for row in waits)),
    )


def _wait(
    makeup: Makeup,
    placement: Residue,
    next_crop: weeds.NextCrop,
    assumptions: Mapping[str, float],
) -> weeds.Wait:
    wait = weeds.plant_back_days(
        groups=makeup.groups,
        placement=placement,
        next_crop=next_crop,
        waits=weeds.Waits(
            young_d=int(assumptions["plant_back_young"]),
            mixed_d=int(assumptions["plant_back_mixed"]),
            slow_d=int(assumptions["plant_back_small_seed"]),
        ),
    )
    own = makeup.wait
    set_in_mulch = (
        placement is Residue.ON_TOP and next_crop is weeds.NextCrop.TRANSPLANT
    )
    assert wait is not None
    if own is None or set_in_mulch or own.low <= wait.low_d:
        return wait
    # The kind's own figure in print only ever lengthens the wait.
    return weeds.Wait(own.low, max(own.high, wait.high_d), own.source)
