"""What each ended piece of a stand left behind."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from reports.calc.biomass import stand_biomass
from reports.calc.season.decays import LIKELY, Decay
from reports.calc.season.holds import Lasting, lasting
from reports.calc.season.makeup import (
    NOTHING_KNOWN,
    Amount,
    Makeup,
    sampled_mass,
)
from reports.calc.season.pieces import Piece
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.ripeness import Ripeness, ripeness
from reports.calc.season.stands import Stand
from reports.calc.shapes.basics import Between, How
from reports.calc.shapes.choice import NoChoice
from reports.calc.shapes.ledger import Sample

Layers = Mapping[int, NDArray[np.float64] | None]
FULLEST = 0.99  # share, an observed cover above it would mean endless mass


@dataclass(slots=True)
class Remains:
    """An ended piece: what its residue weighed and is made of.

    ``decay`` and ``lasts`` are None where the mass or the rate is not known.
    """

    stand: Stand
    piece: Piece
    dead: int
    ended_on: dt.date
    ripe: Ripeness
    makeup: Makeup | None
    mass: Amount
    nitrogen: Amount
    decay: Decay | None
    lasts: Lasting | None

    @property
    def why_none(self) -> NoChoice | None:
        """Return why its decay is not known, None where it is."""
        if self.makeup is None:
            return NoChoice.DECAY_UNKNOWN
        return NoChoice.MASS_UNKNOWN if self.mass.between is None else None


def remains_of(stand: Stand, reckoning: Reckoning) -> tuple[Remains, ...]:
    """Return what the ended pieces of a stand left; nothing if it never stood."""
    up = stand.up
    if up is None:
        return ()
    return tuple(
        _remains(stand, piece, piece.dead, reckoning)
        for piece in stand.pieces
        if piece.dead is not None and piece.dead > up
    )


def layers_of(left: Iterable[Remains], reckoning: Reckoning) -> Layers:
    """Return the exponents of residue cover over the counted season, by residue."""
    first, days = reckoning.offset, reckoning.counted
    return {id(row): layer_over(row, first, days, reckoning) for row in left}


def residue_days(
    left: Iterable[Remains], layers: Layers, reckoning: Reckoning
) -> float:
    """Return the days on which a stand's residue counts as cover. [d]"""
    least = -math.log1p(-reckoning.assumptions["residue_counts_from"])
    return sum(
        row.piece.share * int(np.count_nonzero(layer >= least))
        for row in left
        if (layer := layers[id(row)]) is not None
    )


def layer_over(
    remains: Remains, first: int, days: int, reckoning: Reckoning
) -> NDArray[np.float64] | None:
    """Return the exponent of the residue's ground cover day by day. [unitless]

    ``first`` is a position in the calendar. None where nothing lies there.
    """
    piece, start = remains.piece, remains.dead
    last = min(piece.buried, first + days)
    lies_until = min(piece.on_top_until, last)
    seen = _covers_seen(remains, reckoning)
    modelled = remains.decay is not None and lies_until > start
    if last <= max(start, first) or not (seen or modelled):
        return None
    out = np.zeros(days)
    if remains.decay is not None:
        _lay(
            out, first, start, lies_until, remains.decay.layer[:, LIKELY], remains.mass
        )
    for day, exponent in seen:
        _restart(out, first, day, last, exponent, remains, reckoning)
    return out


def _lay(
    out: NDArray[np.float64],
    first: int,
    start: int,
    stop: int,
    layer: NDArray[np.float64],
    mass: Amount,
) -> None:
    begin, end = max(start, first), min(stop, start + len(layer))
    if end > begin and mass.likely is not None:
        out[begin - first : end - first] = (
            layer[begin - start : end - start] * mass.likely
        )


def _restart(
    out: NDArray[np.float64],
    first: int,
    day: int,
    stop: int,
    exponent: float,
    remains: Remains,
    reckoning: Reckoning,
) -> None:
    begin = max(day, first)
    if begin >= stop:
        return
    since = np.arange(begin - day, stop - day)
    if remains.decay is None:
        half = reckoning.assumptions["half_life_on_top"]
        out[begin - first : stop - first] = exponent * 0.5 ** (since / half)
        return
    layer = remains.decay.layer[:, LIKELY]
    at = min(day - remains.dead, len(layer) - 1)
    ahead = np.minimum(at + since, len(layer) - 1)
    out[begin - first : stop - first] = exponent * layer[ahead] / layer[at]


def _covers_seen(remains: Remains, reckoning: Reckoning) -> list[tuple[int, float]]:
    index = reckoning.station.index
    return sorted(
        (index(row.on), -math.log1p(-min(row.ground_cover_share, FULLEST)))
        for row in remains.stand.planting.observations
        if row.ground_cover_share is not None and index(row.on) >= remains.stand.gone
    )


def _remains(stand: Stand, piece: Piece, dead: int, reckoning: Reckoning) -> Remains:
    planting = stand.planting
    ended_on = reckoning.station.day(dead)
    ripe = ripeness(
        stand.stages, ended_on, piece.end.bloom_share if piece.end else None
    )
    days = reckoning.assumptions["sample_days_before_end"]
    sample = sampled_mass(planting.samples, ended_on, days)
    printed = reckoning.makeups.of(planting, ripe)
    makeup, nitrogen = printed.makeup, printed.nitrogen
    mass = _weighed(sample) if sample else printed.mass
    if sample and sample.nitrogen_share is not None:
        nitrogen = _exactly(sample.nitrogen_share)
    decay = lasts = None
    if makeup and mass.between and mass.likely is not None:
        decay = reckoning.decays.of(makeup, dead)
        # One mix has one mass in print, so beds ended together last alike.
        key = (id(makeup), dead, mass.between.low, mass.between.high)
        lasts = reckoning.lasts.get(key)
        if lasts is None:
            lasts = lasting(
                decay, makeup, mass.between, mass.likely, reckoning.assumptions
            )
            reckoning.lasts[key] = lasts
    return Remains(
        stand, piece, dead, ended_on, ripe, makeup, mass, nitrogen, decay, lasts
    )


def _weighed(sample: Sample) -> Amount:
    frames = sample.dry_kg_m2
    if not frames:
        return NOTHING_KNOWN
    one_m2 = [1.0] * len(frames)
    stand = stand_biomass(wet_kg=frames, area_m2=one_m2, dry_share=1.0)
    mean, error = stand.mean_kg_m2, stand.se_kg_m2 or 0.0
    return Amount(Between(max(mean - error, 0.0), mean + error), mean, How.SAMPLED)


def _exactly(share: float) -> Amount:
    return Amount(Between(share, share), share, How.SAMPLED)
