"""Animals, water and soil tests on a field."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet
from records.models.plantings import Planting


class Grazing(Record):
    DATE_FIELD = "in_on"

    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="grazings",
        verbose_name=_("field"),
    )
    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="grazings",
        null=True,
        blank=True,
        verbose_name=_("planting"),
    )
    animals = models.CharField(_("animals"), max_length=120)
    head = models.PositiveIntegerField(_("how many"), null=True, blank=True)
    owner = models.CharField(_("whose"), max_length=120, blank=True)
    in_on = models.DateField(_("in on"))
    out_on = models.DateField(_("out on"), null=True, blank=True)
    label_checked = models.BooleanField(
        _("labels of everything sprayed here were read first"), default=False
    )
    forage_test = models.CharField(_("forage test"), max_length=200, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("grazing")
        verbose_name_plural = _("grazings")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(out_on=None) | Q(out_on__gte=F("in_on")),
                name="animals_out_after_in",
                violation_error_message=_("They went out before they came in."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.field} · {self.in_on}"


class Irrigation(Record):
    DATE_FIELD = "watered_on"

    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="irrigations",
        verbose_name=_("field"),
    )
    watered_on = models.DateField(_("watered on"))
    water_mm = models.FloatField(_("water"))
    source = models.CharField(_("source of the water"), max_length=120, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("irrigation")
        verbose_name_plural = _("irrigations")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(water_mm__gt=0, water_mm__lte=1000),
                name="irrigation_has_water",
                violation_error_message=_("Water lies between 0 and 1000 mm."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.field} · {self.watered_on}"


class SoilTest(Record):
    DATE_FIELD = "sampled_on"
    PARTS = ("readings",)

    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="soil_tests",
        verbose_name=_("field"),
    )
    sampled_on = models.DateField(_("sampled on"))
    laboratory = models.CharField(_("laboratory"), max_length=120)
    number = models.CharField(_("laboratory’s number"), max_length=60, blank=True)
    depth_m = models.FloatField(_("depth sampled"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("soil test")
        verbose_name_plural = _("soil tests")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(depth_m=None) | Q(depth_m__gt=0, depth_m__lte=3),
                name="soil_test_depth_can_be",
                violation_error_message=_("A sampling depth lies between 0 and 3 m."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.field} · {self.sampled_on}"


class SoilValue(models.Model):
    test = models.ForeignKey(
        SoilTest, on_delete=models.CASCADE, related_name="readings"
    )
    name = models.CharField(_("what was measured"), max_length=80)
    value = models.FloatField(_("value"))
    unit = models.CharField(_("unit, as the laboratory gives it"), max_length=40)

    class Meta:
        verbose_name = _("soil value")
        verbose_name_plural = _("soil values")
        constraints = [
            models.UniqueConstraint("test", "name", "unit", name="soil_value_once"),
        ]

    def __str__(self) -> str:
        return f"{self.name} {self.value} {self.unit}"
