"""Inputs, and how stands were ended."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

INPUTS = {
    Matter.NOT_APPROVED: _(
        "%(product)s was put on %(field)s on %(applied)s with no approval written "
        "down. Ask your certifier; it may end the organic status of this ground."
    ),
    Matter.GREW_UNAPPROVED: _(
        "Lot %(lot)s from %(field)s is called organic; %(product)s was put on there on "
        "%(applied)s with no approval written down. Hold the lot and ask your "
        "certifier."
    ),
    Matter.APPROVED_AFTER: _(
        "%(product)s was put on %(field)s on %(applied)s, before it was approved on "
        "%(approved)s."
    ),
    Matter.APPROVAL_RAN_OUT: _(
        "%(product)s was put on %(field)s on %(applied)s, after its approval ran out "
        "on %(until)s."
    ),
    Matter.APPLICATOR_UNNAMED: _(
        "%(product)s on %(field)s, %(applied)s: nobody is named who put it on."
    ),
    Matter.APPLICATOR_NO_ADDRESS: _(
        "%(product)s on %(field)s, %(applied)s: no address is known for %(who)s. Write "
        "a contractor down with an address, or the farm’s own."
    ),
    Matter.METHOD_UNNAMED: _(
        "%(product)s on %(field)s, %(applied)s: how it was put on is not written down."
    ),
    Matter.TARGET_UNNAMED: _(
        "%(product)s on %(field)s, %(applied)s: what it was put on against is not "
        "written down, nor what was tried before."
    ),
    Matter.SPRAYED_OUT: _(
        "%(kind)s on %(field)s was sprayed out on %(ended)s with nothing approved "
        "written down for it. Hold what grows there, and ask your certifier."
    ),
    Matter.BURNED: _(
        "%(kind)s on %(field)s was burned on %(ended)s. Burning residue to be rid of "
        "it is generally not allowed: ask your certifier and the fire authority."
    ),
    Matter.BURNED_ASK: _(
        "%(kind)s on %(field)s was burned on %(ended)s (“%(reason)s”). Ask your "
        "certifier whether that reason stands."
    ),
}
