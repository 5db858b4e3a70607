"""What a record's pages tell: its facts, its links, first guesses and warnings."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from django.db import models as db
from django.urls import reverse
from django.utils import timezone
from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as _later

from farm.access import FarmRequest
from farm.models import Farm, Field, Record
from farm.writing import UNTOLD, VOIDING
from records.forms import FarmFigureForm
from records.models import (
    Application,
    Attachment,
    Duty,
    FarmFigure,
    InputProduct,
    MulchSheet,
    Planting,
    SeedLot,
    SeedOrder,
    Termination,
)
from records.nouns import BY_MODEL, Noun
from records.protection import training_first
from records.receiving import lot_guess
from records.seed_tidings import (
    statement_at_receipt,
    test_at_receipt,
    tests_at_sowing,
)

# The end of a field's name tells how its value is measured.
MEASURES = {
    "tested_on": "month",
    "inoculant_until": "month",
    "good_until": "month",
    "dose_share": "dose",
    "count_per_kg": "count",
    "freight_by_weight": "money_by_weight",
    "freight": "money",
    "least_order": "money",
    "price": "money",
    "_per_m2": "number",
    "_kg_m2": "rate",
    "_m2": "area",
    "_kg": "mass",
    "_share": "percent",
    "share": "percent",
    "depth_m": "depth",
    "_m": "length",
    "_mm": "rain",
    "_c": "temp",
}
# What a comparison hands over to the form that writes the choice down.
CHOSEN = ("residue", "reason", "outcome")
GUESSED = ("field", "planting", "product", "kind", "lot", "seed_lot", "equipment")


SEASON = re.compile("(?:19|20)[0-9]{2}")
BACK: Mapping[str, tuple[str, Promise]] = {
    "finding-replies": ("reports:findings", _later("Findings %(year)s")),
    "changes-told": ("reports:changes-since", _later("Changes in %(year)s")),
}


@dataclass(frozen=True)
class Fact:
    """One line of a record: what it is called, its value, how it is measured."""

    label: str | Promise
    value: Any
    measure: str = ""


@dataclass(frozen=True)
class Link:
    words: str
    address: str


def form_for(
    noun: Noun,
    row: Record,
    data: Any,
    *,
    today: dt.date,
    files: Any = None,
    initial: Any = None,
) -> Any:
    if isinstance(row, FarmFigure):
        return FarmFigureForm(
            data, farm=row.farm, today=today, instance=row, kind=row.kind
        )
    return noun.form(
        data, files=files, farm=row.farm, today=today, instance=row, initial=initial
    )


def day_meant(request: FarmRequest, today: dt.date) -> dt.date:
    """The day the page that led here was looked at from, else today."""
    try:
        return min(dt.date.fromisoformat(request.GET.get("on", "")), today)
    except ValueError:
        return today


def page_of(row: Record, noun: Noun, farm: Farm, request: FarmRequest) -> str:
    """The page of a record, with the day one looks from kept on."""
    address = reverse("records:page", args=[farm.slug, noun.slug, row.pk])
    kept = {"on": request.GET.get("on", "")[:10], "season": season_of(request)}
    query = urlencode({name: value for name, value in kept.items() if value})
    return f"{address}?{query}" if query else address


def season_of(request: FarmRequest) -> str:
    """The season whose findings or changes one came from, or nothing."""
    asked = request.GET.get("season", "")
    return asked if SEASON.fullmatch(asked) else ""


def way_back(noun: Noun, farm: Farm, request: FarmRequest) -> Link | None:
    """To the list in which a reply or a note is one of many to be written."""
    name, words = BACK.get(noun.slug, ("", ""))
    season = season_of(request)
    if not name or not season:
        return None
    address = reverse(name, args=[farm.slug, int(season)])
    return Link(str(words) % {"year": season}, address)


def now_done(row: Record, request: FarmRequest, today: dt.date) -> dict[str, Any]:
    """The day of what the link that led here says was done: sown, or taken off."""
    planned = isinstance(row, Planting) and row.sown_on is None
    lies = isinstance(row, MulchSheet) and row.lies
    if planned and request.GET.get("do") == "sow":
        return {"sown_on": day_meant(request, today), "done_by": str(request.user)}
    if lies and request.GET.get("do") == "off":
        return {"taken_off_on": day_meant(request, today)}
    return {}


def first_guess(noun: Noun, farm: Farm, request: FarmRequest) -> dict[str, Any]:
    """Today, the writer's own name, and whatever the link that led here named."""
    today = farm.today(timezone.now())
    guess: dict[str, Any] = {"done_by": str(request.user)}
    if noun.model.DATE_FIELD:
        guess[noun.model.DATE_FIELD] = day_meant(request, today)
    for name in GUESSED:
        asked = request.GET.get(name, "")
        if asked.isdigit():
            guess[name] = int(asked)
    if noun.model is SeedLot:
        order, line = (request.GET.get(name, "") for name in ("order", "line"))
        guess |= lot_guess(farm, order, line)
    guess |= {name: told for name in CHOSEN if (told := request.GET.get(name))}
    if noun.begins_with:
        guess |= request.GET.dict()
    return guess


def page(row: Record, farm: Farm) -> dict[str, Any]:
    """What a record's page shows of it."""
    here = {"noun": row._meta.model_name, "object_id": row.pk}
    attachments = Attachment.objects.on(farm).filter(**here).order_by("pk")
    of_attachments = db.Q(noun="attachment", object_id__in=attachments.values("pk"))
    changes = farm.changes.filter(db.Q(**here) | of_attachments).select_related("by")
    return {
        "row": row,
        "facts": facts(row, farm),
        "links": links(row),
        "changes": changes.order_by("-number"),
        "attachments": attachments,
    }


