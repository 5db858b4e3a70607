"""Duties: what is to be done where and by when, and the record that settled it."""

from __future__ import annotations

import datetime as dt
from typing import Any, ClassVar, Self

from django.conf import settings
from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Field, Record, RecordQuerySet, User
from farm.writing import write
from records.models.observations import Observation
from records.models.plantings import Planting
from records.models.terminations import Termination

SETTLED_ON = {"sowing": "sown_on", "sighting": "seen_on", "ending": "ended_on"}
SETTLING = tuple(SETTLED_ON)


class DutyQuerySet(RecordQuerySet["Duty"]):
    def open(self) -> Self:
        """Those nothing has settled; a voided record settles nothing."""
        settled = Q(done_on__isnull=False)
        for name in SETTLING:
            settled |= Q(
                **{f"{name}__isnull": False, f"{name}__voided_at__isnull": True}
            )
        return self.live().exclude(settled)

    def open_on(self, day: dt.date) -> Self:
        """Those nothing had settled on a day."""
        settled = Q(done_on__lte=day)
        for name, dated in SETTLED_ON.items():
            settled |= Q(
                **{f"{name}__{dated}__lte": day, f"{name}__voided_at__isnull": True}
            )
        return self.live().exclude(settled)

    def for_person(self, user: Any) -> Self:
        """Those given to a person, and those given to nobody."""
        return self.filter(Q(who_for=user) | Q(who_for=None))

    def about(self, planting: Planting) -> Self:
        """Those of a planting, and those of its field that name no planting."""
        here = Q(planting=planting) | Q(planting=None, field=planting.field_id)
        return self.filter(here, farm=planting.farm_id)

    def sown(self, planting: Planting) -> Self:
        """Those of a planting, or of a plan on its field for one of its kinds."""
        kinds = planting.lines.values("kind")
        plan = Q(planting__sown_on=None, planting__lines__kind__in=kinds)
        here = Q(planting=planting) | Q(planting=None) | plan
        return self.filter(here, field=planting.field_id).distinct()

    def settle(self, *, by: User, now: dt.datetime, **record: Record) -> None:
        """Note beside each the record that did it."""
        for duty in self.open():
            for name, row in record.items():
                setattr(duty, name, row)
            write(duty, by=by, now=now)


class Duty(Record):
    class What(models.TextChoices):
        SOW = "sow", _("sow")
        LOOK = "look", _("look at it")
        CUT = "cut", _("cut it, to grow back")
        END = "end", _("end it")
        WORK_IN = "work_in", _("work it in")
        PLANT = "plant", _("plant the next crop")
        OTHER = "other", _("something else")

    class Window(models.TextChoices):
        SOW = "sow", _("sowing")
        CUT = "cut", _("cutting, to grow back")
        END_MOWING = "end_mowing", _("ending by mowing")
        END_WORKING_IN = "end_working_in", _("ending by working in")
        FROST_KILL = "frost_kill", _("killing frost")
        PLANT_BACK = "plant_back", _("the next crop")

    what = models.CharField(_("what"), max_length=8, choices=What.choices)
    words = models.CharField(_("in words"), max_length=160, blank=True)
    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="duties",
        verbose_name=_("field"),
    )
    planting = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="duties",
        null=True,
        blank=True,
        verbose_name=_("planting"),
    )
    earliest_on = models.DateField(_("from"))
    latest_on = models.DateField(_("by"))
    who_for = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.PROTECT,
        related_name="duties",
        null=True,
        blank=True,
        verbose_name=_("for whom"),
    )
    from_window = models.CharField(
        _("from which window"), max_length=16, choices=Window.choices, blank=True
    )
    done_on = models.DateField(_("done on, by hand"), null=True, blank=True)
    sowing = models.ForeignKey(
        Planting,
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        editable=False,
        verbose_name=_("settled by this planting"),
    )
    sighting = models.ForeignKey(
        Observation,
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        editable=False,
        verbose_name=_("settled by this observation"),
    )
    ending = models.ForeignKey(
        Termination,
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        editable=False,
        verbose_name=_("settled by this end"),
    )

    objects: ClassVar[models.Manager[Any]] = DutyQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("duty")
        verbose_name_plural = _("duties")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(latest_on__gte=F("earliest_on")),
                name="duty_days_in_order",
                violation_error_message=_("It would be over before it begins."),
            ),
            models.CheckConstraint(
                condition=~Q(what="other") | ~Q(words=""),
                name="duty_says_what",
                violation_error_message=_("Say in words what is to be done."),
            ),
        ]
        indexes = [models.Index(fields=["farm", "latest_on"], name="duty_by_day")]

    def __str__(self) -> str:
        return f"{self.words or self.get_what_display()} · {self.field}"

    @property
    def settled_by(self) -> Record | None:
        """The record that did it, unless that was voided since."""
        rows = (getattr(self, name) for name in SETTLING)
        return next((row for row in rows if row and row.voided_at is None), None)

    @property
    def is_settled(self) -> bool:
        return self.done_on is not None or self.settled_by is not None
