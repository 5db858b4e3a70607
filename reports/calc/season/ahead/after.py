"""What comes after a stand: frost, the next crop, or a stand of its own seed."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc import windows
from reports.calc.growth import whole_days
from reports.calc.season.ahead.opening import Opening
from reports.calc.season.ripeness import Ripeness
from reports.calc.shapes.ahead import Why, Window, WindowKind
from reports.calc.shapes.basics import How
from reports.calc.shapes.season import StageName

PLANT_BACK = (
    WindowKind.LARGE_SEED_ON_TOP,
    WindowKind.PLANTS_ON_TOP,
    WindowKind.SMALL_SEED_WORKED_IN,
    WindowKind.LARGE_SEED_WORKED_IN,
    WindowKind.PLANTS_WORKED_IN,
)


def frost_window(one: Opening) -> Iterator[Window]:
    """Yield the days between an early and a late killing frost."""
    kill = one.kill
    if kill is None or kill.chance is None:
        return
    yield Window(
        WindowKind.FROST_KILL,
        kill.early,
        kill.late,
        Why.KILLING_FROST if kill.early else Why.NO_END_IN_A_YEAR,
        Why.KILLING_FROST if kill.late else Why.NO_END_IN_A_YEAR,
        How.OBSERVED if kill.early and kill.early == kill.late else How.YEARS,
        years=kill.years,
        chance=kill.chance,
        sources=(kill.source,),
    )


def plant_back(one: Opening, ends: tuple[Window, ...]) -> Iterator[Window]:
    """Yield the first day of the next crop, by residue and by how it is set."""
    printed = one.makeups.of(one.stand.planting, Ripeness.AT_BLOOM)
    if printed.makeup is None:
        return
    done = [end.on for end in one.stand.planting.ends if not end.regrows]
    by_kind = {row.kind: row.closes for row in ends}
    mown = max(done, default=by_kind.get(WindowKind.END_MOWING))
    worked_in = max(done, default=by_kind.get(WindowKind.END_WORKING_IN))
    waits = (*printed.makeup.waits.in_mulch, *printed.makeup.waits.worked_in)
    for kind, wait in zip(PLANT_BACK, waits, strict=True):
        base = mown if kind in PLANT_BACK[:2] else worked_in
        if base is None:
            continue
        careful = base + dt.timedelta(wait.high_d)
        yield Window(
            kind,
            base + dt.timedelta(wait.low_d),
            None,
            Why.RESIDUE_WAIT,
            Why.NOT_KNOWN,
            How.OBSERVED if done else one.stand.row(StageName.FIRST_FLOWER).how,
            late=careful,
            sources=(wait.source,),
        )


def second_stand(one: Opening) -> Iterator[Window]:
    """Yield the days of the stand that comes by itself, if it is let set seed."""
    ripe = one.figure("seed_mature_days")
    up, closed = one.on(StageName.EMERGED), one.on(StageName.CLOSED)
    if ripe is None or up is None:
        return
    start = one.stand.start
    moved = dt.timedelta(one.stand.moved_days)
    found = windows.second_stand(
        ripe=start + dt.timedelta(whole_days(ripe.between.middle)) + moved,
        up_days=(up - start).days,
        close_days=None if closed is None else (closed - start).days,
        frost=one.kill.likely if one.kill else None,
    )
    if found.until is not None and found.until <= found.up:
        return
    yield Window(
        WindowKind.SELF_SOWN,
        found.up,
        None if found.until is None else found.until - dt.timedelta(1),
        Why.SEED_SHED,
        Why.KILLING_FROST if found.until else Why.NO_END_IN_A_YEAR,
        How.DAYS,
        early=found.closes,
        sources=(ripe.source,),
    )
