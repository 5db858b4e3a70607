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
            Column(
                _("what"), lambda row: row.words or row.get_what_display(), by="what"
            ),
            Column(_("field"), "field", by="field__name"),
            Column(_("from"), "earliest_on"),
            Column(_("by"), "latest_on"),
            Column(
                _("for whom"),
                lambda row: row.who_for or _("anybody"),
                by="who_for__name",
            ),
            Column(_("settled"), lambda row: row.is_settled, "yes"),
        ),
        order=("latest_on", "pk"),
        related=("field", "who_for", "sowing", "sighting", "ending"),
    ),
)
