"""The record: written once, kept for good, voided with a reason."""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, ClassVar, Self, TypeVar

from django.conf import settings
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

if TYPE_CHECKING:
    from farm.models.farms import Farm
    from farm.models.people import Period, User

# A record written on a later day than the day after is marked as late.
LATE_AFTER_DAYS = 1

R = TypeVar("R", bound="Record")


class RecordQuerySet(models.QuerySet[R]):
    def on(self, farm: Farm) -> Self:
        return self.filter(farm=farm)

    def seen_on(self, farm: Farm) -> Self:
        """The farm's rows, for an inspector those of the period opened to them."""
        rows = self.on(farm)
        if farm.period is None:
            return rows
        return rows.filter(self.model.within(farm.period))

    def live(self) -> Self:
        """Those that stand: not voided."""
        return self.filter(voided_at=None)


class Record(models.Model):
    """What every record carries, whatever it tells of."""

    DATE_FIELD: ClassVar[str] = ""
    # Told once and leaned on for years, such as a lot of seed.
    LASTS: ClassVar[bool] = False
    # Related names of rows that belong to the record and change with it.
    PARTS: ClassVar[tuple[str, ...]] = ()
    # Fields whose change cannot be read without another field beside it.
    TOLD_WITH: ClassVar[Mapping[str, str]] = {}
    # Fields that are not for the crew's eyes.
    PRIVATE: ClassVar[frozenset[str]] = frozenset()

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="%(class)ss"
    )
    # Sent along by the form, so that a page sent twice is recorded once.
    client_key = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    notes = models.TextField(_("notes"), blank=True, max_length=4000)
    done_by = models.CharField(_("done by"), max_length=120, blank=True)
    written_by = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.PROTECT,
        related_name="+",
        editable=False,
    )
    written_at = models.DateTimeField(editable=False)
    voided_at = models.DateTimeField(null=True, editable=False)
    voided_by = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.PROTECT,
        related_name="+",
        null=True,
        editable=False,
    )
    void_reason = models.CharField(max_length=500, blank=True, editable=False)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta:
        abstract = True
        constraints = [
            models.CheckConstraint(
                condition=Q(voided_at=None, voided_by=None, void_reason="")
                | (
                    Q(voided_at__isnull=False, voided_by__isnull=False)
                    & ~Q(void_reason="")
                ),
                name="%(class)s_void_is_whole",
            )
        ]

    @classmethod
    def within(cls, period: Period) -> Q:
        """Which rows belong to a period: of its days, without a day, or lasting."""
        if not cls.DATE_FIELD:
            return Q()
        day, (first, last) = cls.DATE_FIELD, period
        since = {} if cls.LASTS else {f"{day}__gte": first}
        return Q(**since, **{f"{day}__lte": last}) | Q(**{day: None})

    def settle(self, *, by: User, now: dt.datetime) -> None:
        """Settle what waited for this record; most records settle nothing."""

    @property
    def happened_on(self) -> dt.date | None:
        day: dt.date | None = (
            getattr(self, self.DATE_FIELD) if self.DATE_FIELD else None
        )
        return day

    @property
    def is_late(self) -> bool:
        """Written down later than the day after it happened."""
        day = self.happened_on
        if day is None:
            return False
        return (self.farm.today(self.written_at) - day).days > LATE_AFTER_DAYS
