"""The windows in which a living stand is cut or ended."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc import windows
from reports.calc.growth import whole_days
from reports.calc.season.ahead.opening import Opening
from reports.calc.shapes.ahead import SpreadOf, Why, Window, WindowKind
from reports.calc.shapes.basics import How
from reports.calc.shapes.season import StageName


def cut_window(one: Opening) -> Iterator[Window]:
    """Yield the days on which it may be cut and will grow back."""
    limit = one.figure("regrowth_bloom_limit")
    flower, bloom = one.on(StageName.FIRST_FLOWER), one.on(StageName.FULL_BLOOM)
    if limit is None or flower is None or bloom is None:
        return
    passed = _bloom_seen(one, limit.between.middle)
    limit_on = passed or windows.bloom_day(
        first_flower=flower,
        full_bloom=max(bloom, flower),
        share=limit.between.middle,
        full_share=one.assumptions["full_bloom_share"],
    )
    days = windows.cut_days(
        closed=one.on(StageName.CLOSED),
        limit_on=limit_on,
        frost=one.kill.likely if one.kill else None,
    )
    early, late = (None, None) if passed else _range(one, StageName.FIRST_FLOWER)
    moved = limit_on - flower
    yield Window(
        WindowKind.CUT,
        days.opens,
        days.closes,
        days.opens_why,
        days.closes_why,
        How.OBSERVED if passed else one.stand.row(StageName.FIRST_FLOWER).how,
        early=early + moved if early else None,
        late=late + moved if late else None,
        sources=(limit.source,),
    )


def _bloom_seen(one: Opening, limit: float) -> dt.date | None:
    """Return the first day on which more bloom than the limit was seen."""
    seen = (
        row.on
        for row in one.stand.planting.observations
        if row.bloom_share is not None and row.bloom_share >= limit
    )
    return min(seen, default=None)


def _range(one: Opening, name: StageName) -> tuple[dt.date | None, dt.date | None]:
    row = one.stand.row(name)
    return (None, None) if row.spread is SpreadOf.SEEN else (row.early, row.late)


def end_windows(one: Opening) -> Iterator[Window]:
    """Yield the days to end it before it seeds, by mowing and by working in."""
    after, printed = one.figure("end_after_flower_days"), None
    flower = one.stand.row(StageName.FIRST_FLOWER)
    span = None if after is None else (whole_days(after.low), whole_days(after.high))
    mowing = windows.end_days(
        first_flower=flower.on,
        after_days=span,
        viable_seed=one.on(StageName.VIABLE_SEED),
    )
    if mowing.closes is None:
        return
    sources = tuple(row.source for row in (after,) if row is not None)
    yield _window(WindowKind.END_MOWING, mowing, one, sources)
    printed = one.figure("work_in_window_days")
    if printed is None:
        yield _window(WindowKind.END_WORKING_IN, mowing, one, sources)
        return
    first = one.stand.start + dt.timedelta(one.stand.moved_days)
    working_in = windows.end_days(
        first_flower=flower.on,
        after_days=span,
        viable_seed=None,
        printed=(
            mowing.opens or first + dt.timedelta(whole_days(printed.low)),
            first + dt.timedelta(whole_days(printed.high)),
        ),
        printed_why=Why.SOURCE_WORKING_IN,
    )
    yield _window(WindowKind.END_WORKING_IN, working_in, one, (printed.source,))


def _window(
    kind: WindowKind, days: windows.Days, one: Opening, sources: tuple[str, ...]
) -> Window:
    row = one.stand.row(StageName.FIRST_FLOWER)
    early = late = None
    if days.closes and row.on and row.early and row.late:
        early = days.closes + (row.early - row.on)
        late = days.closes + (row.late - row.on)
    return Window(
        kind,
        days.opens,
        days.closes,
        days.opens_why,
        days.closes_why,
        row.how,
        early=early if row.spread is not SpreadOf.SEEN else None,
        late=late if row.spread is not SpreadOf.SEEN else None,
        sources=sources,
    )
