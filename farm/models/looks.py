"""Every look an inspector takes, noted and never rewritten."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _


class Look(models.Model):
    """A page that somebody who only reads was shown."""

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="looks"
    )
    by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="looks"
    )
    at = models.DateTimeField(_("when"))
    path = models.CharField(_("page"), max_length=300)

    class Meta:
        verbose_name = _("look")
        verbose_name_plural = _("looks")
        indexes = [models.Index(fields=["farm", "-at"], name="look_by_time")]

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M} {self.by} {self.path}"
