"""What was seen in a stand, and what was cut and weighed."""

from __future__ import annotations

import datetime as dt
from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet, User
from records.models.plantings import Planting
from records.models.seeds import SHARE


class Observation(Record):
    DATE_FIELD = "seen_on"

    class Seen(models.TextChoices):
        EMERGED = "emerged", _("emerged")
        CANOPY = "canopy", _("canopy")
        FIRST_FLOWER = "first_flower", _("first flower")
        BLOOM = "bloom", _("bloom")
        SEED_SET = "seed_set", _("seed set")
        FROST_KILLED = "frost_killed", _("frost-killed")
        REGROWN = "regrown", _("regrown")
        WEEDS = "weeds", _("weeds")

    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="observations",
        verbose_name=_("planting"),
    )
    seen_on = models.DateField(_("seen on"))
    seen = models.CharField(_("what was seen"), max_length=12, choices=Seen.choices)
    canopy_share = models.FloatField(
        _("canopy, share of ground"), null=True, blank=True, validators=SHARE
    )
    bloom_share = models.FloatField(
        _("plants in bloom"), null=True, blank=True, validators=SHARE
    )
    ground_cover_share = models.FloatField(
        _("ground covered, leaf and residue"), null=True, blank=True, validators=SHARE
    )
    height_m = models.FloatField(_("height"), null=True, blank=True)
    weeds = models.PositiveSmallIntegerField(
        _("weeds, 0 none to 5 many"),
        null=True,
        blank=True,
        choices=[(n, str(n)) for n in range(6)],
    )
    stand_per_m2 = models.FloatField(_("plants counted"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("observation")
        verbose_name_plural = _("observations")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=(
                    (Q(canopy_share=None) | Q(canopy_share__range=(0, 1)))
                    & (Q(bloom_share=None) | Q(bloom_share__range=(0, 1)))
                    & (Q(ground_cover_share=None) | Q(ground_cover_share__range=(0, 1)))
                ),
                name="observed_shares_are_shares",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.get_seen_display()} · {self.seen_on}"

    def settle(self, *, by: User, now: dt.datetime) -> None:
        stood: Any = self.planting.field.duties
        waiting = stood.about(self.planting).filter(what="look")
        waiting.settle(by=by, now=now, sighting=self)


class BiomassSample(Record):
    DATE_FIELD = "cut_on"
    PARTS = ("frames",)

    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="samples",
        verbose_name=_("planting"),
    )
    cut_on = models.DateField(_("cut on"))
    dry_share = models.FloatField(
        _("dry matter"),
        validators=SHARE,
        help_text=_("Dry weight of a small part divided by its wet weight."),
    )
    nitrogen_share = models.FloatField(
        _("nitrogen in the dry matter"), null=True, blank=True, validators=SHARE
    )
    laboratory = models.CharField(_("laboratory"), max_length=120, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("biomass sample")
        verbose_name_plural = _("biomass samples")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(dry_share__gt=0, dry_share__lte=1),
                name="sample_dry_matter_is_a_share",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.planting} · {self.cut_on}"


class SampleFrame(models.Model):
    sample = models.ForeignKey(
        BiomassSample, on_delete=models.CASCADE, related_name="frames"
    )
    area_m2 = models.FloatField(_("frame area"))
    wet_kg = models.FloatField(_("wet weight"))

    class Meta:
        verbose_name = _("frame")
        verbose_name_plural = _("frames")
        constraints = [
            models.CheckConstraint(
                condition=Q(area_m2__gt=0, wet_kg__gte=0), name="frame_is_measured"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.wet_kg} kg / {self.area_m2} m²"
