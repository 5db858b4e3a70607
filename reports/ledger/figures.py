"""Kinds with their figures, in the workshop's own units."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Any

from django.db.models import Q
from django.utils.translation import get_language

from farm import units
from farm.models import Farm
from records.models import FarmFigure, Kind, KindFigure
from reports.calc.shapes.ledger import Figure, Group, KindFacts

SHARE = 0.01
C_PER_F = 5 / 9
DAYS_PER_WEEK = 7
# Round figures in print: "two months", "three years".
DAYS_PER_MONTH = 30.4375
DAYS_PER_YEAR = 365.25

FACTORS: Mapping[str, float] = {
    "lb/ac": units.KG_M2_PER_LB_AC,
    "lb PLS/ac": units.KG_M2_PER_LB_AC,
    "lb N/ac": units.KG_M2_PER_LB_AC,
    "kg/ha": units.KG_M2_PER_KG_HA,
    "kg N/ha": units.KG_M2_PER_KG_HA,
    "t/ha": units.KG_M2_PER_T_HA,
    "ton/ac": units.KG_M2_PER_SHORT_TON_AC,
    "lb/1000 sq ft": units.KG_M2_PER_LB_1000FT2,
    "oz/1000 sq ft": units.KG_PER_OZ / (1000 * units.M2_PER_FT2),
    "oz/100 sq ft": units.KG_PER_OZ / (100 * units.M2_PER_FT2),
    "in": units.M_PER_IN,
    "ft": units.M_PER_FT,
    "cm": 0.01,
    "m": 1.0,
    "days": 1.0,
    "weeks": DAYS_PER_WEEK,
    "months": DAYS_PER_MONTH,
    "years": DAYS_PER_YEAR,
    "seeds/g": 1000.0,
    "seeds/lb": 1 / units.KG_PER_LB,
    "lb/bu": units.KG_PER_LB,
    "C-days": 1.0,
    "F-days": C_PER_F,
    "per DD": 1.0,
    "m2/kg": 1.0,
    "share": 1.0,
    "%": SHARE,
    "ratio": 1.0,
    "pH": 1.0,
    "zone": 1.0,
    "0-5": 1.0,
    "none": 1.0,
    "yes_no": 1.0,
}
SCALES: Mapping[str, Callable[[float], float]] = {
    "C": float,
    "F": units.c_from_f,
}


def to_si(value: float, unit: str) -> float:
    """A printed figure in the workshop's unit; an unknown unit is an error."""
    if unit in SCALES:
        return SCALES[unit](value)
    return value * FACTORS[unit]


def kind_facts(farm: Farm, kind_ids: Iterable[int]) -> dict[int, KindFacts]:
    """Each kind by its number: three queries, however many there are."""
    ids = set(kind_ids)
    spanish = (get_language() or "").startswith("es")
    figures = _figures(farm, ids)
    rows = Kind.objects.filter(Q(farm=None) | Q(farm=farm), pk__in=ids)
    return {
        row.pk: KindFacts(
            slug=row.slug,
            name=row.name_es if spanish and row.name_es else row.name,
            botanical=row.botanical,
            family=row.family,
            group=Group(row.group),
            figures={name: tuple(found) for name, found in figures[row.pk].items()},
            cautions=tuple(caution["caution"] for caution in row.cautions),
        )
        for row in rows
    }


def _figures(farm: Farm, ids: set[int]) -> dict[int, dict[str, list[Figure]]]:
    """Figures by kind and attribute, the farm's own before the catalogue's."""
    found: dict[int, dict[str, list[Figure]]] = {kind: {} for kind in ids}
    own = FarmFigure.objects.on(farm).live().filter(kind__in=ids)
    for kind, *row in own.values_list(
        "kind_id", "attribute", "low", "high", "unit", "stage"
    ):
        figure = replace(_figure(*row, "OWN"), farm_own=True)
        found[kind].setdefault(figure.attribute, []).append(figure)
    printed = KindFigure.objects.filter(kind__in=ids).order_by("kind_id", "place")
    for kind, *row, source, unverified in printed.values_list(
        "kind_id",
        "attribute",
        "low",
        "high",
        "unit",
        "stage",
        "source",
        "unverified",
    ):
        figure = replace(_figure(*row, source), unverified=unverified)
        found[kind].setdefault(figure.attribute, []).append(figure)
    return found


def _figure(*printed: Any) -> Figure:
    attribute, low, high, unit, stage, source = printed
    return Figure(
        attribute=attribute,
        low=to_si(low, unit),
        high=to_si(high, unit),
        source=source,
        stage=stage,
    )
