"""Licences: nothing of them is for the crew."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS, PRIVY
from records import filters, forms, models
from records.nouns.base import Column, Noun

NOUNS = (
    Noun(
        "applicator-licences",
        models.ApplicatorLicence,
        forms.ApplicatorLicenceForm,
        filters.ApplicatorLicenceFilter,
        (
            Column(_("name on the licence"), "holder"),
            Column(_("number"), "number"),
            Column(_("State"), "state"),
            Column(_("category"), "category"),
            Column(_("holds from"), "since"),
            Column(_("holds until"), "until"),
        ),
        order=("holder", "-until", "pk"),
        writers=MANAGERS,
        readers=PRIVY,
    ),
)
