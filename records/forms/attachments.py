"""Adding a picture or a paper to a record."""

from __future__ import annotations

import datetime as dt
import hashlib
import uuid
from typing import Any

from django import forms
from django.conf import settings
from django.core.files.base import ContentFile
from django.db import transaction
from django.utils.translation import gettext_lazy as _

from farm.forms.base import DateInput
from farm.models import Record, User
from farm.writing import write
from records.models import Attachment
from records.reading.pictures import PictureError, Plain, Trouble, made_plain

SENTENCES = {
    Trouble.EMPTY: _("The file is empty."),
    Trouble.UNKNOWN: _("This is no photograph, picture or PDF that can be read."),
    Trouble.BROKEN: _("The file is damaged or cut short."),
    Trouble.TOO_MANY_POINTS: _("The picture is too large. Take it smaller."),
}
ACCEPTED = (
    "image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif,application/pdf"
)


class AttachmentForm(forms.Form):
    upload = forms.FileField(
        label=_("Picture or paper"),
        help_text=_(
            "JPEG, HEIC, PNG, WebP or PDF. The place a photograph was taken is removed."
        ),
        widget=forms.FileInput(attrs={"accept": ACCEPTED}),
        error_messages={"empty": _("The file is empty.")},
        max_length=255,
    )
    shows = forms.CharField(label=_("What it shows"), max_length=200)
    # Sent along, so that a page sent twice keeps the picture once.
    client_key = forms.UUIDField(widget=forms.HiddenInput, required=False)
    taken_on = forms.DateField(label=_("Taken on"), required=False, widget=DateInput())

    def __init__(
        self, data: Any = None, files: Any = None, *, row: Record, today: dt.date
    ) -> None:
        super().__init__(data, files)
        self.row, self.today = row, today
        self.plain: Plain | None = None
        self.fields["client_key"].initial = uuid.uuid4()

    def clean_upload(self) -> Any:
        upload = self.cleaned_data["upload"]
        if upload.size > settings.ATTACHMENT_MAX_BYTES:
            most = settings.ATTACHMENT_MAX_BYTES // (1024 * 1024)
            raise forms.ValidationError(
                _("The file is larger than %(most)s MB."), params={"most": most}
            )
        try:
            self.plain = made_plain(upload.read())
        except PictureError as error:
            raise forms.ValidationError(SENTENCES[error.reason]) from error
        return upload

    def clean_taken_on(self) -> dt.date | None:
        day: dt.date | None = self.cleaned_data["taken_on"]
        if day and day > self.today:
            raise forms.ValidationError(_("This day is still to come."))
        return day

    def record(self, *, by: User, now: dt.datetime) -> Attachment:
        """Keep the file and write the record; if that fails, the file goes again."""
        assert self.plain is not None
        kept = Attachment(
            client_key=self.cleaned_data["client_key"] or uuid.uuid4(),
            farm=self.row.farm,
            noun=self.row._meta.model_name or "",
            object_id=self.row.pk,
            shows=self.cleaned_data["shows"],
            taken_on=self.cleaned_data["taken_on"],
            type=self.plain.type,
            bytes=len(self.plain.data),
            sha256=hashlib.sha256(self.plain.data).hexdigest(),
        )
        kept.file.save("", ContentFile(self.plain.data), save=False)
        written = None
        try:
            with transaction.atomic():
                written = write(kept, by=by, now=now)
        finally:
            # Not written, or sent before: then nothing points at this file.
            if written is not kept:
                kept.file.storage.delete(str(kept.file.name))
        return written
