"""What looking ahead needs beside a season: kinds, seed left, animals, duties."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from farm.models import Farm, User
from records.mixing import MixError, mix_of
from records.models import Duty, Grazing, InputProduct, Kind, SeedLot
from reports.calc.season.ahead.objections import LotLeft
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import KindFacts
from reports.ledger.figures import kind_facts
from reports.ledger.season import SeasonLedger, season_ledger

BACK, ON = dt.timedelta(days=365), dt.timedelta(days=365)


@dataclass(frozen=True)
class DutyTold:
    """A duty as the pages and the week sheet tell it."""

    id: int
    what: str
    field_id: int
    field_name: str
    planting_id: int | None
    earliest_on: dt.date
    latest_on: dt.date
    who: str
    mine: bool
    words: str
    code: str = ""
    window: str = ""
    written_by: str = ""
    written_on: dt.date | None = None


def ahead_ledger(farm: Farm, today: dt.date) -> SeasonLedger:
    """The fields from a year back to a year on, with every reading of the station."""
    return season_ledger(farm, Span(today - BACK, today + ON))


def cover_kinds(farm: Farm) -> dict[int, KindFacts]:
    """Every kind the farm may sow as a cover, by its number."""
    rows = Kind.objects.open_to(farm).exclude(use=Kind.Use.CASH)
    return kind_facts(farm, rows.values_list("pk", flat=True))


def mix_kinds(farm: Farm, text: str) -> dict[int, KindFacts]:
    """The kinds of a mix as one line tells it, none while it is not whole."""
    try:
        chosen = mix_of(text, farm) if text.strip() else ()
    except MixError:
        return {}
    return kind_facts(farm, [kind.pk for kind, _share in chosen])


def kind_named(farm: Farm, slug: str) -> KindFacts | None:
    """One kind by its short name, None where the farm has none such."""
    rows = Kind.objects.open_to(farm).filter(slug=slug)
    return next(
        iter(kind_facts(farm, rows.values_list("pk", flat=True)).values()), None
    )


def seed_left(farm: Farm, *, on: dt.date) -> Mapping[str, tuple[LotLeft, ...]]:
    """What was left of every lot on a day, by kind; untested seed as it was weighed."""
    found: dict[str, list[LotLeft]] = {}
    rows = SeedLot.objects.on(farm).live().filter(received_on__lte=on)
    rows = rows.with_balance(on=on).select_related("kind")
    for row in rows.prefetch_related("components__kind"):
        for kind, pls in row.contents() if row.left_kg > 0 else ():
            if pls is None and row.components.all():
                continue
            live = 1.0 if pls is None else pls
            lot = LotLeft(row.left_kg * live, pls is not None)
            found.setdefault(kind.slug, []).append(lot)
    return {slug: tuple(lots) for slug, lots in found.items()}


def product_type(farm: Farm, product: str) -> str:
    """What sort of product a number typed stands for, empty where it is none."""
    if not product.isdigit():
        return ""
    rows = InputProduct.objects.on(farm).filter(pk=int(product))
    return rows.values_list("type", flat=True).first() or ""


def has_animals(farm: Farm) -> bool:
    """Whether stock was ever turned in on the farm."""
    return Grazing.objects.on(farm).live().exists()


def open_duties(
    farm: Farm, *, on: dt.date, me: User | None = None
) -> tuple[DutyTold, ...]:
    """Duties that were open on a day, those due first."""
    rows = Duty.objects.on(farm).open_on(on)
    zone = ZoneInfo(farm.time_zone)
    return tuple(
        DutyTold(
            id=row.pk,
            what=row.words or row.get_what_display(),
            field_id=row.field_id,
            field_name=row.field.name,
            planting_id=row.planting_id,
            earliest_on=row.earliest_on,
            latest_on=row.latest_on,
            who=str(row.who_for) if row.who_for else "",
            mine=me is not None and row.who_for_id in {None, me.pk},
            words=row.notes,
            code=row.what,
            window=row.get_from_window_display(),
            written_by=str(row.written_by),
            written_on=row.written_at.astimezone(zone).date(),
        )
        for row in rows.select_related("field", "who_for", "written_by").order_by(
            "latest_on", "pk"
        )
    )
