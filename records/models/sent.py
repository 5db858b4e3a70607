"""What came from a telephone's queue: each entry is taken once, by its own key."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _


class SentEntry(models.Model):
    """An entry that was written down, kept with what was answered.

    A telephone that lost the answer sends again, and gets the same one.
    """

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="sent_entries"
    )
    by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="+"
    )
    key = models.UUIDField(_("the entry’s own key"))
    act = models.CharField(_("what was done"), max_length=20)
    got_at = models.DateTimeField(_("came in"))
    answer = models.CharField(_("what was answered"), max_length=400, blank=True)

    class Meta:
        verbose_name = _("entry from a telephone")
        verbose_name_plural = _("entries from telephones")
        constraints = [
            models.UniqueConstraint("farm", "by", "key", name="entry_taken_once")
        ]

    def __str__(self) -> str:
        return f"{self.got_at:%Y-%m-%d %H:%M} {self.by} {self.act}"
