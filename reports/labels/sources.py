"""Words for how near a source stands to the measurement."""

from django.utils.translation import gettext_lazy as _

from reports.calc.sources import Tier

TIERS = {
    Tier.A: _("regulation, Extension text or reviewed paper"),
    Tier.B: _("copy or summary of such a text"),
    Tier.C: _("seed firm or garden page"),
    Tier.M: _("from memory, unverified"),
    Tier.COMMON: _("common practice"),
    Tier.ASSUMED: _("our own assumption"),
    Tier.OURS: _("our own arithmetic"),
}
