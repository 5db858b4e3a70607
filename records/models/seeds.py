"""Seed lots, as the tag says."""

from __future__ import annotations

from typing import Any, ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import F, Q, Sum
from django.db.models.functions import Coalesce
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.crops import Kind

SHARE = [MinValueValidator(0.0), MaxValueValidator(1.0)]


class SeedLotQuerySet(RecordQuerySet["SeedLot"]):
    def with_balance(self) -> SeedLotQuerySet:
        """Each lot with what was sown of it and what is left. [kg]"""
        sown = Coalesce(
            Sum("lines__seed_kg", filter=Q(lines__planting__voided_at=None)), 0.0
        )
        return self.annotate(sown_kg=sown, left_kg=F("received_kg") - sown)


class SeedLot(Record):
    DATE_FIELD = "received_on"

    class Status(models.TextChoices):
        ORGANIC = "organic", _("organic")
        UNTREATED = "untreated", _("not organic, untreated")
        TREATED = "treated", _("treated")

    kind = models.ForeignKey(
        Kind, on_delete=models.PROTECT, related_name="lots", verbose_name=_("kind")
    )
    variety = models.CharField(_("variety"), max_length=80, blank=True)
    supplier = models.CharField(_("supplier"), max_length=120, blank=True)
    lot_number = models.CharField(_("lot number"), max_length=60)
    received_on = models.DateField(_("received on"))
    received_kg = models.FloatField(_("weight received"))
    purity_share = models.FloatField(
        _("purity"), null=True, blank=True, validators=SHARE
    )
    germination_share = models.FloatField(
        _("germination"), null=True, blank=True, validators=SHARE
    )
    hard_share = models.FloatField(
        _("hard or dormant seed"), default=0.0, validators=SHARE
    )
    tested_on = models.DateField(_("test month"), null=True, blank=True)
    origin = models.CharField(_("origin"), max_length=80, blank=True)
    status = models.CharField(
        _("status"), max_length=9, choices=Status.choices, default=Status.ORGANIC
    )
    treatment = models.CharField(_("treatment"), max_length=120, blank=True)
    certificate = models.CharField(_("organic certificate"), max_length=120, blank=True)

    objects: ClassVar[models.Manager[Any]] = SeedLotQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("seed lot")
        verbose_name_plural = _("seed lots")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(received_kg__gt=0), name="lot_has_a_weight"
            ),
            models.CheckConstraint(
                condition=Q(purity_share=None) | Q(purity_share__range=(0, 1)),
                name="lot_purity_is_a_share",
            ),
            models.CheckConstraint(
                condition=Q(germination_share=None)
                | Q(
                    germination_share__gte=0, germination_share__lte=1 - F("hard_share")
                ),
                name="lot_viable_is_a_share",
                violation_error_message=_(
                    "Germination and hard seed together are more than the whole."
                ),
            ),
            models.UniqueConstraint(
                "farm",
                "kind",
                "lot_number",
                condition=Q(voided_at=None),
                name="lot_number_once_a_kind",
                violation_error_message=_("This lot is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind} · {self.lot_number}"

    @property
    def pls_share(self) -> float | None:
        """Pure live seed as the tag gives it, or None where the tag is silent."""
        if self.purity_share is None or self.germination_share is None:
            return None
        return self.purity_share * (self.germination_share + self.hard_share)
