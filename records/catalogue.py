"""The catalogue: loaded from its file, and shown with the farm's own figures."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from django.db import transaction
from django.http import Http404

from farm.models import Farm
from records.figures import FLAGS, YES_NO
from records.models import FarmFigure, Kind, KindFigure


@dataclass(frozen=True)
class Shown:
    """One attribute at one stage: the catalogue's figures, and the farm's own."""

    attribute: str
    stage: str
    unit: str
    rows: tuple[KindFigure, ...]
    own: FarmFigure | None = None


def load(path: Path) -> int:
    """Bring the tables in step with the file; what farms wrote stays untouched."""
    kinds = json.loads(path.read_text(encoding="utf-8"))["kinds"]
    with transaction.atomic():
        for told in kinds:
            kind = _kind(told)
            kind.figures.all().delete()
            KindFigure.objects.bulk_create(_figures(kind, told["figures"]))
    return len(kinds)


def is_stale(path: Path) -> bool:
    """Tell whether the file says anything that the tables do not."""
    told = json.loads(path.read_text(encoding="utf-8"))["kinds"]
    in_file = {
        (kind["slug"], place, row["attribute"], row["low"], row["high"], row["source"])
        for kind in told
        for place, row in enumerate(kind["figures"])
    }
    kept = KindFigure.objects.filter(kind__farm=None).values_list(
        "kind__slug", "place", "attribute", "low", "high", "source"
    )
    names = {(kind["slug"], kind["name"], kind["name_es"]) for kind in told}
    rows = Kind.objects.filter(farm=None).values_list("slug", "name", "name_es")
    return in_file != set(kept) or not names <= set(rows)


def figures_of(kind: Kind, farm: Farm) -> list[Shown]:
    """Every attribute and stage known of a kind, in the catalogue's order."""
    own = {
        (row.attribute, row.stage): row
        for row in FarmFigure.objects.on(farm).live().filter(kind=kind)
    }
    groups: dict[tuple[str, str], list[KindFigure]] = {}
    for row in kind.figures.order_by("place"):
        groups.setdefault((row.attribute, row.stage), []).append(row)
    shown = [
        Shown(name, stage, rows[0].unit, tuple(rows), own.pop((name, stage), None))
        for (name, stage), rows in groups.items()
    ]
    shown += [
        Shown(name, stage, row.unit, (), row) for (name, stage), row in own.items()
    ]
    told = {one.attribute for one in shown}
    return shown + [Shown(name, "", YES_NO, ()) for name in FLAGS if name not in told]


def asked_for(kind: Kind, query: Mapping[str, Any]) -> Shown:
    """The figure an address names, with the unit the catalogue prints it in."""
    name, stage = query.get("figure", ""), query.get("stage", "")
    if name in FLAGS:
        return Shown(name, "", YES_NO, ())
    same = KindFigure.objects.filter(attribute=name)
    row = same.filter(kind=kind, stage=stage).first() or same.first()
    if row is None:
        raise Http404
    return Shown(name, stage, row.unit, ())


def own_figure_of(kind: Kind, farm: Farm, asked: Shown) -> FarmFigure | None:
    found: FarmFigure | None = (
        FarmFigure.objects.on(farm)
        .live()
        .filter(kind=kind, attribute=asked.attribute, stage=asked.stage)
        .first()
    )
    return found


def _kind(told: Mapping[str, Any]) -> Kind:
    botanical, family = told["botanical"], told["family"]
    kind, _made = Kind.objects.update_or_create(
        slug=told["slug"],
        defaults={
            "farm": None,
            "name": told["name"],
            "name_es": told["name_es"],
            "botanical": botanical["value"],
            "botanical_source": botanical["source"],
            "botanical_unverified": botanical["unverified"],
            "family": family["value"],
            "family_source": family["source"],
            "family_unverified": family["unverified"],
            "use": told["use"],
            "group": told["group"],
            "season": told["season"],
            "cautions": told["cautions"],
        },
    )
    return kind


def _figures(kind: Kind, told: list[Mapping[str, Any]]) -> list[KindFigure]:
    return [
        KindFigure(
            kind=kind,
            place=place,
            attribute=row["attribute"],
            stage=row.get("stage", ""),
            low=row["low"],
            high=row["high"],
            unit=row["unit"],
            source=row["source"],
            unverified=row["unverified"],
            note=row.get("note", ""),
        )
        for place, row in enumerate(told)
    ]
