"""First days the next crop may go in after a stand has ended."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Mapping
from dataclasses import dataclass

from reports.calc import weeds
from reports.calc.shapes.choice import PlantBack
from reports.calc.shapes.ledger import Group, Residue

NEXT = (
    weeds.NextCrop.SMALL_SEED,
    weeds.NextCrop.LARGE_SEED,
    weeds.NextCrop.TRANSPLANT,
)


@dataclass(frozen=True, slots=True)
class NextCropWaits:
    """Waits of the next crop: small seed, large seed, transplants, as far as told."""

    in_mulch: tuple[weeds.Wait, ...]
    worked_in: tuple[weeds.Wait, ...]


def waits_of(
    groups: Collection[Group], own: weeds.Wait | None, assumptions: Mapping[str, float]
) -> NextCropWaits:
    """Return how long the next crop waits after a stand of some plant groups.

    ``own`` is the kind's figure in print; it only ever lengthens a wait. Small seed
    under a mulch waits for the cover to fall, which no number of days tells.
    """
    waits = weeds.Waits(
        young_d=int(assumptions["plant_back_young"]),
        mixed_d=int(assumptions["plant_back_mixed"]),
        slow_d=int(assumptions["plant_back_small_seed"]),
    )

    def told(placement: Residue) -> tuple[weeds.Wait, ...]:
        found = (
            weeds.plant_back_days(
                groups=groups, placement=placement, next_crop=crop, waits=waits
            )
            for crop in NEXT
        )
        return tuple(wait for wait in found if wait is not None)

    seeds, plants = told(Residue.ON_TOP)
    return NextCropWaits(
        in_mulch=(_longer(seeds, own), plants),
        worked_in=tuple(_longer(wait, own) for wait in told(Residue.WORKED_IN)),
    )


def plant_back_in_mulch(
    waits: NextCropWaits, ended_on: dt.date, thin_on: dt.date | None
) -> PlantBack:
    """Return the first planting days into residue left on top."""
    large, plants = _first_days(waits.in_mulch, ended_on)
    return PlantBack(
        direct_small_seed=thin_on,
        direct_large_seed=large,
        transplants=plants,
        source=waits.in_mulch[0].source,
        careful=_careful_days(waits.in_mulch, ended_on),
        sources=_sources(waits.in_mulch),
    )


def plant_back_worked_in(waits: NextCropWaits, ended_on: dt.date) -> PlantBack:
    """Return the first planting days into residue worked in the day it ended."""
    small, large, plants = _first_days(waits.worked_in, ended_on)
    return PlantBack(
        direct_small_seed=small,
        direct_large_seed=large,
        transplants=plants,
        source=waits.worked_in[1].source,
        careful=_careful_days(waits.worked_in, ended_on),
        sources=_sources(waits.worked_in),
    )


def _first_days(
    waits: tuple[weeds.Wait, ...], ended_on: dt.date
) -> tuple[dt.date, ...]:
    return tuple(ended_on + dt.timedelta(wait.low_d) for wait in waits)


def _careful_days(
    waits: tuple[weeds.Wait, ...], ended_on: dt.date
) -> tuple[dt.date, ...]:
    return tuple(ended_on + dt.timedelta(wait.high_d) for wait in waits)


def _sources(waits: tuple[weeds.Wait, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(wait.source for wait in waits))


def _longer(wait: weeds.Wait, own: weeds.Wait | None) -> weeds.Wait:
    if own is None or own.low_d <= wait.low_d:
        return wait
    return weeds.Wait(own.low_d, max(own.high_d, wait.high_d), own.source)
