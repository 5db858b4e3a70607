"""Seed, its search and its suppliers."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

SEED = {
    Matter.SEED_NO_CERTIFICATE: _(
        "%(seed)s is called organic and was sown on %(sown)s, but no certificate is "
        "written down."
    ),
    Matter.SEED_NO_SEARCH: _(
        "%(seed)s is not organic and was sown on %(field)s on %(sown)s with no search "
        "for organic seed written down. Price is not taken as a reason."
    ),
    Matter.SEARCH_FEW: _(
        "The search for %(seed)s names %(asked)s sources; %(need)s are commonly asked "
        "for."
    ),
    Matter.SEARCH_LATE: _(
        "The search for %(seed)s was not finished before it was sown on %(sown)s."
    ),
    Matter.SEARCH_OLD: _(
        "The search for %(seed)s is old for seed sown on %(sown)s: it is made again "
        "each time."
    ),
    Matter.SEARCH_NO_REASON: _(
        "The search for %(seed)s does not say which traits were wanted, or why none "
        "was organic."
    ),
    Matter.TREATED_SOWN: _(
        "Treated seed, %(seed)s (%(treatment)s), was sown on %(field)s on %(sown)s. "
        "Ask your certifier. Do not feed such seed, and keep it from water and animals."
    ),
    Matter.LINE_NO_LOT: _(
        "%(field)s, sown %(sown)s: no seed lot is named for %(kind)s."
    ),
    Matter.TAG_SILENT: _(
        "%(seed)s: purity, germination or test month of the tag is not written down."
    ),
    Matter.TAG_NO_WEEDS: _(
        "%(seed)s: which noxious weeds the tag names, or that it names none, is not "
        "written down."
    ),
    Matter.TAG_OLD: _(
        "%(seed)s came on %(received)s; by its test month it could travel between "
        "States until %(last)s. That is the seller’s duty: have it tested again, or "
        "sow more."
    ),
    Matter.INOCULANT_UNNAMED: _(
        "%(kind)s on %(field)s, sown %(sown)s, is said to be inoculated; no inoculant "
        "is written down."
    ),
    Matter.INOCULANT_OLD: _(
        "The inoculant on %(kind)s was good until %(until)s; it was sown on "
        "%(field)s on %(sown)s."
    ),
    Matter.SUPPLIER_UNKNOWN: _(
        "%(seed)s is called organic; its supplier “%(supplier)s” is not among those "
        "whose certificate was looked up."
    ),
    Matter.SUPPLIER_UNCHECKED: _(
        "%(supplier)s: no certificate was looked up in the year before %(seed)s was "
        "bought on %(bought)s."
    ),
    Matter.SUPPLIER_LAPSED: _(
        "%(supplier)s: the certificate had run out when %(seed)s was bought on "
        "%(bought)s."
    ),
    Matter.NO_DOCUMENT: _("%(seed)s: no tag, invoice or picture is kept with it."),
    Matter.NO_LABEL: _(
        "%(product)s was put on %(field)s on %(applied)s: neither its label nor its "
        "safety data sheet is kept with it."
    ),
    Matter.ENGINEERED_UNSAID: _(
        "%(seed)s was sown on %(field)s on %(sown)s: engineered varieties of this kind "
        "are sold, the seed is not organic or was saved, and neither a statement nor a "
        "test shows that it is none of them."
    ),
    Matter.ENGINEERED_SAID_LATE: _(
        "%(seed)s was sown on %(field)s on %(sown)s: what shows that it is not "
        "engineered is of %(said)s, after it was sown."
    ),
}
