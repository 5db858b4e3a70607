"""A licence, typed from the card or letter."""

from __future__ import annotations

from typing import Any

from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from records.models import ApplicatorLicence


class ApplicatorLicenceForm(RecordForm[ApplicatorLicence]):
    class Meta:
        model = ApplicatorLicence
        fields = ["holder", "number", "state", "category", "since", "until", "notes"]
        help_texts = {
            "number": _("As it is written down with what was put on."),
            "until": _("A licence that was renewed is written down anew."),
        }

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        first, last = cleaned.get("since"), cleaned.get("until")
        if first and last and last < first:
            self.add_error("until", _("It would be over before it begins."))
        return cleaned
