"""What the checks found on a day, kept to see what came and went since."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _


class KeptFindings(models.Model):
    """The list of one season as it stood at one hour; written once."""

    class Why(models.TextChoices):
        ASKED = "asked", _("kept when somebody asked for it")
        PRINTED = "printed", _("kept when the papers were printed")

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="kept_findings"
    )
    year = models.PositiveSmallIntegerField(_("season"))
    kept_at = models.DateTimeField(_("kept"))
    kept_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+"
    )
    why = models.CharField(_("why"), max_length=7, choices=Why.choices)
    # Each finding by its key: how much it weighs, and its sentence on that day.
    lines = models.JSONField(_("findings"), default=dict, blank=True)

    class Meta:
        verbose_name = _("kept list of findings")
        verbose_name_plural = _("kept lists of findings")
        indexes = [
            models.Index(fields=["farm", "year", "-kept_at"], name="findings_by_time")
        ]

    def __str__(self) -> str:
        return f"{self.year} · {self.kept_at:%Y-%m-%d %H:%M}"
