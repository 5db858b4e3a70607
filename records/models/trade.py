"""Who seed and work come from, and the machines that are used."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet


class Supplier(Record):
    PRIVATE = frozenset({"address", "licence"})

    class Part(models.TextChoices):
        SUPPLIER = "supplier", _("supplier")
        CONTRACTOR = "contractor", _("contractor")

    name = models.CharField(_("name"), max_length=120)
    part = models.CharField(
        _("supplier or contractor"),
        max_length=10,
        choices=Part.choices,
        default=Part.SUPPLIER,
    )
    address = models.TextField(_("address"), blank=True, max_length=500)
    certificate = models.CharField(_("organic certificate"), max_length=120, blank=True)
    certificate_until = models.DateField(
        _("certificate runs to"), null=True, blank=True
    )
    verified_on = models.DateField(_("certificate looked up on"), null=True, blank=True)
    verified_how = models.CharField(
        _("where it was looked up"), max_length=200, blank=True
    )
    licence = models.CharField(_("licence"), max_length=80, blank=True)
    freight = models.FloatField(_("freight for an order"), null=True, blank=True)
    # Money for a kilogram.
    freight_by_weight = models.FloatField(_("freight by weight"), null=True, blank=True)
    least_order = models.FloatField(_("least order, money"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("supplier or contractor")
        verbose_name_plural = _("suppliers and contractors")
        constraints = [
            *Record.Meta.constraints,
            models.UniqueConstraint(
                "farm",
                "name",
                condition=Q(voided_at=None),
                name="supplier_name_once_a_farm",
                violation_error_message=_("This name is already written down."),
            ),
            models.CheckConstraint(
                condition=(Q(freight=None) | Q(freight__gte=0))
                & (Q(freight_by_weight=None) | Q(freight_by_weight__gte=0))
                & (Q(least_order=None) | Q(least_order__gte=0)),
                name="supplier_terms_not_below_zero",
                violation_error_message=_("Money is nothing or more."),
            ),
        ]

    def __str__(self) -> str:
        return self.name


class Equipment(Record):
    class Part(models.TextChoices):
        DRILL = "drill", _("drill")
        SPREADER = "spreader", _("spreader")
        MOWER = "mower", _("mower")
        ROLLER = "roller", _("roller-crimper")
        TILLER = "tiller", _("tiller")
        SPRAYER = "sprayer", _("sprayer")
        HARVESTER = "harvester", _("harvester")
        STORE = "store", _("bin or store")
        OTHER = "other", _("other")

    name = models.CharField(_("name"), max_length=120)
    part = models.CharField(_("what it is"), max_length=9, choices=Part.choices)
    width_m = models.FloatField(_("working width"), null=True, blank=True)
    row_width_m = models.FloatField(_("row spacing"), null=True, blank=True)
    rows = models.PositiveSmallIntegerField(_("rows"), null=True, blank=True)
    setting = models.CharField(_("setting last used"), max_length=120, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("machine or store")
        verbose_name_plural = _("machines and stores")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=(Q(width_m=None) | Q(width_m__gt=0))
                & (Q(row_width_m=None) | Q(row_width_m__gt=0)),
                name="machine_widths_above_zero",
                violation_error_message=_("A width is more than nothing."),
            ),
            models.UniqueConstraint(
                "farm",
                "name",
                condition=Q(voided_at=None),
                name="machine_name_once_a_farm",
                violation_error_message=_("This name is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return self.name
