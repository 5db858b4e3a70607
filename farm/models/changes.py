"""Who changed what, when, from what to what: rows are only ever added."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.conf import settings
from django.db import models
from django.utils.translation import gettext_lazy as _

from farm.chain import NOTHING, SEALED, seal

if TYPE_CHECKING:
    from farm.models.farms import Farm


class Change(models.Model):
    class Verb(models.TextChoices):
        WROTE = "wrote", _("wrote")
        CHANGED = "changed", _("changed")
        VOIDED = "voided", _("voided")
        LOADED = "loaded", _("loaded")
        REVIEWED = "reviewed", _("reviewed")
        PUT_BACK = "put back", _("put back")

    farm = models.ForeignKey(
        "farm.Farm", on_delete=models.PROTECT, related_name="changes"
    )
    number = models.PositiveBigIntegerField(_("number"))
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
    # The digest of the farm's change before this one, and this one's own.
    prev = models.CharField(max_length=64, blank=True)
    digest = models.CharField(max_length=64, unique=True)

    class Meta:
        verbose_name = _("change")
        verbose_name_plural = _("changes")
        indexes = [
            models.Index(fields=["farm", "noun", "object_id"], name="change_of_record"),
            models.Index(fields=["farm", "-at"], name="change_by_time"),
        ]
        constraints = [
            models.UniqueConstraint("farm", "number", name="change_number_once_a_farm"),
            models.UniqueConstraint("farm", "prev", name="change_follows_one_other"),
        ]

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M} {self.by} {self.verb} {self.label}"

    def sealed(self) -> str:
        """The digest that this entry's own words call for."""
        return seal({name: getattr(self, name) for name in SEALED})


class ChangeHead(models.Model):
    """A farm's last change: who holds this row writes the next one."""

    farm = models.OneToOneField(
        "farm.Farm", on_delete=models.PROTECT, related_name="change_head"
    )
    number = models.PositiveBigIntegerField(default=0)
    digest = models.CharField(max_length=64, default=NOTHING, blank=True)

    class Meta:
        verbose_name = _("last change")
        verbose_name_plural = _("last changes")

    def __str__(self) -> str:
        return f"{self.farm} {self.number}"

    @classmethod
    def held(cls, farm: Farm) -> ChangeHead:
        """Wait for other writers of this farm, and keep them waiting until the end."""
        rows = cls._default_manager.select_for_update()
        found = rows.filter(farm=farm).first()
        if found is None:
            cls._default_manager.get_or_create(farm=farm)
            found = rows.get(farm=farm)
        return found
