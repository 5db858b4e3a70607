"""How the books are kept, and covers under contract."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

KEEPING = {
    Matter.NOT_TOLD: _(
        "%(day)s, %(field)s: that the certifier was told is not written down."
    ),
    Matter.NOT_SETTLED: _("%(day)s, %(field)s: what was done is not written down."),
    Matter.NOBODY_NAMED: _("%(record)s: nobody is named who did it."),
    Matter.NOT_REVIEWED: _("%(record)s: not looked over, after %(days)s days."),
    Matter.WRITTEN_LATE: _(
        "%(record)s: of %(day)s, written down on %(written)s, %(days)s days later."
    ),
    Matter.MORE_SOWN: _("%(seed)s: %(out_kg)s were sown of %(in_kg)s received."),
    Matter.MORE_PUT: _(
        "%(product)s: %(out_kg)s were put on of %(in_kg)s that came or were counted. "
        "Write down the lot it came in, or what was on hand."
    ),
    Matter.MORE_POURED: _(
        "%(product)s: %(out_m3)s were put on of %(in_m3)s that came. Write down the "
        "lot it came in, or what was on hand."
    ),
    Matter.SEED_FROM_COVER: _(
        "Lot %(lot)s from %(field)s is seed of a cover crop. Ask NRCS before it is "
        "threshed under a contract."
    ),
    Matter.COVER_UNMEASURED: _(
        "%(field)s, sown %(sown)s: no weight of seed is written down for %(kind)s."
    ),
    Matter.ENDED_LATE: _(
        "%(kind)s on %(field)s ended on %(ended)s, for a crop sown on %(sown)s; the "
        "guideline for zone %(zone)s says by %(by)s. Ask your agent, and keep advice "
        "in writing."
    ),
    Matter.COVER_NO_DEPTH: _(
        "%(kind)s on %(field)s, drilled on %(sown)s: how deep is not written down."
    ),
    Matter.COVER_NOT_INOCULATED: _(
        "%(field)s, sown %(sown)s: no inoculant is written down for %(kind)s. Write "
        "which it was, or in a reply why the ground needs none."
    ),
    Matter.COVER_NOT_ENDED: _(
        "%(kind)s on %(field)s, sown %(sown)s: %(crop)s was sown there on %(day)s, and "
        "how and when the cover ended is not written down. Write its end; if it is "
        "meant to live on beside the crop, say so in a reply."
    ),
    Matter.SEASON_EMPTY: _("Nothing is written down from %(first)s to %(last)s."),
}
