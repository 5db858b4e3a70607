"""Sentences on the two ways to leave a residue."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.choice import NoChoice, Reason

REASON = {
    Reason.ON_TOP_HOLDS_WEEDS_LONGER: _("Left on top, it holds weeds back longer."),
    Reason.ON_TOP_COVERS_SOIL: _("Left on top, it keeps the soil covered longer."),
    Reason.WORKED_IN_RELEASES_SOONER: _("Worked in, it rots and feeds sooner."),
    Reason.WORKED_IN_RELEASES_MORE_NITROGEN: _(
        "Worked in, more of its nitrogen reaches the next crop."
    ),
    Reason.WORKED_IN_PLANTS_SOONER: _("Worked in, small seed can be sown sooner."),
    Reason.BUCKWHEAT_MULCH_NEVER_BETTER_THAN_PARTIAL: _(
        "Buckwheat straw is thin and rots quickly: its mulch is never counted as more "
        "than a partial hold on weeds."
    ),
    Reason.LOW_N_MAY_TIE_UP: _(
        "The residue is poor in nitrogen: worked in, it may tie up nitrogen for a time "
        "and starve the next crop."
    ),
    Reason.THIN_EVIDENCE_DECAY: _(
        "Few measurements stand behind the rate at which this kind rots."
    ),
    Reason.HANDBOOK_MASS: _(
        "The mass comes from a handbook; no frame was cut and weighed here."
    ),
    Reason.NITROGEN_FROM_REGION_ELSEWHERE: _(
        "The nitrogen rule was measured in another region."
    ),
    Reason.COVER_LATE_IN_DECAY_DOUBTFUL: _(
        "Ground cover is doubtful once most of the residue has rotted."
    ),
    Reason.WEATHER_ENDS_BEFORE_CURVE: _(
        "The weather record ends before the last days shown; average days stand in."
    ),
    Reason.NO_WEATHER: _(
        "No weather is on record: the residue is taken to rot by the calendar."
    ),
}
NO_CHOICE = {
    NoChoice.MASS_UNKNOWN: _(
        "Not compared: the mass of the stand was not weighed, and no handbook figure "
        "is on record for it."
    ),
    NoChoice.DECAY_UNKNOWN: _(
        "Not compared: no figure says how quickly this kind rots."
    ),
}
LISTS = (REASON, NO_CHOICE)
