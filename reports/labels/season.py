"""Words for what a season came to."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.season import (
    Doubt,
    Ground,
    NoWindow,
    StageName,
    TickKind,
    Verdict,
)

GROUND = {
    Ground.LIVING: _("living cover crop"),
    Ground.CASH: _("cash crop"),
    Ground.RESIDUE: _("residue"),
    Ground.BARE: _("bare soil"),
    Ground.NOT_YET: _("not yet"),
}
TICK = {
    TickKind.SOWN: _("sown or set out"),
    TickKind.EMERGED: _("emerged"),
    TickKind.FIRST_FLOWER: _("first flower"),
    TickKind.CUT: _("cut to grow back"),
    TickKind.ENDED: _("ended"),
}
STAGE = {
    StageName.EMERGED: _("emerged"),
    StageName.CLOSED: _("canopy closed"),
    StageName.FIRST_FLOWER: _("first flower"),
    StageName.FULL_BLOOM: _("full bloom"),
    StageName.FIRST_SEED: _("first seed set"),
    StageName.VIABLE_SEED: _("seed that can sprout"),
}
NO_WINDOW = {
    NoWindow.NOT_A_COVER: _("Not counted: this is not a cover crop."),
    NoWindow.NOT_SOWN: _("Not counted: it was not sown."),
    NoWindow.CLOSURE_UNKNOWN: _(
        "Not counted: nobody wrote down when the canopy closed, and no figure says."
    ),
    NoWindow.NOT_YET_CLOSED: _("Not counted yet: the canopy has not closed."),
    NoWindow.ENDED_BEFORE_CLOSURE: _(
        "Not counted: the stand ended before its canopy closed."
    ),
}
DOUBT = {
    Doubt.NO_DATE: _("No date of sowing was written down."),
    Doubt.PLANNED_NOT_SOWN: _("Planned; no sowing was written down."),
    Doubt.WRITTEN_LATE: _("Written down later than the day after it happened."),
    Doubt.SEEN_BEFORE_SOWN: _("Something was seen in it before it was sown."),
    Doubt.ENDED_BEFORE_SOWN: _("It ended before it was sown."),
    Doubt.SOWN_AFTER_TODAY: _("The day of sowing is still to come."),
    Doubt.EMERGENCE_UNKNOWN: _("The day it came up was not seen."),
}
VERDICT = {
    Verdict.WITHIN: _("within the range"),
    Verdict.BELOW: _("below the range"),
    Verdict.ABOVE: _("above the range"),
    Verdict.NO_RANGE: _("no range in print"),
    Verdict.NO_WEIGHT: _("no weight written down"),
}
LISTS = (GROUND, TICK, STAGE, NO_WINDOW, DOUBT, VERDICT)
