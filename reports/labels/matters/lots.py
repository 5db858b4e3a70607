"""Harvest lots and where they went."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

LOTS = {
    Matter.HARVEST_NO_LOT: _(
        "%(kind)s on %(field)s was harvested on %(ended)s; no lot is written down."
    ),
    Matter.HARVEST_NO_PLANTING: _(
        "Lot %(lot)s (%(crop)s, %(field)s, %(harvested)s) names no planting."
    ),
    Matter.HARVEST_NO_SEED: _(
        "Lot %(lot)s (%(crop)s, %(field)s): its planting does not name every seed lot."
    ),
    Matter.HARVEST_NO_STORE: _(
        "Lot %(lot)s (%(crop)s, %(field)s, %(harvested)s): where it went is not "
        "written down."
    ),
    Matter.SALE_NO_INVOICE: _("Lot %(lot)s to %(buyer)s: no invoice is named."),
    Matter.HARVEST_BEFORE_SOWING: _(
        "Lot %(lot)s was harvested on %(harvested)s, before its planting was sown on "
        "%(sown)s."
    ),
    Matter.SOLD_BEFORE_HARVEST: _(
        "Lot %(lot)s was stored or sold on %(day)s, before it was harvested on "
        "%(harvested)s."
    ),
    Matter.BUFFER_AS_ORGANIC: _(
        "Lot %(lot)s comes from a buffer (%(field)s) and is called organic."
    ),
    Matter.TRANSITION_AS_ORGANIC: _(
        "Lot %(lot)s comes from ground in transition (%(field)s) and is called organic."
    ),
    Matter.NOT_ORGANIC_AS_ORGANIC: _(
        "Lot %(lot)s comes from ground that is not organic (%(field)s) and is called "
        "organic."
    ),
    Matter.STORED_TOGETHER: _(
        "Lot %(lot)s, not organic, went into a store on %(day)s together with an "
        "organic lot."
    ),
    Matter.SOLD_ABOVE_STATUS: _(
        "Lot %(lot)s went to %(buyer)s under a status above its own."
    ),
    Matter.NOT_CLEANED: _(
        "%(machine)s was used on organic ground or goods on %(day)s, after other use "
        "on %(before)s, with no clean-out written down in between."
    ),
    Matter.MORE_GONE: _("Lot %(lot)s: %(out_kg)s went out of %(in_kg)s harvested."),
}
