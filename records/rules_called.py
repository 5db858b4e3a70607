"""What the numbers of rules are called, for records that name one by its key."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

SETS: Mapping[str, Promise] = {
    "organic_us": _("US organic, 7 CFR 205"),
    "organic_eu": _("EU organic, Regulation 2018/848"),
    "organic_ca": _("Canada organic, CAN/CGSB-32.310"),
    "workers": _("Worker protection, 40 CFR 170"),
    "restricted": _("Restricted-use pesticides, 7 CFR 110"),
    "food": _("Produce safety, 21 CFR 112"),
    "cover_crop": _("Cover crop practice, NRCS 340"),
    "insurance": _("Termination guideline for insured dry land"),
    "seed_law": _("Seed tags, Federal Seed Act and 7 CFR 201"),
    "label": _("Labels in hand"),
    "books": _("The books themselves"),
}
