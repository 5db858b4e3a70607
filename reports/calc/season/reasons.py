"""What a comparison of residues shows, and where its evidence is thin."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.nutrients import NitrogenNote, nitrogen_note
from reports.calc.season.decays import HORIZON_DAYS, LIKELY
from reports.calc.season.holds import Lasting, Three
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.shapes.basics import How
from reports.calc.shapes.choice import Reason, ResidueSide

LONGEST_CURVE = 112  # d, offset of the last point drawn


def reasons_for(
    remains: Remains,
    lasts: Lasting,
    on_top: ResidueSide,
    worked_in: ResidueSide,
    reckoning: Reckoning,
) -> tuple[Reason, ...]:
    """Return what speaks for each way, and the cautions, in a fixed order."""
    return (
        *_for_on_top(lasts),
        *_for_worked_in(lasts, on_top, worked_in),
        *_cautions(remains, lasts),
        *_weather(remains, reckoning),
    )


def _for_on_top(lasts: Lasting) -> Iterator[Reason]:
    if _days(lasts.partial) or _days(lasts.moderate):
        yield Reason.ON_TOP_HOLDS_WEEDS_LONGER
    if _days(lasts.counts_as_cover):
        yield Reason.ON_TOP_COVERS_SOIL


def _for_worked_in(
    lasts: Lasting, on_top: ResidueSide, worked_in: ResidueSide
) -> Iterator[Reason]:
    if _days(lasts.half_worked_in) < _days(lasts.half_on_top):
        yield Reason.WORKED_IN_RELEASES_SOONER
    more, less = worked_in.nitrogen_six_weeks_kg_m2, on_top.nitrogen_six_weeks_kg_m2
    if more is not None and less is not None and more.high > less.high:
        yield Reason.WORKED_IN_RELEASES_MORE_NITROGEN
    small = worked_in.plant_back.direct_small_seed
    later = on_top.plant_back.direct_small_seed
    if small is not None and (later is None or small < later):
        yield Reason.WORKED_IN_PLANTS_SOONER


def _cautions(remains: Remains, lasts: Lasting) -> Iterator[Reason]:
    makeup, share = remains.makeup, remains.nitrogen.between
    assert makeup is not None
    if makeup.buckwheat:
        yield Reason.BUCKWHEAT_MULCH_NEVER_BETTER_THAN_PARTIAL
    if share is not None:
        yield Reason.NITROGEN_FROM_REGION_ELSEWHERE
        if nitrogen_note(nitrogen_share=share.low) is NitrogenNote.NONE_MAY_TIE_UP:
            yield Reason.LOW_N_MAY_TIE_UP
    if makeup.thin_evidence:
        yield Reason.THIN_EVIDENCE_DECAY
    if remains.mass.how is How.HANDBOOK:
        yield Reason.HANDBOOK_MASS
    if lasts.doubtful_cover:
        yield Reason.COVER_LATE_IN_DECAY_DOUBTFUL


def _weather(remains: Remains, reckoning: Reckoning) -> Iterator[Reason]:
    if (last := reckoning.station.last_read) is None:
        yield Reason.NO_WEATHER
    elif last < remains.dead + LONGEST_CURVE:
        yield Reason.WEATHER_ENDS_BEFORE_CURVE


def _days(three: Three) -> int:
    return HORIZON_DAYS if (likely := three[LIKELY]) is None else likely
