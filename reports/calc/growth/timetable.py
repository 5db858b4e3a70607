"""How long after sowing a kind comes to each stage, by its figures."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import Figure, KindFacts
from reports.calc.shapes.season import StageName

BUCKWHEAT = "buckwheat"
ASSUMED = "ASSUMED"
ATTRIBUTES: Mapping[StageName, str] = {
    StageName.EMERGED: "emergence_days",
    StageName.CLOSED: "canopy_days",
    StageName.FIRST_FLOWER: "first_flower_days",
    StageName.FULL_BLOOM: "full_bloom_days",
    StageName.FIRST_SEED: "first_seed_days",
    StageName.VIABLE_SEED: "viable_seed_days",
}
# First and last month in which figures given for a time of sowing hold.
SOWN_IN: Mapping[str, tuple[int, int]] = {
    "june_sown": (1, 6),
    "spring_sown": (1, 6),
    "july_sown": (7, 12),
    "fall_sown": (8, 12),
}


@dataclass(frozen=True, slots=True)
class StageDays:
    """Days from sowing to a stage: the best figure and the spread of all."""

    days: int
    early: int
    late: int
    how: How
    source: str
    unverified: bool = False


@dataclass(frozen=True, slots=True)
class HeatRule:
    """Heat since sowing that closes the canopy.

    ``base_c`` [°C], ``sum_c_days`` [°C-day]; with ``or_days_first`` the days count
    where they come sooner.
    """

    base_c: float
    sum_c_days: float
    source: str
    or_days_first: bool
    unverified: bool = False


@dataclass(frozen=True, slots=True)
class Timetable:
    """One kind's stages for one time of sowing."""

    stages: Mapping[StageName, StageDays]
    heat: HeatRule | None


def whole_days(days: float) -> int:
    """Return days as a whole number, a half counted up. [d]

    Parameters
    ----------
    days : float
        Days, 0 or more. [d]

    Returns
    -------
    int
        Whole days. [d]

    Examples
    --------
    >>> whole_days(3.5), whole_days(4.49)
    (4, 4)
    """
    return int(days + 0.5)


def fitting(kind: KindFacts, attribute: str, month: int) -> tuple[Figure, ...]:
    """Return a kind's figures of an attribute that hold for a month of sowing.

    Parameters
    ----------
    kind : KindFacts
        The kind.
    attribute : str
        Name of the figure.
    month : int
        Month sown, 1 to 12, on the northern half of the earth as the figures are.

    Returns
    -------
    tuple of Figure
        Best first.
    """
    return tuple(
        row
        for row in kind.all(attribute)
        if SOWN_IN.get(row.stage, (1, 12))[0]
        <= month
        <= SOWN_IN.get(row.stage, (1, 12))[1]
    )


def timetable(
    kind: KindFacts, *, month: int, assumptions: Mapping[str, float]
) -> Timetable:
    """Return when a kind sown in a month comes to each stage.

    Parameters
    ----------
    kind : KindFacts
        The kind, its figures best first.
    month : int
        Month sown, 1 to 12.
    assumptions : Mapping of str to float
        Our choices, by key.

    Returns
    -------
    Timetable
        A stage is absent where no figure is known; emergence never is.

    Notes
    -----
    The best figure's middle is the day; the lowest and highest of all verified
    figures are the early and the late day, so that every book and common practice
    stay in sight. Buckwheat closes by heat or by days, whichever comes first, and
    kinds with a heat figure by heat ([ASSUMED]_).
    """
    stages = {}
    for name, attribute in ATTRIBUTES.items():
        days = _stage_days(fitting(kind, attribute, month))
        if days is not None:
            stages[name] = days
    if StageName.EMERGED not in stages:
        stages[StageName.EMERGED] = _chosen(assumptions["emergence_days"])
    if kind.slug == BUCKWHEAT:
        stages[StageName.CLOSED] = _buckwheat_closes(
            kind, stages.get(StageName.CLOSED), assumptions["buckwheat_canopy_days"]
        )
    return Timetable(stages, _heat_rule(kind, assumptions))


def _stage_days(figures: tuple[Figure, ...]) -> StageDays | None:
    if not figures:
        return None
    best = figures[0]
    seen = [row for row in figures if not row.unverified] or [best]
    return StageDays(
        days=whole_days(best.between.middle),
        early=whole_days(min(row.low for row in seen)),
        late=whole_days(max(row.high for row in seen)),
        how=How.ASSUMED if best.source == ASSUMED else How.DAYS,
        source=best.source,
        unverified=best.unverified,
    )


def _chosen(days: float) -> StageDays:
    whole = whole_days(days)
    return StageDays(whole, whole, whole, How.ASSUMED, ASSUMED)


def _buckwheat_closes(
    kind: KindFacts, printed: StageDays | None, days: float
) -> StageDays:
    best = kind.best("canopy_days")
    if printed is not None and best is not None and best.farm_own:
        return printed
    chosen = _chosen(days)
    if printed is None:
        return chosen
    early, late = min(printed.early, chosen.days), max(printed.late, chosen.days)
    return StageDays(chosen.days, early, late, How.ASSUMED, ASSUMED)


def _heat_rule(kind: KindFacts, assumptions: Mapping[str, float]) -> HeatRule | None:
    base, sum_ = kind.best("heat_base"), kind.best("heat_closure")
    buckwheat = kind.slug == BUCKWHEAT
    if sum_ is not None and base is not None and not (buckwheat and not sum_.farm_own):
        return HeatRule(
            base.between.middle,
            sum_.between.middle,
            sum_.source,
            or_days_first=buckwheat,
            unverified=sum_.unverified or base.unverified,
        )
    if not buckwheat:
        return None
    return HeatRule(
        assumptions["buckwheat_heat_base"],
        assumptions["buckwheat_canopy_heat"],
        ASSUMED,
        or_days_first=True,
    )
