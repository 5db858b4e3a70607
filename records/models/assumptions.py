"""A value of the farm's own in place of one the pages would assume."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet


class OwnAssumption(Record):
    key = models.SlugField(_("assumption"), max_length=60)
    value = models.FloatField(_("value"))
    unit = models.CharField(_("unit"), max_length=24, blank=True)
    # The range it was held against when it was written down.
    low = models.FloatField(_("no less than"))
    high = models.FloatField(_("no more than"))
    reason = models.CharField(_("how you know"), max_length=300)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("assumption of our own")
        verbose_name_plural = _("assumptions of our own")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(value__gte=F("low"), value__lte=F("high")),
                name="assumption_within_its_range",
                violation_error_message=_("The value lies outside the range."),
            ),
            models.UniqueConstraint(
                "farm",
                "key",
                condition=Q(voided_at=None),
                name="one_assumption_at_a_time",
                violation_error_message=_(
                    "The farm already has a value of its own here. Change that one."
                ),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.called}: {self.value:g} {self.unit}".strip()

    @property
    def called(self) -> str:
        """Which assumption it is, in words."""
        return self.key.replace("_", " ")
