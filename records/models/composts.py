"""Compost made on the farm, with its daily temperatures and turnings."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet


class CompostBatch(Record):
    DATE_FIELD = "started_on"
    LASTS = True
    PARTS = ("days",)

    class Method(models.TextChoices):
        WINDROW = "windrow", _("windrow, turned")
        IN_VESSEL = "in_vessel", _("in a vessel")
        STATIC_AERATED = "static_aerated", _("static pile, aerated")
        OTHER = "other", _("other")

    name = models.CharField(_("batch"), max_length=80)
    feedstocks = models.TextField(_("what went in"), max_length=1000)
    carbon_nitrogen = models.FloatField(_("C:N at the start"), null=True, blank=True)
    method = models.CharField(_("method"), max_length=14, choices=Method.choices)
    started_on = models.DateField(_("started on"))
    finished_on = models.DateField(_("finished on"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("compost batch")
        verbose_name_plural = _("compost batches")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(finished_on=None) | Q(finished_on__gte=F("started_on")),
                name="compost_ends_after_it_begins",
                violation_error_message=_("It was finished before it was started."),
            ),
            models.CheckConstraint(
                condition=Q(carbon_nitrogen=None) | Q(carbon_nitrogen__gt=0),
                name="compost_ratio_above_zero",
                violation_error_message=_("C:N is more than nothing."),
            ),
            models.UniqueConstraint(
                "farm",
                "name",
                condition=Q(voided_at=None),
                name="compost_name_once_a_farm",
                violation_error_message=_("Another batch has this name."),
            ),
        ]

    def __str__(self) -> str:
        return self.name


class CompostDay(models.Model):
    batch = models.ForeignKey(
        CompostBatch, on_delete=models.CASCADE, related_name="days"
    )
    day = models.DateField(_("day"))
    temp_c = models.FloatField(_("temperature inside"), null=True, blank=True)
    turned = models.BooleanField(_("turned"), default=False)

    class Meta:
        verbose_name = _("compost day")
        verbose_name_plural = _("compost days")
        constraints = [
            models.UniqueConstraint("batch", "day", name="compost_day_once"),
            models.CheckConstraint(
                condition=Q(temp_c=None) | Q(temp_c__range=(-40, 100)),
                name="compost_temperature_can_be",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.day}"
