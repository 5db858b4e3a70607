"""What is due on a farm today: windows by state, frost this week, records missing."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from reports.calc import forecast, windows
from reports.calc.season.ahead.growing import Growing
from reports.calc.season.ahead.holding import ended_on, is_stale
from reports.calc.season.ahead.missing import lacks_of
from reports.calc.season.ahead.sky import DAY
from reports.calc.season.ahead.sowing import sow_window
from reports.calc.shapes.ahead import Outlook, Window, WindowKind, WindowState
from reports.calc.shapes.basics import How
from reports.calc.shapes.ledger import FieldLedger, PlantingFacts, Purpose
from reports.calc.shapes.now import Due, FrostWeek, Now

WEEK_D = 7
FROSTS_C = (0.0, -20 / 9)  # °C, 32 and 28 °F, [NCEI-NORMALS]
WHILE_STANDING = (WindowKind.CUT, WindowKind.END_MOWING, WindowKind.END_WORKING_IN)
TOLD = (
    WindowState.MISSED,
    WindowState.CLOSING,
    WindowState.OPEN,
    WindowState.OPENING,
)
AFTER_D = 60  # d, so long after an end the next crop's first day is told, [ASSUMED]


def now_of(
    fields: Sequence[FieldLedger],
    outlooks: Mapping[int, Outlook],
    growing: Growing,
) -> Now:
    """Return the farm on the day its sky is read to."""
    today = growing.sky.today
    stands = [(field, row) for field in fields for row in field.plantings]
    due = [
        Due(field.id, field.name, row, window, state, outlook.seen)
        for field, row in stands
        if (outlook := outlooks.get(row.id)) is not None
        for window in _windows(field, row, outlook, growing)
        if (state := windows.state_of(window.opens, window.closes, today=today)) in TOLD
        and not (window.kind is WindowKind.FROST_KILL and state is WindowState.MISSED)
    ]
    lacks = [
        lack for field, row in stands for lack in lacks_of(field, row, outlooks, today)
    ]
    weather = growing.sky.weather
    return Now(
        today=today,
        due=tuple(sorted(due, key=_order)),
        lacks=tuple(sorted(lacks, key=lambda one: (one.since, one.field_name))),
        frost=tuple(_frost_week(growing, temp_c) for temp_c in FROSTS_C),
        read_to=None if weather is None else growing.sky.unread_from - DAY,
    )


def _order(due: Due) -> tuple[int, dt.date, str]:
    return (
        TOLD.index(due.state),
        due.window.closes or due.window.opens or dt.date.max,
        due.field_name,
    )


def _windows(
    field: FieldLedger, row: PlantingFacts, outlook: Outlook | None, growing: Growing
) -> Iterator[Window]:
    today = growing.sky.today
    if outlook is None or row.purpose is Purpose.CASH:
        return
    if row.sown_on is None:
        if not is_stale(row, today):
            yield from _to_sow(row, growing)
        return
    ended = ended_on(row)
    if ended is None:
        yield from (one for one in outlook.windows if one.kind in WHILE_STANDING)
        yield from _frost(outlook)
    elif (today - ended).days <= AFTER_D and not _followed(field, ended):
        yield from _next_crop(row, outlook)


def _frost(outlook: Outlook) -> Iterator[Window]:
    """Yield the days in which frost may kill it, while none has been read."""
    window = outlook.window(WindowKind.FROST_KILL)
    if window is not None and window.how is How.YEARS:
        yield window


def _followed(field: FieldLedger, ended: dt.date) -> bool:
    """Return whether anything was set on the field since."""
    return any(one.sown_on and one.sown_on >= ended for one in field.plantings)


def _to_sow(row: PlantingFacts, growing: Growing) -> Iterator[Window]:
    """Yield the days for a sowing that is planned: those of its first kind."""
    planned = row.planned_on
    if planned is None or not row.lines:
        return
    first = min(planned, growing.sky.today)
    window = sow_window(row.lines[0].kind, growing, first=first)
    if window.closes is None or window.closes >= planned:
        yield _from(window, planned)


def _from(window: Window, planned: dt.date) -> Window:
    return Window(
        window.kind,
        planned if window.opens is None else max(window.opens, planned),
        window.closes,
        window.opens_why,
        window.closes_why,
        window.how,
        window.years,
        window.chance,
        sources=window.sources,
        caveats=window.caveats,
        is_next_years=window.is_next_years,
    )


def _next_crop(row: PlantingFacts, outlook: Outlook) -> Iterator[Window]:
    """Yield the first day of the next crop, by the residue and how it is set."""
    placed = "on_top" if row.ends[-1].residue == "on_top" else "worked_in"
    sets = "plants" if row.next_crop_transplanted else "large_seed"
    window = outlook.window(WindowKind(f"{sets}_{placed}"))
    if window is not None and row.next_crop:
        yield window


def _frost_week(growing: Growing, temp_c: float) -> FrostWeek:
    sky = growing.sky
    days = sky.days_to_frost([sky.today], temp_c=temp_c, within=WEEK_D - 1)[0]
    known = ~np.isnan(days)
    share = forecast.share_of_years(np.isfinite(days), known)
    chance = None if np.isnan(share) else float(share)
    return FrostWeek(temp_c, chance, int(np.count_nonzero(known)))
