"""What a record's page tells, and what is worth a second look when it is written."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from django.db import models as db
from django.utils.translation import gettext as _

from farm.models import Farm, Record
from records.facts import facts
from records.links import links
from records.models import (
    Application,
    Attachment,
    Duty,
    InputProduct,
    MulchSheet,
    Planting,
    SeedLot,
    Termination,
)
from records.protection import training_first
from records.seed_tidings import (
    statement_at_receipt,
    test_at_receipt,
    tests_at_sowing,
)


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