def facts(row: Record, farm: Farm) -> list[Fact]:
    """Every line of a record that says something, in the order of its fields."""
    hidden = UNTOLD | VOIDING | (row.PRIVATE if farm.is_read_by_crew else set())
    return [*_own_facts(row, hidden), *_parts_facts(row)]


def _own_facts(row: Record, hidden: Set[str]) -> Iterator[Fact]:
    for field in row._meta.concrete_fields:
        name = field.name
        value = getattr(row, "called" if name == "key" else name)
        silent = value in (None, "") or name in hidden
        if silent or name in {"outline", "measure"}:
            continue
        if name == "amount_si":
            yield Fact(_("amount"), row, "amount")
        elif field.choices:
            yield Fact(field.verbose_name, getattr(row, f"get_{name}_display")())
        elif isinstance(field, db.BooleanField):
            yield Fact(field.verbose_name, value, "yes")
        else:
            yield Fact(field.verbose_name, value, measure_of(name))


def _parts_facts(row: Record) -> Iterator[Fact]:
    for name in row.PARTS:
        for place, part in enumerate(getattr(row, name).order_by("pk"), start=1):
            heading = f"{part._meta.verbose_name} {place}"
            for field in part._meta.concrete_fields:
                value = getattr(part, field.name)
                if field.name == "id" or value in (None, "") or value == row:
                    continue
                label = f"{heading}: {field.verbose_name}"
                yield Fact(label, value, measure_of(field.name))


def measure_of(name: str) -> str:
    return next((how for end, how in MEASURES.items() if name.endswith(end)), "")


def links(row: Record) -> list[Link]:
    """Where to go from a record, and what can be written down about it."""
    found = []
    for field in row._meta.concrete_fields:
        other = getattr(row, field.name) if field.is_relation else None
        noun = BY_MODEL.get(other._meta.model_name) if other is not None else None
        if noun and isinstance(other, Record):
            words = f"{field.verbose_name}: {other}"
            at = reverse("records:page", args=[row.farm.slug, noun.slug, other.pk])
            found.append(Link(words, at))
    if isinstance(row, Field):
        at = reverse("reports:field", args=[row.farm.slug, row.pk])
        found.append(Link(_("Every season of this field"), at))
    if isinstance(row, SeedOrder) and row.voided_at is None:
        at = reverse("reports:order", args=[row.farm.slug, row.pk])
        found.append(Link(_("The sheet for the supplier, and what came of it"), at))
    return found + [
        Link(words, reverse("records:new", args=[row.farm.slug, slug]) + query)
        for words, slug, query in _next_entries(row)
    ]


def _next_entries(row: Record) -> list[tuple[str, str, str]]:
    if row.voided_at:
        return []
    if isinstance(row, Field):
        return [
            (_("Sow or plan here"), "plantings", f"?field={row.pk}"),
            (_("Put an input on"), "applications", f"?field={row.pk}"),
            (_("Lay a film or tarp"), "mulch-films-and-tarps", f"?field={row.pk}"),
            (_("Add a land statement"), "land-statements", f"?field={row.pk}"),
        ]
    if isinstance(row, Planting) and row.sown_on:
        return [
            (_("Write down what you see"), "observations", f"?planting={row.pk}"),
            (_("Weigh a sample"), "biomass-samples", f"?planting={row.pk}"),
            (_("End or cut it"), "terminations", f"?planting={row.pk}"),
        ]
    if isinstance(row, SeedLot):
        return [
            (_("Sow from this lot"), "plantings", ""),
            (_("Count what is left"), "stock-counts", f"?seed_lot={row.pk}"),
            (_("More came, or some left"), "lot-moves", f"?lot={row.pk}"),
        ]
    return []


def warnings(row: Record) -> Iterator[str]:
    """What is worth a second look, though it may well be so."""
    if isinstance(row, Planting) and row.sown_on:
        others: Any = (
            Planting.objects.filter(field=row.field)
            .live()
            .standing(row.sown_on)
            .exclude(pk=row.pk)
        )
        standing = others.values_list("area_m2", "ended_m2")
        area = sum(whole - ended for whole, ended in standing)
        if area + row.area_m2 > row.field.area_m2 * 1.005:
            yield _(
                "With what already stands there, more is sown than the field has. "
                "A nurse crop or a relay may be meant; if not, end the other planting."
            )
    if isinstance(row, Termination) and row.method == Termination.Method.SPRAYED:
        yield _(
            "A sprayed cover on organic or transitional ground is a question for the "
            "certifier before anything is sold from it."
        )
    if isinstance(row, MulchSheet) and row.material == MulchSheet.Material.PVC:
        yield _(
            "PVC on organic or transitional ground is a question for the certifier "
            "before anything is sold from it."
        )
    if isinstance(row, SeedLot):
        yield from test_at_receipt(row)
        yield from statement_at_receipt(row)
    if isinstance(row, Planting):
        yield from tests_at_sowing(row)
    if isinstance(row, Duty):
        yield from training_first(row)
    if isinstance(row, Application) and _is_waiting_manure(row):
        yield _("Raw manure: its waiting time begins on the day it is worked in.")


def _is_waiting_manure(row: Application) -> bool:
    is_raw = row.product.type == InputProduct.Type.MANURE
    return is_raw and row.worked_in_on is None
