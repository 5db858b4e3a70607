"""Input products, and what of them was put where."""

from __future__ import annotations

from typing import Any, ClassVar

from django.core.validators import MaxValueValidator, MinValueValidator
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet
from records.models.plantings import Planting

PERCENT = [MinValueValidator(0.0), MaxValueValidator(100.0)]


class InputProduct(Record):
    class Type(models.TextChoices):
        MANURE = "manure", _("raw manure")
        COMPOST = "compost", _("compost")
        LIME = "lime", _("lime or mineral")
        FERTILISER = "fertiliser", _("fertiliser")
        PEST = "pest", _("pest-control material")
        INOCULANT = "inoculant", _("inoculant")
        OTHER = "other", _("other")

    name = models.CharField(_("name"), max_length=120)
    maker = models.CharField(_("maker or source"), max_length=120, blank=True)
    type = models.CharField(_("type"), max_length=10, choices=Type.choices)
    nitrogen_percent = models.FloatField(
        _("nitrogen N, %"), null=True, blank=True, validators=PERCENT
    )
    phosphate_percent = models.FloatField(
        _("phosphate P2O5, %"), null=True, blank=True, validators=PERCENT
    )
    potash_percent = models.FloatField(
        _("potash K2O, %"), null=True, blank=True, validators=PERCENT
    )
    approval = models.CharField(_("approved by, reference"), max_length=120, blank=True)
    approved_on = models.DateField(_("approved on"), null=True, blank=True)
    approved_until = models.DateField(_("approval runs out on"), null=True, blank=True)
    restricted_use = models.BooleanField(_("restricted use"), default=False)
    registration = models.CharField(_("registration number"), max_length=60, blank=True)
    reentry_hours = models.FloatField(
        _("re-entry interval on the label, hours"),
        null=True,
        blank=True,
        validators=[MinValueValidator(0.0)],
    )
    preharvest_days = models.FloatField(
        _("pre-harvest interval on the label, days"),
        null=True,
        blank=True,
        validators=[MinValueValidator(0.0)],
    )

    plant_back_months = models.FloatField(
        _("wait on the label before feed or grain, months"),
        null=True,
        blank=True,
        validators=[MinValueValidator(0.0), MaxValueValidator(120.0)],
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("input product")
        verbose_name_plural = _("input products")
        constraints = [
            *Record.Meta.constraints,
            models.UniqueConstraint(
                "farm",
                "name",
                "maker",
                condition=Q(voided_at=None),
                name="product_once_a_farm",
                violation_error_message=_("This product is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return self.name


class Application(Record):
    DATE_FIELD = "applied_on"
    TOLD_WITH: ClassVar = {"amount_si": "measure"}
    PRIVATE = frozenset({"applicator_licence"})

    class Measure(models.TextChoices):
        MASS = "mass", _("by weight")
        VOLUME = "volume", _("by volume")

    product = models.ForeignKey(
        InputProduct,
        on_delete=models.PROTECT,
        related_name="applications",
        verbose_name=_("product"),
    )
    product_lot = models.CharField(_("lot of the product"), max_length=60, blank=True)
    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="applications",
        verbose_name=_("field"),
    )
    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="applications",
        null=True,
        blank=True,
        verbose_name=_("planting"),
    )
    area_m2 = models.FloatField(_("area"))
    measure = models.CharField(
        _("measured by"), max_length=6, choices=Measure.choices, editable=False
    )
    # Kilograms by weight, cubic metres by volume: the measure says which.
    amount_si = models.FloatField(_("amount"))
    applied_on = models.DateField(_("applied on"))
    started_at = models.TimeField(_("from"), null=True, blank=True)
    finished_at = models.TimeField(_("until"), null=True, blank=True)
    method = models.CharField(_("how"), max_length=80, blank=True)
    applicator_licence = models.CharField(
        _("applicator’s licence"), max_length=80, blank=True
    )
    target = models.CharField(_("against or for"), max_length=120, blank=True)
    weather = models.CharField(_("weather"), max_length=120, blank=True)
    equipment = models.CharField(_("equipment"), max_length=80, blank=True)
    worked_in_on = models.DateField(_("worked in on"), null=True, blank=True)
    posted_on = models.DateField(_("posted for the crew on"), null=True, blank=True)
    posted_time = models.TimeField(_("posted at"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("application")
        verbose_name_plural = _("applications")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(area_m2__gt=0, amount_si__gt=0),
                name="application_is_measured",
            ),
            models.CheckConstraint(
                condition=Q(worked_in_on=None) | Q(worked_in_on__gte=F("applied_on")),
                name="application_worked_in_after",
                violation_error_message=_("It was worked in before it was applied."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.product} · {self.applied_on}"
