"""The gaps of every field of a farm, from what grows, what is planned and foretold."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from reports.calc.gaps import stretches
from reports.calc.season.ahead.holding import held_by, is_stale, last_day
from reports.calc.shapes.ahead import Outlook
from reports.calc.shapes.basics import Span
from reports.calc.shapes.gaps import Bound, Gap
from reports.calc.shapes.ledger import FieldLedger, PlantingFacts

AHEAD_D = 300  # d, how far ahead gaps are looked for, [ASSUMED]
DAY = dt.timedelta(days=1)
Outlooks = Mapping[int, Outlook]


def gaps_of(
    fields: Sequence[FieldLedger], outlooks: Outlooks, *, today: dt.date
) -> tuple[Gap, ...]:
    """Return every gap of every field from today on; parted fields by their parts."""
    within = Span(today, today + dt.timedelta(days=AHEAD_D))
    return tuple(
        gap
        for field in fields
        if field.own_ground_m2 > 0
        for gap in _of_field(field, outlooks, within)
    )


def _of_field(field: FieldLedger, outlooks: Outlooks, within: Span) -> tuple[Gap, ...]:
    today = within.first
    held = [
        row
        for planting in field.plantings
        for row in held_by(
            planting, outlooks.get(planting.id), field.plantings, today=today
        )
    ]
    return tuple(
        _gap(field, outlooks, span, within) for span in stretches(held, within=within)
    )


def _gap(field: FieldLedger, outlooks: Outlooks, span: Span, within: Span) -> Gap:
    today = within.first
    live = [row for row in field.plantings if not is_stale(row, today)]
    before = _before(live, outlooks, span, today)
    after = _after(live, span)
    named = [row for row in live if row.next_crop_on == span.last + DAY]
    open_ended = span.last == within.last and after is None and not named
    return Gap(
        field_id=field.id,
        field_name=field.name,
        area_m2=field.own_ground_m2,
        first=span.first,
        last=None if open_ended else span.last,
        opens=_opens(before, span, today),
        before=_names(before),
        families_before=_families(before),
        after=" + ".join(_names(after)) or next((r.next_crop for r in named), ""),
        families_after=_families(after),
        transplanted_after=next((row.next_crop_transplanted for row in named), None),
    )


def _before(
    live: Sequence[PlantingFacts], outlooks: Outlooks, span: Span, today: dt.date
) -> PlantingFacts | None:
    """Return the planting that held the ground last."""
    over = [
        (last, row)
        for row in live
        if (last := last_day(row, outlooks.get(row.id), today=today)) is not None
        and last < span.first
        and row.start is not None
        and row.start <= span.first
    ]
    return max(over, key=lambda one: one[0])[1] if over else None


def _after(live: Sequence[PlantingFacts], span: Span) -> PlantingFacts | None:
    return next((row for row in live if row.start == span.last + DAY), None)


def _opens(before: PlantingFacts | None, span: Span, today: dt.date) -> Bound:
    if span.first > today:
        return Bound.STAND_ENDS
    return Bound.NOTHING_BEFORE if before is None else Bound.TODAY


def _names(row: PlantingFacts | None) -> tuple[str, ...]:
    return () if row is None else tuple(line.kind.name for line in row.lines)


def _families(row: PlantingFacts | None) -> frozenset[str]:
    lines = () if row is None else row.lines
    return frozenset(line.kind.family for line in lines if line.kind.family)
