"""Left on top against worked in: one ended stand, both ways, with the reasons."""

from __future__ import annotations

import dataclasses
import datetime as dt
from dataclasses import dataclass

import numpy as np

from reports.calc.erosion import surface_cover_factor
from reports.calc.nutrients import OnTop, plant_available_n
from reports.calc.season.decays import LIKELY, PLACES, Decay
from reports.calc.season.holds import Lasting, Three, lasting
from reports.calc.season.makeup import Amount, Makeup
from reports.calc.season.plant_back import (
    plant_back_in_mulch,
    plant_back_worked_in,
)
from reports.calc.season.reasons import reasons_for
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.shapes.basics import Between
from reports.calc.shapes.choice import (
    HoldUntil,
    MulchHold,
    Reason,
    ResidueChoice,
    ResidueSide,
    Trace,
)
from reports.calc.shapes.ledger import Residue

OFFSETS = (0, 7, 14, 28, 42, 56, 84, 112)
EROSION_DAYS = 60
NOTHING = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Compared:
    """Both ways to leave a residue, whichever was taken."""

    lasting: Lasting
    on_top: ResidueSide
    worked_in: ResidueSide
    reasons: tuple[Reason, ...]


def compared(remains: Remains, reckoning: Reckoning) -> Compared | None:
    """Return both ways to leave a residue, None where mass or rate is unknown.

    Stands of one kind that ended on one day with one mass share their answer.
    """
    key = (remains.makeup, remains.dead, remains.mass, remains.nitrogen)
    if key not in reckoning.compared:
        lasts = lasting(remains, reckoning.assumptions)
        reckoning.compared[key] = lasts and _compare(remains, lasts, reckoning)
    found = reckoning.compared[key]
    assert found is None or isinstance(found, Compared)
    return found


def choice_of(remains: Remains, reckoning: Reckoning) -> ResidueChoice:
    """Return the comparison for one ended piece, with the way taken marked."""
    both = compared(remains, reckoning)
    end = remains.piece.end
    taken = Residue.ON_TOP if end is None else end.residue
    return ResidueChoice(
        planting_id=remains.stand.planting.id,
        ended_on=remains.ended_on,
        end=end,
        mass_kg_m2=remains.mass.between,
        mass_likely_kg_m2=remains.mass.likely,
        mass_how=remains.mass.how,
        mass_source=remains.mass.source,
        nitrogen_share=remains.nitrogen.between,
        nitrogen_how=remains.nitrogen.how,
        on_top=_taken(both.on_top, taken) if both else None,
        worked_in=_taken(both.worked_in, taken) if both else None,
        reasons=both.reasons if both else (),
        figure_sources=_figure_sources(remains),
        why_none=remains.why_none,
    )


def _figure_sources(remains: Remains) -> tuple[str, ...]:
    makeup = remains.makeup
    return (*(makeup.sources if makeup else ()), remains.nitrogen.source)


def _taken(side: ResidueSide, taken: Residue) -> ResidueSide:
    return dataclasses.replace(side, taken=True) if side.placement is taken else side


def _compare(remains: Remains, lasts: Lasting, reckoning: Reckoning) -> Compared:
    decay, makeup = remains.decay, remains.makeup
    assert decay is not None and makeup is not None
    on_top = _on_top(remains, decay, makeup, lasts, reckoning)
    worked_in = _worked_in(remains, decay, makeup, lasts, reckoning)
    reasons = reasons_for(remains, lasts, on_top, worked_in, reckoning)
    return Compared(lasts, on_top, worked_in, reasons)


