"""Left on top against worked in: one ended stand, both ways, with the reasons."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from reports.calc.season.decays import LIKELY, Decay, Row
from reports.calc.season.holds import Lasting, Three
from reports.calc.season.makeup import Makeup
from reports.calc.season.plant_back import (
    plant_back_in_mulch,
    plant_back_worked_in,
)
from reports.calc.season.reasons import reasons_for
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.season.soil_loss import BARE_SOIL, Indices
from reports.calc.shapes.basics import Between, How
from reports.calc.shapes.choice import (
    HoldUntil,
    MulchHold,
    Reason,
    ResidueChoice,
    ResidueSide,
    Trace,
)
from reports.calc.shapes.ledger import Residue


@dataclass(slots=True)
class Sides:
    """Both ways to leave a residue, and what their comparison shows."""

    on_top: ResidueSide
    worked_in: ResidueSide
    reasons: tuple[Reason, ...]


@dataclass(slots=True)
class Known:
    """An ended piece of which mass and decay are known."""

    remains: Remains
    makeup: Makeup
    decay: Decay
    lasts: Lasting
    mass: Between
    likely: float
    taken: Residue


def choice_of(
    remains: Remains, erosion: Indices, reckoning: Reckoning
) -> ResidueChoice:
    """Return the comparison for one ended piece, with the way taken marked."""
    both = _sides(remains, erosion, reckoning)
    makeup = remains.makeup
    return ResidueChoice(
        planting_id=remains.stand.planting.id,
        ended_on=remains.ended_on,
        end=remains.piece.end,
        mass_kg_m2=remains.mass.between,
        mass_likely_kg_m2=remains.mass.likely,
        mass_how=remains.mass.how,
        mass_source=remains.mass.source,
        nitrogen_share=remains.nitrogen.between,
        nitrogen_how=remains.nitrogen.how,
        on_top=both.on_top if both else None,
        worked_in=both.worked_in if both else None,
        reasons=both.reasons if both else (),
        figure_sources=(*(makeup.sources if makeup else ()), remains.nitrogen.source),
        why_none=remains.why_none,
    )


def _sides(remains: Remains, erosion: Indices, reckoning: Reckoning) -> Sides | None:
    """Return both sides; stands alike that ended on one day share their answer."""
    end, mass = remains.piece.end, remains.mass
    taken = Residue.ON_TOP if end is None else end.residue
    makeup, decay, lasts = remains.makeup, remains.decay, remains.lasts
    if makeup is None or decay is None or lasts is None:
        return None
    assert mass.between is not None and mass.likely is not None
    known = Known(remains, makeup, decay, lasts, mass.between, mass.likely, taken)
    if mass.how is not How.HANDBOOK or remains.nitrogen.how is How.SAMPLED:
        return _compare(known, erosion, reckoning)
    # Kinds and mixes keep one makeup for the whole reckoning, so its id will do.
    key = (id(makeup), remains.dead, taken)
    if key not in reckoning.sides:
        reckoning.sides[key] = _compare(known, erosion, reckoning)
    found = reckoning.sides[key]
    assert isinstance(found, Sides)
    return found


def _compare(known: Known, erosion: Indices, reckoning: Reckoning) -> Sides:
    on_top = _on_top(known, erosion, reckoning)
    worked_in = _worked_in(known, reckoning)
    reasons = reasons_for(known.remains, known.lasts, on_top, worked_in, reckoning)
    return Sides(on_top, worked_in, reasons)


def _on_top(known: Known, erosion: Indices, reckoning: Reckoning) -> ResidueSide:
    lasts, ended_on = known.lasts, known.remains.ended_on
    bare_at = lasts.counts_as_cover[LIKELY]
    thin_on = None if bare_at is None else ended_on + dt.timedelta(bare_at)
    moderate = lasts.moderate[LIKELY]
    return ResidueSide(
        placement=Residue.ON_TOP,
        taken=known.taken is Residue.ON_TOP,
        trace=_trace(known, known.decay.on_top, known.decay.cover, reckoning),
        half_life_days=lasts.half_on_top[LIKELY],
        half_life_between=(lasts.half_on_top[0], lasts.half_on_top[-1]),
        below_30_cover_on=thin_on,
        hold=_hold(lasts, ended_on),
        weed_hold_until=None if moderate is None else _last_day(ended_on, moderate),
        nitrogen_total_kg_m2=_nitrogen(known),
        nitrogen_six_weeks_kg_m2=_available(known, Residue.ON_TOP, reckoning),
        plant_back=plant_back_in_mulch(known.makeup.waits, ended_on, thin_on),
        erosion_index_60_days=erosion[id(known.remains)],
    )


def _worked_in(known: Known, reckoning: Reckoning) -> ResidueSide:
    lasts, ended_on = known.lasts, known.remains.ended_on
    return ResidueSide(
        placement=Residue.WORKED_IN,
        taken=known.taken is Residue.WORKED_IN,
        trace=_trace(known, known.decay.worked_in, (), reckoning),
        half_life_days=lasts.half_worked_in[LIKELY],
        half_life_between=(lasts.half_worked_in[0], lasts.half_worked_in[-1]),
        below_30_cover_on=ended_on,
        hold=None,
        weed_hold_until=ended_on,
        nitrogen_total_kg_m2=_nitrogen(known),
        nitrogen_six_weeks_kg_m2=_available(known, Residue.WORKED_IN, reckoning),
        plant_back=plant_back_worked_in(known.makeup.waits, ended_on),
        erosion_index_60_days=BARE_SOIL,
    )


def _trace(
    known: Known, left: tuple[Row, ...], layer: tuple[Row, ...], reckoning: Reckoning
) -> Trace:
    return Trace(
        start=known.remains.ended_on,
        offsets=known.decay.offsets,
        left=left,
        layer=layer,
        masses=(known.mass.low, known.likely, known.mass.high),
        release_days=reckoning.assumptions["nitrogen_release_days"],
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


def _nitrogen(known: Known) -> Between | None:
    share = known.remains.nitrogen.between
    if share is None:
        return None
    return Between(known.mass.low * share.low, known.mass.high * share.high)


def _available(
    known: Known, placement: Residue, reckoning: Reckoning
) -> Between | None:
    share = known.remains.nitrogen.between
    if share is None:
        return None
    low = reckoning.available_n(share.low, placement)
    high = reckoning.available_n(share.high, placement)
    return Between(known.mass.low * low, known.mass.high * high)
