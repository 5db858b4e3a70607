"""Every field of a farm with what grew on it in a season, and before it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from django.db.models import F

from farm.models import Farm, Field
from farm.names import counting
from records.models import Application, Planting
from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season.reach import MARGIN
from reports.calc.shapes.basics import Span
from reports.calc.shapes.ledger import (
    ApplicationFacts,
    FieldLedger,
    PlantingFacts,
    Weather,
)
from reports.ledger.assumptions import own_assumptions
from reports.ledger.events import Events, planting_facts
from reports.ledger.sheets import sheets_of
from reports.ledger.weather import main_station, weather_of


@dataclass(frozen=True)
class SeasonLedger:
    """All that the workshop needs to reckon one season of one farm."""

    fields: tuple[FieldLedger, ...]
    weather: Weather | None
    whole_fahrenheit: bool = True
    climate: Climate = Climate.COOL
    southern: bool = False
    assumptions: Assumptions = field(default_factory=Assumptions)


def season_ledger(farm: Farm, season: Span) -> SeasonLedger:
    """Read a season: the same number of queries for one field or a thousand."""
    return ledger_of(farm, _fields(farm, season))


def ledger_of(farm: Farm, fields: Iterable[FieldLedger]) -> SeasonLedger:
    """These fields with the farm's weather and assumptions."""
    station = main_station(farm)
    return SeasonLedger(
        fields=tuple(fields),
        weather=weather_of(station),
        whole_fahrenheit=station.whole_fahrenheit if station else True,
        climate=Climate.COOL if farm.cool_springs else Climate.WARM,
        southern=farm.is_southern,
        assumptions=own_assumptions(farm),
    )


def _fields(farm: Farm, season: Span) -> Iterator[FieldLedger]:
    """Fields by name; one that is all in parts is told by them, unless it was used."""
    plantings = _plantings(farm, season)
    applications = _applications(farm, season)
    sheets = sheets_of(farm, season)
    rows = list(
        Field.objects.on(farm)
        .live()
        .order_by("pk")
        .values("pk", "name", "area_m2", "status", "parent_id", "parent__name")
    )
    rows.sort(key=lambda row: counting(row["name"]))
    parts: defaultdict[int, float] = defaultdict(float)
    for row in rows:
        parts[row["parent_id"]] += row["area_m2"]
    for row in rows:
        told = FieldLedger(
            id=row["pk"],
            name=row["name"],
            area_m2=row["area_m2"],
            status=row["status"],
            plantings=tuple(plantings[row["pk"]]),
            applications=tuple(applications[row["pk"]]),
            sheets=tuple(sheets[row["pk"]]),
            part_of=row["parent__name"] or "",
            parts_m2=parts[row["pk"]],
        )
        if told.own_ground_m2 or told.is_used:
            yield told


def _plantings(farm: Farm, season: Span) -> Mapping[int, list[PlantingFacts]]:
    """Live plantings by field, without those whose residue is gone too."""
    since = season.first - MARGIN
    return gathered(farm, Planting.objects.touching(since, season.last))


def gathered(farm: Farm, rows: Any) -> Mapping[int, list[PlantingFacts]]:
    """Those of these plantings that stand, by field, with all that leans on them."""
    rows = rows.on(farm).live()
    told = list(
        rows.order_by("sown_on", "planned_on", "pk").values(
            "pk",
            "field_id",
            "area_m2",
            "purpose",
            "method",
            "sown_on",
            "planned_on",
            "next_crop",
            "next_crop_on",
            "next_crop_set",
            "written_at",
        )
    )
    events = Events.of(farm, [row["pk"] for row in told])
    by_field: defaultdict[int, list[PlantingFacts]] = defaultdict(list)
    for row in told:
        written_on = farm.today(row["written_at"])
        facts = planting_facts(row, events, written_on=written_on)
        by_field[row["field_id"]].append(facts)
    return by_field


def _applications(farm: Farm, season: Span) -> Mapping[int, list[ApplicationFacts]]:
    rows = (
        Application.objects.on(farm)
        .live()
        .filter(applied_on__range=(season.first, season.last))
        .order_by("applied_on", "pk")
        .values(
            "pk",
            "field_id",
            "applied_on",
            "area_m2",
            "measure",
            "amount_si",
            "worked_in_on",
            name=F("product__name"),
            type=F("product__type"),
            n=F("product__nitrogen_percent"),
            p=F("product__phosphate_percent"),
            k=F("product__potash_percent"),
            approval=F("product__approval"),
        )
    )
    by_field: defaultdict[int, list[ApplicationFacts]] = defaultdict(list)
    for row in rows:
        by_field[row["field_id"]].append(_application(row))
    return by_field


def _application(row: Mapping[str, Any]) -> ApplicationFacts:
    shares = (row["n"], row["p"], row["k"])
    return ApplicationFacts(
        id=row["pk"],
        field_id=row["field_id"],
        product=row["name"],
        type=row["type"],
        on=row["applied_on"],
        area_m2=row["area_m2"],
        amount=row["amount_si"],
        unit=row["measure"],
        worked_in_on=row["worked_in_on"],
        analysis="–".join("0" if one is None else f"{one:g}" for one in shares)
        if any(shares)
        else "",
        approval=row["approval"],
    )
