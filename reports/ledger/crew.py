"""What one person needs in the field today: duties, sprayed ground, own entries."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

from farm import outlines
from farm.models import Change, Farm, Field, User
from farm.names import counting
from records.acts import ACTS as ACTS
from records.acts import seeds_query as seeds_query
from records.models import Application, Duty, InputProduct
from records.nouns import BY_MODEL
from reports.calc.rules.post import drawn_beside
from reports.calc.shapes.post import Plot, Sprayed

# Longer ago, no label's interval still runs.
SPRAYS_BACK = dt.timedelta(days=400)
ENTRIES = 8
TURNS = (Change.Verb.VOIDED, Change.Verb.PUT_BACK)


@dataclass(frozen=True)
class SeedOfPlan:
    """One line of a planned sowing."""

    kind_id: int
    lot_id: int | None
    share: float
    rate_kg_m2: float | None


@dataclass(frozen=True)
class DutyOfMine:
    """A duty of a person's or of nobody's, with what fills its form."""

    id: int
    code: str
    what: str
    field_id: int
    field_name: str
    planting_id: int | None
    kinds: str
    seeds: tuple[SeedOfPlan, ...]
    earliest_on: dt.date
    latest_on: dt.date
    notes: str
    for_me: bool


@dataclass(frozen=True)
class OwnEntry:
    """Something the person wrote down, and whether it still stands."""

    noun: str
    title: str
    id: int
    label: str
    at: dt.datetime
    voided: bool


def duties_of(farm: Farm, user: User, *, until: dt.date) -> tuple[DutyOfMine, ...]:
    """Three queries: open duties that begin by a day, those due first."""
    rows = Duty.objects.on(farm).open().for_person(user)
    rows = rows.filter(earliest_on__lte=until).select_related("field", "planting")
    rows = rows.prefetch_related("planting__lines__kind")
    return tuple(_duty(row) for row in rows.order_by("latest_on", "pk"))


def _duty(row: Any) -> DutyOfMine:
    lines = list(row.planting.lines.all()) if row.planting else []
    return DutyOfMine(
        id=row.pk,
        code=row.what,
        what=row.words or row.get_what_display(),
        field_id=row.field_id,
        field_name=row.field.name,
        planting_id=row.planting_id,
        kinds=" + ".join(str(line.kind) for line in lines),
        seeds=tuple(_seed(line, row.planting.area_m2) for line in lines),
        earliest_on=row.earliest_on,
        latest_on=row.latest_on,
        notes=row.notes,
        for_me=row.who_for_id is not None,
    )


def _seed(line: Any, area_m2: float) -> SeedOfPlan:
    return SeedOfPlan(
        kind_id=line.kind_id,
        lot_id=line.lot_id,
        share=line.share,
        rate_kg_m2=line.seed_kg / area_m2 if line.seed_kg else None,
    )


def sprayed(farm: Farm, *, today: dt.date) -> tuple[Sprayed, ...]:
    """One query: what was sprayed lately, with the interval on its label."""
    rows = Application.objects.on(farm).live()
    rows = rows.filter(
        product__type=InputProduct.Type.PEST,
        applied_on__range=(today - SPRAYS_BACK, today),
    ).select_related("field", "product")
    return tuple(
        Sprayed(
            field_id=row.field_id,
            field=row.field.name,
            product=row.product.name,
            on=row.applied_on,
            ended_at=dt.datetime.combine(
                row.applied_on, row.finished_at or dt.time(23, 59)
            ),
            reentry_hours=row.product.reentry_hours,
            done_by=row.done_by,
        )
        for row in rows
    )


def plots(farm: Farm, *, of: Collection[int]) -> tuple[Plot, ...]:
    """One query: the fields and their parts, by name, and what is drawn over these."""
    rows = list(Field.objects.on(farm).live().order_by("pk"))
    rows.sort(key=lambda row: counting(row.name))
    told = {row.pk: outlines.as_kept(row.outline) for row in rows} if of else {}
    drawn = {pk: one for pk, one in told.items() if one}
    pairs = outlines.sharing(drawn, of=of)
    return tuple(
        Plot(row.pk, row.name, row.parent_id, drawn_beside(row.pk, pairs))
        for row in rows
    )


def own_entries(farm: Farm, user: User) -> tuple[OwnEntry, ...]:
    """Two queries: the person's last entries, and which of them were voided."""
    wrote = Change.objects.filter(farm=farm, by=user, verb=Change.Verb.WROTE)
    rows = list(wrote.filter(noun__in=BY_MODEL).order_by("-number")[:ENTRIES])
    ids = {row.object_id for row in rows}
    turns = Change.objects.filter(farm=farm, object_id__in=ids, verb__in=TURNS)
    told = turns.order_by("number").values_list("noun", "object_id", "verb")
    last = {(noun, pk): verb for noun, pk, verb in told}
    return tuple(
        OwnEntry(
            noun=BY_MODEL[row.noun].slug,
            title=BY_MODEL[row.noun].title,
            id=row.object_id,
            label=row.label,
            at=row.at,
            voided=last.get((row.noun, row.object_id)) == Change.Verb.VOIDED,
        )
        for row in rows
    )
