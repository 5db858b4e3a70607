"""Harvest lots, where they lay, where they went, and what was counted."""

from __future__ import annotations

from typing import Any

from records.models import HarvestLot, Sale, StockCount, Storage
from reports.calc.shapes.books import CountedStock, Crop, Gone, Kept
from reports.ledger.dossier.reading import Reading


def told(reading: Reading) -> dict[str, Any]:
    """Four queries: harvest lots, storages, sales, counts."""
    crops, codes = [], {}
    for row in reading.dated(HarvestLot).select_related("field"):
        crops.append(_crop(row))
        codes[row.pk] = row.code
        reading.note(row, f"{row.code}, {row.crop}, {row.field.name}", row.field_id)
    kept = list(reading.dated(Storage))
    gone = list(reading.dated(Sale))
    for row in (*kept, *gone):
        reading.note(row, codes.get(row.lot_id, ""))
    return {
        "crops": tuple(crops),
        "kept": tuple(map(_kept, kept)),
        "gone": tuple(map(_gone, gone)),
        "counts": tuple(map(_count, reading.dated(StockCount))),
    }


def _crop(row: HarvestLot) -> Crop:
    return Crop(
        id=row.pk,
        code=row.code,
        crop=row.crop,
        field_id=row.field_id,
        stand_id=row.planting_id,
        on=row.harvested_on,
        mass_kg=row.mass_kg,
        use=row.use,
        status=row.status,
        from_buffer=row.from_buffer,
        touches_soil=row.touches_soil,
    )


def _kept(row: Storage) -> Kept:
    return Kept(row.pk, row.lot_id, row.stored_on, row.place, row.mass_kg)


def _gone(row: Sale) -> Gone:
    return Gone(
        id=row.pk,
        lot_id=row.lot_id,
        on=row.sold_on,
        buyer=row.buyer,
        mass_kg=row.mass_kg,
        status=row.status,
        invoice=row.invoice,
    )


def _count(row: StockCount) -> CountedStock:
    told = (
        ("seed-lots", row.seed_lot_id),
        ("harvest-lots", row.harvest_lot_id),
        ("input-products", row.product_id),
    )
    noun, pk = next((noun, pk) for noun, pk in told if pk is not None)
    return CountedStock(row.pk, noun, pk, row.counted_on, row.mass_kg)
