"""The search for organic seed, before other seed is bought."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet
from records.models.crops import Kind
from records.models.seeds import SeedLot


class SeedSearch(Record):
    DATE_FIELD = "searched_on"
    LASTS = True
    PARTS = ("asked",)

    class Reason(models.TextChoices):
        FORM = "form", _("not to be had in a suitable form")
        QUALITY = "quality", _("not to be had in suitable quality")
        QUANTITY = "quantity", _("not to be had in sufficient quantity")
        NO_EQUIVALENT = "no_equivalent", _("no equivalent variety")

    kind = models.ForeignKey(
        Kind, on_delete=models.PROTECT, related_name="searches", verbose_name=_("kind")
    )
    traits = models.CharField(
        _("traits wanted"),
        max_length=300,
        help_text=_("What the seed must be: season, height, disease, form."),
    )
    wanted_kg = models.FloatField(_("weight wanted"), null=True, blank=True)
    searched_on = models.DateField(_("searched on"))
    reason = models.CharField(
        _("why none was organic"), max_length=13, choices=Reason.choices, blank=True
    )
    lot = models.ForeignKey(
        SeedLot,
        on_delete=models.PROTECT,
        related_name="searches",
        null=True,
        blank=True,
        verbose_name=_("for seed lot"),
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("search for organic seed")
        verbose_name_plural = _("searches for organic seed")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(wanted_kg=None) | Q(wanted_kg__gt=0),
                name="search_weight_above_zero",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.kind} · {self.searched_on}"


class SourceAsked(models.Model):
    search = models.ForeignKey(
        SeedSearch, on_delete=models.CASCADE, related_name="asked"
    )
    source = models.CharField(_("source asked"), max_length=120)
    asked_on = models.DateField(_("asked on"))
    answer = models.CharField(_("answer"), max_length=300)

    class Meta:
        verbose_name = _("source asked")
        verbose_name_plural = _("sources asked")
        constraints = [
            models.UniqueConstraint("search", "source", name="source_asked_once"),
        ]

    def __str__(self) -> str:
        return self.source
