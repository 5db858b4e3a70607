"""Products, where they were put, and compost with its log."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django.db.models import F

from records.models import (
    Application,
    ApplicatorLicence,
    CompostBatch,
    InputLot,
    InputProduct,
)
from reports.calc.shapes.books import Delivered, Heap, Licence, Product, Put
from reports.ledger.dossier.reading import Reading


def told(reading: Reading) -> dict[str, Any]:
    """Six queries: products, their lots, applications, batches, days, licences.

    A product that was struck out still stands where an application names it.
    """
    products = InputProduct.objects.on(reading.farm).order_by("pk")
    puts = []
    where = {"ground": F("field__name"), "what": F("product__name")}
    for row in reading.dated(Application).annotate(**where):
        puts.append(_put(row, reading))
        reading.note(row, f"{row.what}, {row.ground}", row.field_id)
    heaps = []
    for row in reading.dated(CompostBatch).prefetch_related("days"):
        heaps.append(_heap(row))
        reading.note(row, row.name)
    lots = reading.live(InputLot).filter(received_on__lte=reading.until)
    delivered = []
    for row in lots.select_related("product"):
        delivered.append(_delivered(row))
        if row.received_on >= reading.since:
            reading.note(row, f"{row.product.name} {row.lot_number}")
    return {
        "delivered": tuple(delivered),
        "products": tuple(map(_product, products)),
        "puts": tuple(puts),
        "heaps": tuple(heaps),
        "licences": tuple(map(_licence, reading.live(ApplicatorLicence))),
    }


def _product(row: InputProduct) -> Product:
    return Product(
        id=row.pk,
        name=row.name,
        type=row.type,
        approval=row.approval,
        approved_on=row.approved_on,
        approved_until=row.approved_until,
        restricted=row.restricted_use,
        registration=row.registration,
        reentry_hours=row.reentry_hours,
        preharvest_days=row.preharvest_days,
        plant_back_months=row.plant_back_months,
        nitrogen_share=(row.nitrogen_percent / 100)
        if row.nitrogen_percent is not None
        else None,
    )


def _delivered(row: InputLot) -> Delivered:
    return Delivered(
        id=row.pk,
        product_id=row.product_id,
        number=row.lot_number,
        supplier=row.supplier,
        on=row.received_on,
        amount=row.amount_si,
        measure=row.measure,
        invoice=row.invoice,
    )


def _put(row: Application, reading: Reading) -> Put:
    return Put(
        id=row.pk,
        product_id=row.product_id,
        field_id=row.field_id,
        on=row.applied_on,
        amount=row.amount_si,
        measure=row.measure,
        area_m2=row.area_m2,
        stand_id=row.planting_id,
        product_lot=row.product_lot,
        started_at=row.started_at,
        finished_at=row.finished_at,
        worked_in_on=row.worked_in_on,
        method=row.method,
        done_by=row.done_by,
        licence=row.applicator_licence,
        target=row.target,
        equipment=row.equipment,
        posted_at=_posted(row),
        written_on=reading.written_on(row),
    )


def _posted(row: Application) -> dt.datetime | None:
    """When it was posted; the end of that day where no hour is written down."""
    if row.posted_on is None:
        return None
    return dt.datetime.combine(row.posted_on, row.posted_time or dt.time(23, 59))


def _licence(row: ApplicatorLicence) -> Licence:
    return Licence(row.pk, row.number, row.state, row.since, row.until, row.holder)


def _heap(row: CompostBatch) -> Heap:
    return Heap(
        id=row.pk,
        name=row.name,
        method=row.method,
        started_on=row.started_on,
        ratio=row.carbon_nitrogen,
        days=tuple((one.day, one.temp_c, one.turned) for one in row.days.all()),
    )
