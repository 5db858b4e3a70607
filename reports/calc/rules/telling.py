"""What findings tell of the record they are about."""

from __future__ import annotations

from reports.calc.rules.asked import field_name
from reports.calc.shapes.books import Crop, Put
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Found, Matter, Severity, Told


def put_values(books: Dossier, put: Put) -> Told:
    """Return what was put on, where and when."""
    return {
        "product": books.product[put.product_id].name,
        "field": field_name(books, put.field_id),
        "applied": put.on,
    }


def of_put(
    matter: Matter, put: Put, told: Told, severity: Severity | None = None
) -> Found:
    """Return a matter that the record of an application mends."""
    at = (put.id, put.on, put.field_id)
    return Found(matter, "applications", *at, severity, dict(told))


def crop_values(books: Dossier, crop: Crop) -> Told:
    """Return which lot it is, of what, from where and when."""
    return {
        "lot": crop.code,
        "crop": crop.crop,
        "field": field_name(books, crop.field_id),
        "harvested": crop.on,
    }


def of_crop(matter: Matter, books: Dossier, crop: Crop) -> Found:
    """Return a matter that the record of a harvest lot mends."""
    at = (crop.id, crop.on, crop.field_id)
    return Found(matter, "harvest-lots", *at, values=crop_values(books, crop))
