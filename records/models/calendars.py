"""Private addresses under which a person's calendar may be read."""

from __future__ import annotations

import datetime as dt
import hashlib
import secrets
from typing import Any, ClassVar, Self

from django.conf import settings
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Farm, Membership, User

TOKEN_BYTES = 32


def sealed(token: str) -> str:
    """What is kept of a token: enough to know it again, not to tell it."""
    return hashlib.sha256(token.encode()).hexdigest()


class CalendarAddressQuerySet(models.QuerySet["CalendarAddress"]):
    def live(self) -> Self:
        return self.filter(revoked_at=None)

    def known_by(self, token: str, *, now: dt.datetime) -> CalendarAddress | None:
        """The address a token opens, while its person is still on the farm."""
        rows = self.live().select_related("farm", "user")
        found = rows.filter(token_hash=sealed(token), user__is_active=True).first()
        if found is None:
            return None
        day = found.farm.today(now)
        here = Membership.objects.filter(farm=found.farm, user=found.user).first()
        return found if here and here.holds_on(day) else None


class CalendarAddress(models.Model):
    farm = models.ForeignKey(
        Farm, on_delete=models.PROTECT, related_name="calendar_addresses"
    )
    user = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.PROTECT,
        related_name="calendar_addresses",
    )
    token_hash = models.CharField(max_length=64, unique=True)
    made_at = models.DateTimeField()
    revoked_at = models.DateTimeField(null=True)

    objects: ClassVar[Any] = CalendarAddressQuerySet.as_manager()

    class Meta:
        verbose_name = _("calendar address")
        verbose_name_plural = _("calendar addresses")
        constraints = [
            models.UniqueConstraint(
                "farm",
                "user",
                condition=Q(revoked_at=None),
                name="one_calendar_address_a_person",
            )
        ]

    def __str__(self) -> str:
        return f"{self.user} · {self.farm}"

    @classmethod
    def renewed(cls, farm: Farm, user: User, *, now: dt.datetime) -> str:
        """A new token, told this once; the one before opens nothing any more."""
        cls.revoke(farm, user, now=now)
        token = secrets.token_urlsafe(TOKEN_BYTES)
        cls.objects.create(farm=farm, user=user, token_hash=sealed(token), made_at=now)
        return token

    @classmethod
    def revoke(cls, farm: Farm, user: User, *, now: dt.datetime) -> None:
        cls.objects.live().filter(farm=farm, user=user).update(revoked_at=now)
