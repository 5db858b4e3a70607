"""Ground covered with a sheet: film, fabric or a tarp, laid and taken off again."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet
from records.models.plantings import Planting


class MulchSheet(Record):
    DATE_FIELD = "laid_on"

    class Material(models.TextChoices):
        POLYETHYLENE = "polyethylene", _("polyethylene film")
        FABRIC = "fabric", _("woven landscape fabric")
        TARP = "tarp", _("tarp")
        BIODEGRADABLE = "biodegradable", _("biodegradable film")
        PAPER = "paper", _("paper")
        PVC = "pvc", _("PVC film or tarp")
        OTHER = "other", _("other")

    class Went(models.TextChoices):
        KEPT = "kept", _("kept for use again")
        COLLECTED = "collected", _("taken to a collection for recycling")
        TIPPED = "tipped", _("taken to a waste site")
        WORKED_IN = "worked_in", _("worked into the soil")
        OTHER = "other", _("elsewhere, told in the notes")

    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="mulch_sheets",
        verbose_name=_("field"),
    )
    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="mulch_sheets",
        null=True,
        blank=True,
        verbose_name=_("planting"),
    )
    area_m2 = models.FloatField(_("area covered"))
    material = models.CharField(_("material"), max_length=13, choices=Material.choices)
    material_words = models.CharField(_("what it is"), max_length=120, blank=True)
    approval = models.CharField(_("approved by, reference"), max_length=120, blank=True)
    laid_on = models.DateField(_("laid on"))
    taken_off_on = models.DateField(_("taken off on"), null=True, blank=True)
    went = models.CharField(
        _("where it went"), max_length=9, choices=Went.choices, blank=True
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("mulch film or tarp")
        verbose_name_plural = _("mulch films and tarps")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(area_m2__gt=0), name="mulch_sheet_has_an_area"
            ),
            models.CheckConstraint(
                condition=Q(taken_off_on=None) | Q(taken_off_on__gte=F("laid_on")),
                name="mulch_sheet_off_after_on",
                violation_error_message=_("It came off before it was laid."),
            ),
            models.CheckConstraint(
                condition=~Q(material="other") | ~Q(material_words=""),
                name="mulch_sheet_other_in_words",
                violation_error_message=_("Say in words what it is."),
            ),
            models.CheckConstraint(
                condition=Q(went="") | Q(taken_off_on__isnull=False),
                name="mulch_sheet_went_on_a_day",
                violation_error_message=_("Give the day it was taken off."),
            ),
        ]

    @property
    def lies(self) -> bool:
        """Whether nothing says that it came off."""
        return self.taken_off_on is None

    def __str__(self) -> str:
        what = self.material_words or self.get_material_display()
        return f"{what} · {self.laid_on}"
