"""What was sown or set out, where and when, alone or mixed."""

from __future__ import annotations

import datetime as dt
from typing import Any, ClassVar, Self

from django.db import models
from django.db.models import F, Max, Q, Sum
from django.db.models.functions import Coalesce
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet, User
from records.models.crops import Kind
from records.models.seeds import SeedLot

# Areas ended in parts are typed with rounding; this much is the whole.
WHOLE = 0.995


class PlantingQuerySet(RecordQuerySet["Planting"]):
    def begun_by(self, day: dt.date) -> Self:
        """Those sown, or planned and not yet sown, by that day."""
        return self.filter(Q(sown_on__lte=day) | Q(sown_on=None, planned_on__lte=day))

    def with_ends(self) -> Self:
        """Each with the area ended so far and the day of the last end."""
        ended = Q(terminations__voided_at=None, terminations__outcome="ended")
        return self.annotate(
            ended_m2=Coalesce(Sum("terminations__area_m2", filter=ended), 0.0),
            last_end_on=Max("terminations__ended_on", filter=ended),
        )

    def touching(self, first: dt.date, last: dt.date) -> Self:
        """Those begun by the last day and still standing on the first."""
        over = Q(ended_m2__gte=F("area_m2") * WHOLE, last_end_on__lt=first)
        return self.with_ends().begun_by(last).exclude(over)

    def standing(self, day: dt.date) -> Self:
        """Those sown by that day and not wholly ended."""
        return self.filter(sown_on__isnull=False).touching(day, day)


class Planting(Record):
    DATE_FIELD = "sown_on"
    PARTS = ("lines",)

    class Purpose(models.TextChoices):
        COVER = "cover", _("cover crop")
        CASH = "cash", _("cash crop")
        NURSE = "nurse", _("nurse crop")

    class Method(models.TextChoices):
        BROADCAST = "broadcast", _("broadcast")
        DRILLED = "drilled", _("drilled")
        TRANSPLANTED = "transplanted", _("transplanted")
        FROST_SEEDED = "frost_seeded", _("frost-seeded")
        SELF_SOWN = "self_sown", _("self-sown")

    class NextSet(models.TextChoices):
        SMALL_SEED = "small_seed", _("sown in place, small seed")
        LARGE_SEED = "large_seed", _("sown in place, large seed")
        TRANSPLANTS = "transplants", _("transplants")

    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="plantings",
        verbose_name=_("field"),
    )
    area_m2 = models.FloatField(_("area"))
    purpose = models.CharField(
        _("purpose"), max_length=5, choices=Purpose.choices, default=Purpose.COVER
    )
    method = models.CharField(
        _("how"), max_length=12, choices=Method.choices, default=Method.BROADCAST
    )
    planned_on = models.DateField(_("planned for"), null=True, blank=True)
    sown_on = models.DateField(_("sown or set out on"), null=True, blank=True)
    depth_m = models.FloatField(_("depth"), null=True, blank=True)
    firmed = models.BooleanField(_("firmed in"), default=False)
    rain_expected = models.BooleanField(_("rain expected"), default=False)
    inoculated = models.BooleanField(_("inoculated"), default=False)
    next_crop = models.CharField(_("next crop"), max_length=80, blank=True)
    next_crop_on = models.DateField(_("next crop goes in on"), null=True, blank=True)
    next_crop_set = models.CharField(
        _("next crop is"), max_length=12, choices=NextSet.choices, blank=True
    )

    objects: ClassVar[models.Manager[Any]] = PlantingQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("planting")
        verbose_name_plural = _("plantings")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(area_m2__gt=0), name="planting_has_an_area"
            ),
            models.CheckConstraint(
                condition=Q(sown_on__isnull=False) | Q(planned_on__isnull=False),
                name="planting_has_a_date",
                violation_error_message=_(
                    "Give the day it was sown, or is planned for."
                ),
            ),
            models.CheckConstraint(
                condition=Q(depth_m=None) | Q(depth_m__gte=0, depth_m__lte=0.5),
                name="planting_depth_is_a_depth",
                violation_error_message=_("A sowing depth lies between 0 and 50 cm."),
            ),
        ]
        indexes = [
            models.Index(fields=["farm", "sown_on"], name="planting_by_day"),
        ]

    def __str__(self) -> str:
        day = self.sown_on or self.planned_on
        return f"{self.field} · {day:%Y-%m-%d}" if day else str(self.field)

    @classmethod
    def within(cls, period: tuple[dt.date, dt.date]) -> Q:
        """Those that stood in the period, and those planned for it."""
        stood = cls.objects.filter(sown_on__isnull=False).touching(*period)
        return Q(pk__in=stood.values("pk")) | Q(sown_on=None, planned_on__range=period)

    def settle(self, *, by: User, now: dt.datetime) -> None:
        if self.sown_on and self.voided_at is None:
            what = "plant" if self.purpose == self.Purpose.CASH else "sow"
            waiting: Any = self.field.duties
            waiting.sown(self).filter(what=what).settle(by=by, now=now, sowing=self)


class SeedLine(models.Model):
    planting = models.ForeignKey(
        Planting, on_delete=models.CASCADE, related_name="lines"
    )
    kind = models.ForeignKey(
        Kind, on_delete=models.PROTECT, related_name="lines", verbose_name=_("kind")
    )
    lot = models.ForeignKey(
        SeedLot,
        on_delete=models.PROTECT,
        related_name="lines",
        null=True,
        blank=True,
        verbose_name=_("seed lot"),
    )
    seed_kg = models.FloatField(_("weight sown"), null=True, blank=True)
    share = models.FloatField(_("share of its full rate"), default=1.0)

    class Meta:
        verbose_name = _("seed line")
        verbose_name_plural = _("seed lines")
        constraints = [
            models.CheckConstraint(
                condition=Q(seed_kg=None) | Q(seed_kg__gt=0),
                name="line_weight_above_zero",
            ),
            models.CheckConstraint(
                condition=Q(share__gt=0, share__lte=1), name="line_share_is_a_share"
            ),
            models.UniqueConstraint(
                "planting", "kind", "lot", name="line_once_a_kind_and_lot"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind}"
