"""Licences of those who put on restricted-use products."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet


class ApplicatorLicence(Record):
    """One licence over the days printed on it; renewed, it is written down anew."""

    holder = models.CharField(_("name on the licence"), max_length=120)
    number = models.CharField(_("number"), max_length=60)
    state = models.CharField(_("State"), max_length=40)
    category = models.CharField(_("category"), max_length=120, blank=True)
    since = models.DateField(_("holds from"), null=True, blank=True)
    until = models.DateField(_("holds until"))

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("applicator’s licence")
        verbose_name_plural = _("applicators’ licences")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(since=None) | Q(until__gte=F("since")),
                name="licence_ends_after_it_begins",
                violation_error_message=_("It would be over before it begins."),
            ),
            models.UniqueConstraint(
                "farm",
                "state",
                "number",
                "until",
                condition=Q(voided_at=None),
                name="licence_once_a_term",
                violation_error_message=_("This licence is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.holder} · {self.state} {self.number}"
