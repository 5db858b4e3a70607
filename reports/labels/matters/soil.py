"""Manure and compost."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

SOIL = {
    Matter.MANURE_ON_TOP: _(
        "%(product)s on %(field)s, put on %(applied)s, was not worked in before lot "
        "%(lot)s was harvested. The interval has not begun."
    ),
    Matter.MANURE_SOON: _(
        "Lot %(lot)s from %(field)s was harvested %(days)s days after %(product)s was "
        "worked in; %(need)s days are asked for, so from %(earliest)s."
    ),
    Matter.GRAZED_SOON: _(
        "Lot %(lot)s from %(field)s was harvested %(days)s days after animals were "
        "there (%(animals)s). Ask your certifier how droppings count; %(need)s days "
        "are asked for after raw manure."
    ),
    Matter.NITROGEN_OVER: _(
        "Manure and compost of the season bring %(nitrogen)s kg of nitrogen a hectare "
        "over the land under organic rules; at most %(need)s is asked for. That number "
        "is cited from memory, unverified: check the current text. The last of it went "
        "on %(field)s."
    ),
    Matter.NITROGEN_UNKNOWN: _(
        "%(product)s on %(field)s, %(applied)s: its nitrogen or its weight is not "
        "written down, so it is left out of the season’s sum."
    ),
    Matter.COMPOST_NO_BATCH: _(
        "%(product)s on %(field)s, %(applied)s: neither a batch with its heat and "
        "turnings nor an approval is written down. If there is manure in it, it counts "
        "as raw manure."
    ),
    Matter.COMPOST_ON_TOP: _(
        "%(product)s on %(field)s counts as raw manure while its batch is short of "
        "heat, turnings or C:N, and was not worked in before lot %(lot)s was harvested."
    ),
    Matter.COMPOST_SOON: _(
        "%(product)s counts as raw manure while its batch is short of heat, turnings "
        "or C:N: lot %(lot)s from %(field)s came %(days)s days after it was worked in, "
        "and %(need)s days are asked for."
    ),
    Matter.COMPOST_NO_LOG: _(
        "Batch %(batch)s has no temperatures written down. If there is manure in it, "
        "it counts as raw manure."
    ),
    Matter.COMPOST_DAYS: _(
        "Batch %(batch)s has %(days)s days within the range of heat; %(need)s are "
        "asked for."
    ),
    Matter.COMPOST_TURNINGS: _(
        "Batch %(batch)s was turned %(turnings)s times while hot; %(need)s are asked "
        "for."
    ),
    Matter.COMPOST_RATIO: _(
        "Batch %(batch)s: C:N at the start is %(ratio)s; between %(low)s and %(high)s "
        "is asked for."
    ),
}
