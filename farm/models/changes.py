"""Who changed what, when, from what to what: rows are only ever added."""

from __future__ import annotations

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _


class Change(models.Model):
    class Verb(models.TextChoices):
        WROTE = "wrote", _("wrote")
        CHANGED = "changed", _("changed")
        VOIDED = "voided", _("voided")
        LOADED = "loaded", _("loaded")

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="changes"
    )
    at = models.DateTimeField()
    by = models.ForeignKey(
        settings.AUTH_USER_MODEL, on_delete=models.PROTECT, related_name="changes"
    )
    verb = models.CharField(max_length=8, choices=Verb.choices)
    noun = models.CharField(max_length=40)
    object_id = models.BigIntegerField()
    label = models.CharField(max_length=200)
    before = models.JSONField(default=dict)
    after = models.JSONField(default=dict)
    reason = models.CharField(max_length=500, blank=True)

    class Meta:
        verbose_name = _("change")
        verbose_name_plural = _("changes")
        indexes = [
            models.Index(fields=["farm", "noun", "object_id"], name="change_of_record"),
            models.Index(fields=["farm", "-at"], name="change_by_time"),
        ]

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M} {self.by} {self.verb} {self.label}"
