"""Words for planned sowings: what a check finds, and how they turned out."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.plans import Came, Check

CHECK = {
    Check.GOOD: _("Within its window, and nothing else holds the ground."),
    Check.UNLIKELY: _("Cold would too often come before it has grown far enough."),
    Check.SOIL_COLD: _("The soil is too often too cold on this day."),
    Check.OVERLAPS: _("Something else holds the ground on this day."),
    Check.NOT_KNOWN: _("The years on record tell nothing of this."),
}
CAME = {
    Came.ON_TIME: _("within a week of the plan"),
    Came.LATE: _("later than planned"),
    Came.EARLY: _("sooner than planned"),
    Came.NOT_YET: _("still to come"),
    Came.NEVER: _("planned, not sown"),
    Came.UNPLANNED: _("sown without a plan"),
}
LISTS = (CHECK, CAME)
