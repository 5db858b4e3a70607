"""Words for what matters most of a residue, and which way serves it."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.wishes import Serves, Wish

WISH = {
    Wish.WEEDS: _("weeds held back"),
    Wish.NITROGEN_SOON: _("nitrogen soon"),
    Wish.PLANTING_SOON: _("planting soon"),
    Wish.SOIL_KEPT: _("soil kept in place"),
}
SERVES = {
    Serves.HOLDS_WEEDS: _(
        "Left on top, its mulch holds weeds back for a time; worked in, nothing does."
    ),
    Serves.HOLDS_WEEDS_IN_PART: _(
        "Left on top, its mulch holds weeds back in part, and never better; worked in, "
        "nothing does."
    ),
    Serves.NO_HOLD: _("Neither way holds weeds back once it has ended."),
    Serves.MORE_NITROGEN: _("Worked in, more nitrogen is freed within six weeks."),
    Serves.NITROGEN_ALIKE: _("Both ways free about as much nitrogen."),
    Serves.NITROGEN_TIED_UP: _(
        "It frees no nitrogen soon, and worked in it may tie some up."
    ),
    Serves.PLANTS_SOONER: _("The next crop can go in sooner this way."),
    Serves.PLANTS_ALIKE: _("The next crop can go in on the same day both ways."),
    Serves.COVERS_SOIL: _("Left on top, it shields the soil; worked in, it lies bare."),
    Serves.COVERS_ALIKE: _("Too little is left to shield the soil either way."),
    Serves.NOT_KNOWN: _("No figure tells which way serves this."),
}
LISTS = (WISH, SERVES)
