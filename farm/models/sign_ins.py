"""Where a person is signed in, and the codes that stand in for a lost telephone."""

from __future__ import annotations

import datetime as dt
import hashlib
from typing import Any

from django.conf import settings
from django.contrib.auth import SESSION_KEY
from django.contrib.sessions.backends.db import SessionStore as DatabaseStore
from django.contrib.sessions.base_session import AbstractBaseSession
from django.db import models
from django.utils.translation import gettext_lazy as _

# Each names itself beside those it wants to be taken for; the first that fits is it.
BROWSERS = (
    ("Edg", "Edge"),
    ("Firefox", "Firefox"),
    ("Chrome", "Chrome"),
    ("Safari", "Safari"),
)
MACHINES = (
    ("Android", "Android"),
    ("iPhone", "iPhone"),
    ("iPad", "iPad"),
    ("Windows", "Windows"),
    ("Mac OS", "macOS"),
    ("Linux", "Linux"),
)


class SignIn(AbstractBaseSession):
    """A session that knows whose it is, so that its person can end it."""

    user = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.CASCADE,
        null=True,
        related_name="sign_ins",
    )
    browser = models.CharField(_("browser"), max_length=200, blank=True)
    started_at = models.DateTimeField(_("since"), null=True)

    class Meta:
        verbose_name = _("sign-in")
        verbose_name_plural = _("sign-ins")

    @classmethod
    def get_session_store_class(cls) -> type[SessionStore]:
        return SessionStore

    @property
    def words(self) -> str:
        """The browser and the machine, from what the browser says of itself."""
        told = [
            next((word for mark, word in marks if mark in self.browser), "")
            for marks in (BROWSERS, MACHINES)
        ]
        return " · ".join(filter(None, told)) or self.browser[:60]

    @property
    def mark(self) -> str:
        """A name for pages: the key itself would open the session."""
        return hashlib.sha256(self.session_key.encode()).hexdigest()[:16]


class SessionStore(DatabaseStore):
    """Django's own store, which also notes the person and the browser."""

    @classmethod
    def get_model_class(cls) -> type[SignIn]:
        return SignIn

    def create_model_instance(self, data: dict[str, Any]) -> SignIn:
        row: Any = super().create_model_instance(data)
        row.user_id = data.get(SESSION_KEY)
        row.browser = str(data.get("browser", ""))[:200]
        since = data.get("since")
        row.started_at = dt.datetime.fromisoformat(since) if since else None
        return row  # type: ignore[no-any-return]


class RecoveryCode(models.Model):
    """One of the codes written on paper; its digest is kept until it is used."""

    user = models.ForeignKey(
        settings.AUTH_USER_MODEL,
        on_delete=models.CASCADE,
        related_name="recovery_codes",
    )
    token_hash = models.CharField(max_length=64)

    class Meta:
        verbose_name = _("recovery code")
        verbose_name_plural = _("recovery codes")
        constraints = [
            models.UniqueConstraint("user", "token_hash", name="one_of_each_code")
        ]

    def __str__(self) -> str:
        return f"{self.user} · {self.pk}"
