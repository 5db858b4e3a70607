"""Which papers were printed, told by their fingerprints."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _


class PrintedPaper(models.Model):
    """A file that was handed out: its fingerprint tells it from any other."""

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="prints"
    )
    name = models.CharField(_("paper"), max_length=120)
    year = models.PositiveSmallIntegerField(_("season"))
    sections = models.CharField(_("parts"), max_length=400, blank=True)
    sha256 = models.CharField(max_length=64)
    bytes = models.PositiveIntegerField(_("size in bytes"))
    printed_at = models.DateTimeField(_("printed"))
    printed_by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+"
    )

    class Meta:
        verbose_name = _("printed paper")
        verbose_name_plural = _("printed papers")
        constraints = [
            models.UniqueConstraint("farm", "sha256", name="paper_printed_once")
        ]

    def __str__(self) -> str:
        return f"{self.name} {self.year} · {self.sha256[:12]}"