def _on_top(
    remains: Remains,
    decay: Decay,
    makeup: Makeup,
    lasts: Lasting,
    reckoning: Reckoning,
) -> ResidueSide:
    ended_on, mass = remains.ended_on, remains.mass
    hold = _hold(lasts, ended_on)
    bare_at = lasts.counts_as_cover[LIKELY]
    thin_on = None if bare_at is None else ended_on + dt.timedelta(bare_at)
    choices = reckoning.assumptions
    moderate = lasts.moderate[LIKELY]
    exponents = decay.layer[:EROSION_DAYS, LIKELY] * (mass.likely or 0.0)
    index = surface_cover_factor(cover=-np.expm1(-exponents))
    return ResidueSide(
        placement=Residue.ON_TOP,
        taken=False,
        trace=_trace(remains, decay, on_top=True, reckoning=reckoning),
        half_life_days=lasts.half_on_top[LIKELY],
        half_life_between=(lasts.half_on_top[0], lasts.half_on_top[-1]),
        below_30_cover_on=thin_on,
        hold=hold,
        weed_hold_until=None if moderate is None else _last_day(ended_on, moderate),
        nitrogen_total_kg_m2=_times(mass, remains.nitrogen),
        nitrogen_six_weeks_kg_m2=_available(remains, Residue.ON_TOP, reckoning),
        plant_back=plant_back_in_mulch(makeup, ended_on, thin_on, choices),
        erosion_index_60_days=float(np.mean(index)),
    )


def _worked_in(
    remains: Remains,
    decay: Decay,
    makeup: Makeup,
    lasts: Lasting,
    reckoning: Reckoning,
) -> ResidueSide:
    ended_on = remains.ended_on
    return ResidueSide(
        placement=Residue.WORKED_IN,
        taken=False,
        trace=_trace(remains, decay, on_top=False, reckoning=reckoning),
        half_life_days=lasts.half_worked_in[LIKELY],
        half_life_between=(lasts.half_worked_in[0], lasts.half_worked_in[-1]),
        below_30_cover_on=ended_on,
        hold=None,
        weed_hold_until=ended_on,
        nitrogen_total_kg_m2=_times(remains.mass, remains.nitrogen),
        nitrogen_six_weeks_kg_m2=_available(remains, Residue.WORKED_IN, reckoning),
        plant_back=plant_back_worked_in(makeup, ended_on, reckoning.assumptions),
        erosion_index_60_days=float(surface_cover_factor(cover=0.0)),
    )


def _trace(
    remains: Remains, decay: Decay, *, on_top: bool, reckoning: Reckoning
) -> Trace:
    between = remains.mass.between
    assert between is not None
    masses = np.array([between.high, remains.mass.likely, between.low])
    offsets = tuple(day for day in OFFSETS if day < len(decay))
    columns = slice(0, PLACES) if on_top else slice(PLACES, None)
    left = (decay.left[offsets, columns] * masses)[:, ::-1]
    layer = (decay.layer[offsets, :] * masses)[:, ::-1]
    release = reckoning.assumptions["nitrogen_release_days"]
    return Trace(
        start=remains.ended_on,
        offsets=offsets,
        left=tuple(map(tuple, left.tolist())),
        layer=tuple(map(tuple, layer.tolist())) if on_top else (NOTHING,) * len(left),
        freed=tuple(min(1.0, day / release) for day in offsets),
    )


def _hold(lasts: Lasting, ended_on: dt.date) -> MulchHold:
    return MulchHold(
        strong=_until(lasts.strong, ended_on),
        moderate=_until(lasts.moderate, ended_on),
        partial=_until(lasts.partial, ended_on),
    )


def _until(days: Three, ended_on: dt.date) -> HoldUntil | None:
    if days[-1] == 0:
        return None
    early, likely, late = (
        None if count is None else _last_day(ended_on, count) for count in days
    )
    return HoldUntil(likely=likely, early=early, late=late)


def _last_day(ended_on: dt.date, days: int) -> dt.date:
    return ended_on + dt.timedelta(max(days - 1, 0))


def _times(mass: Amount, share: Amount) -> Between | None:
    if mass.between is None or share.between is None:
        return None
    low, high = share.between.low, share.between.high
    return Between(mass.between.low * low, mass.between.high * high)


def _available(
    remains: Remains, placement: Residue, reckoning: Reckoning
) -> Between | None:
    mass, share = remains.mass.between, remains.nitrogen.between
    if mass is None or share is None:
        return None
    choices = reckoning.assumptions
    own = OnTop(choices["nitrogen_on_top_warm"], choices["nitrogen_on_top_cool"])
    return Between(
        *(
            plant_available_n(
                nitrogen_share=nitrogen,
                mass_kg_m2=kg_m2,
                placement=placement,
                climate=reckoning.climate,
                on_top=own,
            )
            for nitrogen, kg_m2 in ((share.low, mass.low), (share.high, mass.high))
        )
    )
