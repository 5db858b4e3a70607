"""Where each stop of a way lay, and how much it was."""

from __future__ import annotations

from collections.abc import Container, Iterator

from farm import units
from farm.unit_words import measure_said
from farm.units import System
from reports.calc.shapes.dossier import Dossier

# A field, an area, a weight and a volume; None or nought where there is none.
Facts = tuple[int | None, float, float, float]
Key = tuple[str, int]


def places(
    books: Dossier, asked: Container[Key], system: System
) -> dict[Key, tuple[str, str]]:
    """The field's name and the amount with its unit, for each record with either."""
    return {
        key: (_field(books, field_id), _amount(measures, system))
        for key, (field_id, *measures) in _facts(books)
        if key in asked
    }


def _field(books: Dossier, field_id: int | None) -> str:
    ground = books.field.get(field_id or 0)
    return ground.name if ground else ""


def _amount(measures: list[float], system: System) -> str:
    ways = (units.write_area, units.write_mass, units.write_volume)
    told = zip(measures, ways, strict=True)
    return "; ".join(measure_said(way(one, system)) for one, way in told if one)


def _facts(books: Dossier) -> Iterator[tuple[Key, Facts]]:
    for ground in books.fields:
        yield ("fields", ground.id), (ground.id, ground.area_m2, 0.0, 0.0)
    for lot in books.lots:
        yield ("seed-lots", lot.id), (None, 0.0, lot.received_kg, 0.0)
    for stand in books.stands:
        seed_kg = sum(line.seed_kg or 0.0 for line in stand.lines)
        yield ("plantings", stand.id), (stand.field_id, stand.area_m2, seed_kg, 0.0)
    for end in books.ends:
        stood = books.stand.get(end.stand_id)
        where = stood.field_id if stood else None
        yield ("terminations", end.id), (where, end.area_m2, 0.0, 0.0)
    yield from _brought(books)
    for crop in books.crops:
        yield ("harvest-lots", crop.id), (crop.field_id, 0.0, crop.mass_kg, 0.0)
    for kept in books.kept:
        yield ("storages", kept.id), (None, 0.0, kept.mass_kg, 0.0)
    for gone in books.gone:
        yield ("sales", gone.id), (None, 0.0, gone.mass_kg, 0.0)


def _brought(books: Dossier) -> Iterator[tuple[Key, Facts]]:
    for came in books.delivered:
        yield ("input-lots", came.id), (None, 0.0, *_split(came.amount, came.measure))
    for put in books.puts:
        told = (put.field_id, put.area_m2, *_split(put.amount, put.measure))
        yield ("applications", put.id), told


def _split(amount: float, measure: str) -> tuple[float, float]:
    return (0.0, amount) if measure == "volume" else (amount, 0.0)
