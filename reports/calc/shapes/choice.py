"""The two ways to leave a residue, side by side, as plain values."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass
from enum import StrEnum

from reports.calc.shapes.basics import Between, How
from reports.calc.shapes.ledger import End, Residue


class Reason(StrEnum):
    """What the comparison shows, and what it cannot show."""

    ON_TOP_HOLDS_WEEDS_LONGER = "on_top_holds_weeds_longer"
    ON_TOP_COVERS_SOIL = "on_top_covers_soil"
    WORKED_IN_RELEASES_SOONER = "worked_in_releases_sooner"
    WORKED_IN_RELEASES_MORE_NITROGEN = "worked_in_releases_more_nitrogen"
    WORKED_IN_PLANTS_SOONER = "worked_in_plants_sooner"
    BUCKWHEAT_MULCH_NEVER_BETTER_THAN_PARTIAL = (
        "buckwheat_mulch_never_better_than_partial"
    )
    LOW_N_MAY_TIE_UP = "low_n_may_tie_up"
    THIN_EVIDENCE_DECAY = "thin_evidence_decay"
    HANDBOOK_MASS = "handbook_mass"
    NITROGEN_FROM_REGION_ELSEWHERE = "nitrogen_from_region_elsewhere"
    COVER_LATE_IN_DECAY_DOUBTFUL = "cover_late_in_decay_doubtful"
    WEATHER_ENDS_BEFORE_CURVE = "weather_ends_before_curve"
    NO_WEATHER = "no_weather"


class NoChoice(StrEnum):
    """Why nothing could be compared."""

    MASS_UNKNOWN = "mass_unknown"
    DECAY_UNKNOWN = "decay_unknown"


@dataclass(frozen=True, slots=True)
class HoldUntil:
    """Last day of a strength of weed hold; None lies past the reckoning.

    ``likely`` with the middle mass and decay; ``early`` and ``late`` with the
    lightest, fastest and the heaviest, slowest. The day of the end stands for none
    at all.
    """

    likely: dt.date | None
    early: dt.date | None
    late: dt.date | None


@dataclass(frozen=True, slots=True)
class MulchHold:
    """Until when a mulch holds weeds back; None where it never does so."""

    strong: HoldUntil | None
    moderate: HoldUntil | None
    partial: HoldUntil | None


@dataclass(frozen=True, slots=True)
class CurvePoint:
    """What is left and released some days after the end."""

    offset_days: int
    on: dt.date
    mass_kg_m2: Between
    mass_likely_kg_m2: float
    cover: Between
    cover_likely: float
    nitrogen_released_kg_m2: Between | None


Rows = tuple[tuple[float, ...], ...]


@dataclass(frozen=True, slots=True)
class Trace:
    """How a residue goes, kept small; :attr:`ResidueSide.curve` writes it out.

    ``left`` and ``layer`` have a row an offset with a fast, a likely and a slow
    figure: share of the mass left [0–1], and exponent of ground cover for each kg/m²
    [m²/kg], no rows where worked in. ``masses`` are low, likely and high [kg/m²].
    Nitrogen is freed evenly over ``release_days``.
    """

    start: dt.date
    offsets: tuple[int, ...]
    left: Rows
    layer: Rows
    masses: tuple[float, float, float]
    release_days: float


@dataclass(frozen=True, slots=True)
class PlantBack:
    """First days the next crop may go in, and in ``careful`` those of the careful.

    None where no figure says. ``careful`` is in the same order: small seed, large
    seed, transplants.
    """

    direct_small_seed: dt.date | None
    direct_large_seed: dt.date | None
    transplants: dt.date | None
    source: str
    careful: tuple[dt.date, ...] = ()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ResidueSide:
    """One way to leave the residue; ``taken`` marks the way it was left.

    Masses and nitrogen are per area [kg/m²]; ``half_life_days`` None where
    half is still there when the reckoning ends, ``half_life_between`` the same
    at the fast and the slow end. ``weed_hold_until`` is the last day of moderate
    hold or better: the day of the end where there is none, None past the reckoning.
    """

    placement: Residue
    taken: bool
    trace: Trace
    half_life_days: int | None
    half_life_between: tuple[int | None, int | None]
    below_30_cover_on: dt.date | None
    hold: MulchHold | None
    weed_hold_until: dt.date | None
    nitrogen_total_kg_m2: Between | None
    nitrogen_six_weeks_kg_m2: Between | None
    plant_back: PlantBack
    erosion_index_60_days: float

    @property
    def curve(self) -> tuple[CurvePoint, ...]:
        """Return what is left and released, from the end on."""
        return tuple(self._point(place) for place in range(len(self.trace.offsets)))

    def _point(self, place: int) -> CurvePoint:
        trace = self.trace
        offset, masses = trace.offsets[place], trace.masses
        layer = trace.layer[place] if trace.layer else (0.0, 0.0, 0.0)
        left = [x * kg for x, kg in zip(trace.left[place], masses, strict=True)]
        cover = [-math.expm1(-x * kg) for x, kg in zip(layer, masses, strict=True)]
        freed, whole = (
            min(1.0, offset / trace.release_days),
            self.nitrogen_six_weeks_kg_m2,
        )
        return CurvePoint(
            offset_days=offset,
            on=trace.start + dt.timedelta(offset),
            mass_kg_m2=Between(left[0], left[-1]),
            mass_likely_kg_m2=left[1],
            cover=Between(cover[0], cover[-1]),
            cover_likely=cover[1],
            nitrogen_released_kg_m2=whole
            and Between(whole.low * freed, whole.high * freed),
        )


@dataclass(frozen=True, slots=True)
class ResidueChoice:
    """An ended stand and both ways to leave it, or why they are not compared.

    ``end`` is None where frost killed the stand and no end was written down.
    """

    planting_id: int
    ended_on: dt.date
    end: End | None
    mass_kg_m2: Between | None
    mass_likely_kg_m2: float | None
    mass_how: How
    mass_source: str
    nitrogen_share: Between | None
    nitrogen_how: How
    on_top: ResidueSide | None
    worked_in: ResidueSide | None
    reasons: tuple[Reason, ...]
    figure_sources: tuple[str, ...] = ()
    why_none: NoChoice | None = None
