"""How and when a stand was ended, and what became of its residue."""

from __future__ import annotations

import datetime as dt
from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet, User
from records.models.plantings import Planting
from records.models.seeds import SHARE


class Termination(Record):
    DATE_FIELD = "ended_on"

    class Method(models.TextChoices):
        MOWN = "mown", _("mown")
        FLAIL_MOWN = "flail_mown", _("flail-mown")
        ROLLER_CRIMPED = "roller_crimped", _("roller-crimped")
        TILLED_IN = "tilled_in", _("tilled in")
        UNDERCUT = "undercut", _("undercut")
        TARPED = "tarped", _("tarped")
        GRAZED = "grazed", _("grazed")
        FROST_KILLED = "frost_killed", _("frost-killed")
        HAND_CUT = "hand_cut", _("hand-cut")
        SPRAYED = "sprayed", _("sprayed")
        HARVESTED = "harvested", _("harvested")
        BURNED = "burned", _("burned")

    class Residue(models.TextChoices):
        ON_TOP = "on_top", _("left on top")
        WORKED_IN = "worked_in", _("worked in")
        REMOVED = "removed", _("removed")
        GRAZED = "grazed", _("grazed")

    class Outcome(models.TextChoices):
        ENDED = "ended", _("the stand is over")
        REGROWS = "regrows", _("cut, to grow back")

    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="terminations",
        verbose_name=_("planting"),
    )
    area_m2 = models.FloatField(_("area ended"))
    ended_on = models.DateField(_("ended on"))
    method = models.CharField(_("how"), max_length=14, choices=Method.choices)
    outcome = models.CharField(
        _("outcome"), max_length=7, choices=Outcome.choices, default=Outcome.ENDED
    )
    bloom_share = models.FloatField(
        _("plants in bloom"), null=True, blank=True, validators=SHARE
    )
    residue = models.CharField(_("residue"), max_length=9, choices=Residue.choices)
    reason = models.CharField(_("why this choice"), max_length=300, blank=True)
    worked_in_on = models.DateField(_("worked in on"), null=True, blank=True)
    depth_m = models.FloatField(_("depth worked"), null=True, blank=True)
    tool = models.CharField(_("tool"), max_length=80, blank=True)
    tarp_removed_on = models.DateField(_("tarp removed on"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("termination")
        verbose_name_plural = _("terminations")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(area_m2__gt=0), name="termination_has_an_area"
            ),
            models.CheckConstraint(
                condition=Q(worked_in_on=None) | Q(worked_in_on__gte=F("ended_on")),
                name="worked_in_after_the_end",
                violation_error_message=_("It was worked in before it ended."),
            ),
            models.CheckConstraint(
                condition=~Q(residue="worked_in") | Q(worked_in_on__isnull=False),
                name="worked_in_has_a_day",
                violation_error_message=_("Give the day it was worked in."),
            ),
            models.CheckConstraint(
                condition=Q(tarp_removed_on=None)
                | Q(tarp_removed_on__gte=F("ended_on")),
                name="tarp_off_after_it_went_on",
                violation_error_message=_("The tarp came off before it went on."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.get_method_display()} · {self.ended_on}"

    def settle(self, *, by: User, now: dt.datetime) -> None:
        what = ["cut" if self.outcome == self.Outcome.REGROWS else "end"]
        if self.worked_in_on:
            what.append("work_in")
        stood: Any = self.planting.field.duties
        waiting = stood.about(self.planting).filter(what__in=what)
        waiting.settle(by=by, now=now, ending=self)
