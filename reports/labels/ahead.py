"""Words for what lies ahead: windows, their reasons, and what cannot be said."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.ahead import (
    Caveat,
    SpreadOf,
    Why,
    WhyOut,
    WindowKind,
    WindowState,
)

SPREAD = {
    SpreadOf.YEARS: _("one year in ten to nine years in ten"),
    SpreadOf.FIGURES: _("the range in print, not odds"),
    SpreadOf.SEEN: _("seen"),
    SpreadOf.NONE: _("not known"),
}
CAVEAT = {
    Caveat.NO_WEATHER: _(
        "No weather is on record: dates go by days, and no odds of frost are told."
    ),
    Caveat.TOO_FEW_YEARS: _(
        "Fewer than five years are on record: dates go by days, and no odds are told."
    ),
    Caveat.FEW_YEARS: _(
        "Fewer than ten years are on record: take the odds for rough ones."
    ),
    Caveat.YEARS_LEFT_OUT: _(
        "Years with gaps in their record at this time of year are left out."
    ),
    Caveat.BY_DAYS: _(
        "No stage is reckoned by heat: dates go by days, alike in every year. Their "
        "range is that of the figures in print."
    ),
    Caveat.NO_FROST_ON_RECORD: _(
        "No frost cold enough to kill it is on record within a year."
    ),
    Caveat.SOUTHERN_FIGURES: _(
        "The farm lies south of the equator: figures for a time of sowing were moved "
        "by half a year."
    ),
    Caveat.PAST_EVERY_WINDOW: _("Every window is past."),
    Caveat.BLOOM_UNKNOWN: _("No figure says when it flowers."),
    Caveat.CLOSURE_ASSUMED: _(
        "No figure says when its canopy closes; a time after coming up is assumed."
    ),
    Caveat.KILL_ASSUMED: _(
        "No figure says which frost kills it; it is taken to grow until thirty days "
        "are too cold on average."
    ),
    Caveat.SEED_UNKNOWN: _("No figure says when its seed can sprout."),
    Caveat.SOIL_FROM_AIR: _("The warmth of the soil is guessed from that of the air."),
    Caveat.SOIL_UNKNOWN: _("No figure says how warm the soil must be."),
}
WINDOW = {
    WindowKind.SOW: _("Sow"),
    WindowKind.CUT: _("Cut, to grow back"),
    WindowKind.END_MOWING: _("End it by mowing"),
    WindowKind.END_WORKING_IN: _("End it by working in"),
    WindowKind.FROST_KILL: _("Frost kills it"),
    WindowKind.LARGE_SEED_ON_TOP: _("Large seed into residue left on top"),
    WindowKind.PLANTS_ON_TOP: _("Transplants into residue left on top"),
    WindowKind.SMALL_SEED_WORKED_IN: _("Small seed after working in"),
    WindowKind.LARGE_SEED_WORKED_IN: _("Large seed after working in"),
    WindowKind.PLANTS_WORKED_IN: _("Transplants after working in"),
    WindowKind.SELF_SOWN: _("A self-sown stand, if it is let set seed"),
}
WHY = {
    Why.TODAY: _("from today on"),
    Why.SPRING_FROST: _("earlier, a spring frost would too often kill it"),
    Why.SOIL_COLD: _("the soil is too often too cold"),
    Why.FROST_BEFORE_BLOOM: _("later, frost would too often come before it blooms"),
    Why.FROST_BEFORE_COVER: _("later, cold would too often come before it closes"),
    Why.NO_END_IN_A_YEAR: _("no such frost within a year"),
    Why.CANOPY_CLOSED: _("its canopy has closed"),
    Why.BLOOM_LIMIT: _("later, too much of it is in bloom to grow back"),
    Why.AFTER_FIRST_FLOWER: _("so many days after first flower"),
    Why.DAYS_AFTER_FLOWER_UP: _("the last of the days after first flower"),
    Why.SEED_CAN_SPROUT: _("the day before its seed can sprout"),
    Why.SOURCE_MOWING: _("the source says so for mowing"),
    Why.SOURCE_WORKING_IN: _("the source says so for working in"),
    Why.KILLING_FROST: _("the frost that kills it"),
    Why.RESIDUE_WAIT: _("the wait after the end of the stand"),
    Why.SEED_SHED: _("its seed has fallen and come up"),
    Why.NOT_KNOWN: _("not known"),
}
STATE = {
    WindowState.OPEN: _("open"),
    WindowState.OPENING: _("opens within a week"),
    WindowState.CLOSING: _("closes within a week"),
    WindowState.MISSED: _("missed"),
    WindowState.LATER: _("later"),
    WindowState.OVER: _("over"),
}
LEFT_OUT = {
    WhyOut.THIS_YEAR: _(
        "this year: what was read of it counts as it came, and past years stand in "
        "from there"
    ),
    WhyOut.GAPS: _(
        "left out wherever more than a tenth of the days looked through were not read"
    ),
    WhyOut.BEGINS: _("the record begins within it; left out for days before that"),
}
LISTS = (SPREAD, CAVEAT, WINDOW, WHY, STATE, LEFT_OUT)
