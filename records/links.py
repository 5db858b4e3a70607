"""Where one comes from to a record, and where one goes from it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from django.urls import reverse
from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as _later

from farm.access import FarmRequest
from farm.models import Farm, Field, Record
from records.models import Planting, SeedLot, SeedOrder
from records.nouns import BY_MODEL, Noun

SEASON = re.compile("(?:19|20)[0-9]{2}")
BACK: Mapping[str, tuple[str, Promise]] = {
    "finding-replies": ("reports:findings", _later("Findings %(year)s")),
    "changes-told": ("reports:changes-since", _later("Changes in %(year)s")),
}


@dataclass(frozen=True)
class Link:
    words: str
    address: str


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
