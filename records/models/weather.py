"""Weather stations and their daily readings."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet


class WeatherStation(Record):
    name = models.CharField(_("name"), max_length=120)
    station_id = models.CharField(_("station number"), max_length=40, blank=True)
    latitude = models.FloatField(_("latitude"), null=True, blank=True)
    longitude = models.FloatField(_("longitude"), null=True, blank=True)
    elevation_m = models.FloatField(_("elevation"), null=True, blank=True)
    is_main = models.BooleanField(_("the farm’s own station"), default=False)
    whole_fahrenheit = models.BooleanField(
        _("read in whole degrees Fahrenheit"), default=True
    )
    source = models.CharField(
        _("where the readings come from"), max_length=300, blank=True
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("weather station")
        verbose_name_plural = _("weather stations")
        constraints = [
            *Record.Meta.constraints,
            models.UniqueConstraint(
                "farm",
                condition=Q(is_main=True, voided_at=None),
                name="one_main_station_a_farm",
            ),
            models.UniqueConstraint(
                "farm",
                "name",
                condition=Q(voided_at=None),
                name="station_name_once_a_farm",
                violation_error_message=_("Another station has this name."),
            ),
        ]

    def __str__(self) -> str:
        return self.name


class WeatherDay(models.Model):
    station = models.ForeignKey(
        WeatherStation, on_delete=models.PROTECT, related_name="days"
    )
    day = models.DateField(_("day"))
    tmin_c = models.FloatField(_("lowest"), null=True)
    tmax_c = models.FloatField(_("highest"), null=True)
    rain_mm = models.FloatField(_("rain"), null=True)

    class Meta:
        verbose_name = _("weather day")
        verbose_name_plural = _("weather days")
        constraints = [
            models.UniqueConstraint("station", "day", name="one_reading_a_day"),
            models.CheckConstraint(
                condition=Q(tmin_c=None) | Q(tmax_c=None) | Q(tmin_c__lte=F("tmax_c")),
                name="lowest_not_above_highest",
            ),
            models.CheckConstraint(
                condition=Q(rain_mm=None) | Q(rain_mm__gte=0),
                name="rain_not_below_zero",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.station} · {self.day}"
