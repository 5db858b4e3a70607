"""Words for records that are missing."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.now import Missing

MISSING = {
    Missing.PLANNED_NOT_SOWN: _("Planned, and no sowing is written down."),
    Missing.NEVER_SEEN_UP: _("Sown, and nobody wrote down that it came up."),
    Missing.PAST_SEED: _("Its seed can sprout by now, and no end is written down."),
    Missing.NO_REASON: _("Ended, without the reason for the residue choice."),
}
LISTS = (MISSING,)
