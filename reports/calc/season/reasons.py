"""What a comparison of residues shows, and where its evidence is thin."""

from __future__ import annotations

from collections.abc import Iterator

from reports.calc.nutrients import NitrogenNote, nitrogen_note
from reports.calc.season.decays import LIKELY
from reports.calc.season.holds import Lasting, Three
from reports.calc.season.reckoning import Reckoning
from reports.calc.season.remains import Remains
from reports.calc.shapes.basics import How
from reports.calc.shapes.choice import Reason, ResidueSide

PAST = 10**6  # d, stands for a count that outlasts the reckoning
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
    there, here = worked_in.nitrogen_six_weeks_kg_m2, on_top.nitrogen_six_weeks_kg_m2
    if there is not None and here is not None and there.high > here.high:
        yield Reason.WORKED_IN_RELEASES_MORE_NITROGEN
    sown_in, sown_on = worked_in.plant_back, on_top.plant_back
    pairs = (
        (sown_in.direct_small_seed, sown_on.direct_small_seed),
        (sown_in.direct_large_seed, sown_on.direct_large_seed),
    )
    if any(early and (late is None or early < late) for early, late in pairs):
        yield Reason.WORKED_IN_PLANTS_SOONER


def _cautions(remains: Remains, lasts: Lasting) -> Iterator[Reason]:
    makeup, share = remains.makeup, remains.nitrogen.between
    if makeup is not None and makeup.buckwheat:
        yield Reason.BUCKWHEAT_MULCH_NEVER_BETTER_THAN_PARTIAL
    if share is not None:
        yield Reason.NITROGEN_FROM_REGION_ELSEWHERE
        note = nitrogen_note(nitrogen_share=share.low)
        if note is NitrogenNote.NONE_MAY_TIE_UP:
            yield Reason.LOW_N_MAY_TIE_UP
    if makeup is not None and makeup.thin_evidence:
        yield Reason.THIN_EVIDENCE_DECAY
    if remains.mass.how is How.HANDBOOK:
        yield Reason.HANDBOOK_MASS
    if lasts.doubtful_cover:
        yield Reason.COVER_LATE_IN_DECAY_DOUBTFUL


def _weather(remains: Remains, reckoning: Reckoning) -> Iterator[Reason]:
    last = reckoning.station.last_read
    if last is None:
        yield Reason.NO_WEATHER
    elif last < remains.dead + LONGEST_CURVE:
        yield Reason.WEATHER_ENDS_BEFORE_CURVE


def _days(three: Three) -> int:
    likely = three[LIKELY]
    return PAST if likely is None else likely
