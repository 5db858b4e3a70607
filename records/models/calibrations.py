"""What a drill or a spreader dropped at a setting."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.crops import Kind
from records.models.trade import Equipment

OVER_A_DISTANCE = Q(area_m2=None, distance_m__gt=0, row_width_m__gt=0, rows__gte=1)
OVER_AN_AREA = Q(area_m2__gt=0, distance_m=None)


class Calibration(Record):
    DATE_FIELD = "calibrated_on"

    equipment = models.ForeignKey(
        Equipment,
        on_delete=models.PROTECT,
        related_name="calibrations",
        verbose_name=_("machine"),
    )
    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="calibrations",
        verbose_name=_("kind of seed"),
    )
    calibrated_on = models.DateField(_("calibrated on"))
    setting = models.CharField(_("setting"), max_length=120)
    caught_kg = models.FloatField(_("seed caught"))
    distance_m = models.FloatField(_("distance"), null=True, blank=True)
    row_width_m = models.FloatField(_("row spacing"), null=True, blank=True)
    rows = models.PositiveSmallIntegerField(_("rows caught"), null=True, blank=True)
    area_m2 = models.FloatField(_("or area covered"), null=True, blank=True)
    wanted_kg_m2 = models.FloatField(_("rate wanted"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("calibration")
        verbose_name_plural = _("calibrations")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(caught_kg__gt=0),
                name="calibration_caught_something",
                violation_error_message=_("A weight is more than nothing."),
            ),
            models.CheckConstraint(
                condition=OVER_A_DISTANCE | OVER_AN_AREA,
                name="calibration_is_over_known_ground",
                violation_error_message=_(
                    "Give a distance with rows and their spacing, or an area."
                ),
            ),
            models.CheckConstraint(
                condition=Q(wanted_kg_m2=None) | Q(wanted_kg_m2__gt=0),
                name="calibration_rate_above_zero",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.equipment} · {self.kind} · {self.calibrated_on}"
