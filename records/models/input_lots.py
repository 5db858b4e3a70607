"""Lots of input products, as they came: the way back from an application."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.inputs import Application, InputProduct


class InputLot(Record):
    DATE_FIELD = "received_on"
    LASTS = True
    TOLD_WITH: ClassVar = {"amount_si": "measure"}

    product = models.ForeignKey(
        InputProduct,
        on_delete=models.PROTECT,
        related_name="lots",
        verbose_name=_("product"),
    )
    lot_number = models.CharField(_("lot number"), max_length=60)
    supplier = models.CharField(_("supplier"), max_length=120, blank=True)
    received_on = models.DateField(_("received on"))
    measure = models.CharField(
        _("measured by"),
        max_length=6,
        choices=Application.Measure.choices,
        editable=False,
    )
    # Kilograms by weight, cubic metres by volume: the measure says which.
    amount_si = models.FloatField(_("amount"))
    invoice = models.CharField(_("invoice"), max_length=60, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("lot of an input")
        verbose_name_plural = _("lots of inputs")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(amount_si__gt=0),
                name="input_lot_is_measured",
                violation_error_message=_("An amount is more than nothing."),
            ),
            models.UniqueConstraint(
                "farm",
                "product",
                "lot_number",
                condition=Q(voided_at=None),
                name="input_lot_once_a_product",
                violation_error_message=_("This lot is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.product} · {self.lot_number}"
