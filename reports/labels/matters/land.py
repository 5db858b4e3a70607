"""Land and its edges."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

LAND = {
    Matter.LAND_NOT_YET: _(
        "Lot %(lot)s from %(field)s is called organic, but a substance was last used "
        "there on %(last_used)s: the ground counts as clean from %(clean_from)s."
    ),
    Matter.LAND_SOWN_EARLY: _(
        "Lot %(lot)s from %(field)s is called organic, but its crop went in on "
        "%(anchor)s: the ground counts as clean from %(clean_from)s."
    ),
    Matter.LAND_CUT_EARLY: _(
        "Lot %(lot)s from %(field)s is called organic, but its stand was first "
        "harvested on %(anchor)s: for a perennial the ground counts as clean from "
        "%(clean_from)s."
    ),
    Matter.LAND_JUST: _(
        "Lot %(lot)s from %(field)s was harvested within days of %(clean_from)s, the "
        "day from which the ground counts as clean."
    ),
    Matter.LAND_UNKNOWN: _(
        "%(field)s: nobody says what was used from %(first)s to %(last)s, so lot "
        "%(lot)s does not count as eligible."
    ),
    Matter.STATEMENTS_DISAGREE: _(
        "%(field)s: the statements of %(signer)s and %(other_signer)s do not agree "
        "about %(first)s to %(last)s."
    ),
    Matter.STATEMENTS_OVERLAP: _(
        "%(field)s: two statements tell of %(first)s to %(last)s."
    ),
    Matter.NO_OUTLINE: _("%(field)s has no outline written down."),
    Matter.LAND_IDLE: _(
        "%(field)s is in transition to organic, and nothing is written down of it "
        "from %(first)s to %(last)s: no cover, no tillage, no look."
    ),
    Matter.EDGES_UNTOLD: _(
        "%(field)s: what lies on its sides, and what keeps it apart, is not written "
        "down."
    ),
    Matter.EDGE_OPEN: _(
        "%(field)s, %(side)s: nothing is written down that keeps it apart from "
        "“%(neighbour)s”."
    ),
    Matter.EDGE_NARROW: _(
        "%(field)s, %(side)s: the buffer is %(buffer_m)s wide; %(asked_m)s is asked "
        "for, or a barrier."
    ),
}
