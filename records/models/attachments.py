"""Pictures and papers that belong to a record."""

from __future__ import annotations

import uuid
from typing import Any, ClassVar

from django.db import models
from django.db.models import Q
from django.utils.translation import gettext_lazy as _

from farm.models import Record, RecordQuerySet


def kept_under(row: Attachment, name: str) -> str:
    """A place nobody can guess, and nothing of the name it came with."""
    return f"attachments/{row.farm_id}/{uuid.uuid4().hex}.{row.ending}"


class Attachment(Record):
    DATE_FIELD = "taken_on"

    class Type(models.TextChoices):
        JPEG = "image/jpeg", _("photograph")
        PNG = "image/png", _("picture")
        PDF = "application/pdf", _("paper, PDF")

    ENDINGS: ClassVar[dict[str, str]] = {
        Type.JPEG: "jpg",
        Type.PNG: "png",
        Type.PDF: "pdf",
    }

    noun = models.CharField(max_length=40, editable=False)
    object_id = models.BigIntegerField(editable=False)
    shows = models.CharField(_("what it shows"), max_length=200)
    taken_on = models.DateField(_("taken on"), null=True, blank=True)
    type = models.CharField(
        _("type"), max_length=20, choices=Type.choices, editable=False
    )
    file = models.FileField(_("file"), upload_to=kept_under, editable=False)
    bytes = models.PositiveIntegerField(_("size in bytes"), editable=False)
    sha256 = models.CharField(_("SHA-256"), max_length=64, editable=False)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("attachment")
        verbose_name_plural = _("attachments")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(bytes__gt=0), name="attachment_holds_something"
            ),
        ]
        indexes = [
            models.Index(
                fields=["farm", "noun", "object_id"], name="attachment_of_record"
            )
        ]

    def __str__(self) -> str:
        return self.shows

    @property
    def ending(self) -> str:
        return self.ENDINGS[self.type]

    @property
    def is_picture(self) -> bool:
        return self.type != self.Type.PDF
