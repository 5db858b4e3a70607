"""A link by which one person may come in once."""

from __future__ import annotations

import datetime as dt
import hashlib
import secrets
from typing import Any, ClassVar

from django.conf import settings
from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models.people import LANGUAGES, Role

TOKEN_BYTES = 32


def sealed(token: str) -> str:
    """What is kept of a token: enough to know it again, not to tell it."""
    return hashlib.sha256(token.encode()).hexdigest()


class Invitation(models.Model):
    class State(models.TextChoices):
        OPEN = "open", _("open")
        USED = "used", _("used")
        REVOKED = "revoked", _("taken back")
        EXPIRED = "expired", _("run out")

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.CASCADE, related_name="invitations"
    )
    name = models.CharField(_("name"), max_length=120)
    email = models.EmailField(_("e-mail"), blank=True)
    role = models.CharField(_("role"), max_length=12, choices=Role.choices)
    until = models.DateField(_("until"), null=True, blank=True)
    language = models.CharField(
        _("language"), max_length=8, blank=True, choices=LANGUAGES
    )
    sees_from = models.DateField(_("sees records from"), null=True, blank=True)
    sees_to = models.DateField(_("sees records to"), null=True, blank=True)
    token_hash = models.CharField(max_length=64, unique=True)
    made_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+"
    )
    made_at = models.DateTimeField(_("made"))
    expires_at = models.DateTimeField(_("runs out"))
    revoked_at = models.DateTimeField(null=True)
    used_at = models.DateTimeField(null=True)
    used_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, null=True, related_name="+"
    )

    objects: ClassVar[models.Manager[Any]] = models.Manager()

    class Meta:
        verbose_name = _("invitation")
        verbose_name_plural = _("invitations")
        constraints = [
            models.CheckConstraint(
                condition=Q(used_at=None, used_by=None)
                | Q(used_at__isnull=False, used_by__isnull=False, revoked_at=None),
                name="invitation_is_used_whole",
            )
        ]

    def __str__(self) -> str:
        return f"{self.name} · {self.get_role_display()} · {self.farm}"

    def new_token(self) -> str:
        """A token told this once; only its digest is kept."""
        token = secrets.token_urlsafe(TOKEN_BYTES)
        self.token_hash = sealed(token)
        return token

    def state(self, now: dt.datetime) -> State:
        """What has become of the link by that moment."""
        if self.used_at:
            return self.State.USED
        if self.revoked_at:
            return self.State.REVOKED
        return self.State.EXPIRED if self.expires_at <= now else self.State.OPEN
