"""What is to be done, and by when."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from records import filters, forms, models
from records.nouns.base import Column, Noun

NOUNS = (
    Noun(
        "duties",
        models.Duty,
        forms.DutyForm,
        filters.DutyFilter,
        (
            Column(_("what"), lambda row: row.words or row.get_what_display()),
            Column(_("field"), lambda row: row.field),
            Column(_("from"), lambda row: row.earliest_on),
            Column(_("by"), lambda row: row.latest_on),
            Column(_("for whom"), lambda row: row.who_for or _("anybody")),
            Column(_("settled"), lambda row: row.is_settled, "yes"),
        ),
        order=("latest_on", "pk"),
        related=("field", "who_for", "sowing", "sighting", "ending"),
    ),
)
