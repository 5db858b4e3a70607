"""What goes onto seed before it is sown: inoculant and treatment, by their labels."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.crops import Kind
from records.models.inputs import InputProduct
from records.models.trade import Supplier


class SeedDressing(Record):
    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="dressings",
        verbose_name=_("kind of seed"),
    )
    product = models.ForeignKey(
        InputProduct,
        on_delete=models.PROTECT,
        related_name="dressings",
        verbose_name=_("inoculant or treatment"),
    )
    # Product for a weight of seed, both weighed alike.
    dose_share = models.FloatField(_("dose on the label, for a weight of seed"))
    product_lot = models.CharField(_("lot of the product"), max_length=60, blank=True)
    good_until = models.DateField(_("good until the month"), null=True, blank=True)
    supplier = models.ForeignKey(
        Supplier,
        on_delete=models.PROTECT,
        related_name="dressings",
        null=True,
        blank=True,
        verbose_name=_("bought from"),
    )
    packet_kg = models.FloatField(_("weight of a packet"), null=True, blank=True)
    packet_price = models.FloatField(_("price of a packet"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("inoculant or treatment for seed")
        verbose_name_plural = _("inoculants and treatments for seed")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(dose_share__gt=0, dose_share__lte=1),
                name="dressing_has_a_dose",
                violation_error_message=_(
                    "A dose is more than nothing and no more than the seed itself."
                ),
            ),
            models.CheckConstraint(
                condition=(Q(packet_kg=None) | Q(packet_kg__gt=0))
                & (Q(packet_price=None) | Q(packet_price__gte=0)),
                name="dressing_packet_has_a_weight",
                violation_error_message=_(
                    "A packet has a weight, and a price of nothing or more."
                ),
            ),
            models.UniqueConstraint(
                "farm",
                "kind",
                "product",
                condition=Q(voided_at=None),
                name="dressing_once_a_kind",
                violation_error_message=_("This is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.product} · {self.kind}"
