"""Films and tarps on the ground."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

LAID = {
    Matter.TARP_LEFT: _(
        "%(field)s: %(material)s, laid on %(laid)s, has no day on which it was taken "
        "off. The season it served ended on %(due)s."
    ),
    Matter.TARP_LATE: _(
        "%(field)s: %(material)s, laid on %(laid)s, was taken off on %(off)s, after "
        "the season it served ended on %(due)s."
    ),
    Matter.TARP_UNDER: _(
        "%(field)s: %(material)s, laid on %(laid)s, still lies under %(kind)s, which "
        "has no end written down. Write the end, or ask your certifier how long it may "
        "lie."
    ),
    Matter.SHEET_WORKED_IN: _(
        "%(field)s: %(material)s, laid on %(laid)s, was worked into the soil. Plastic "
        "is to come off the field: ask your certifier what to do with what is left."
    ),
    Matter.SHEET_PVC: _(
        "%(field)s: %(material)s, laid on %(laid)s. The list of what may be used "
        "leaves PVC out: take it off, and ask your certifier about what grew there."
    ),
    Matter.SHEET_UNAPPROVED: _(
        "%(field)s: %(material)s, laid on %(laid)s, with no approval written down. Ask "
        "your certifier whether it may be used, and whether it may stay."
    ),
}
