"""What a check found, in a sentence with the finding's own values."""

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
    Matter.EDGE_OPEN: _(
        "%(field)s, %(side)s: nothing is written down that keeps it apart from "
        "“%(neighbour)s”."
    ),
    Matter.EDGE_NARROW: _(
        "%(field)s, %(side)s: the buffer is %(buffer_m)s wide; %(asked_m)s is asked "
        "for, or a barrier."
    ),
}
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
    Matter.COMPOST_ON_TOP: _(
        "%(product)s on %(field)s counts as raw manure while its batch lacks what is "
        "said above, and was not worked in before lot %(lot)s was harvested."
    ),
    Matter.COMPOST_SOON: _(
        "%(product)s counts as raw manure while its batch lacks what is said above: "
        "lot %(lot)s from %(field)s came %(days)s days after it was worked in, and "
        "%(need)s days are asked for."
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
}
INPUTS = {
    Matter.NOT_APPROVED: _(
        "%(product)s was put on %(field)s on %(applied)s with no approval written "
        "down. Ask your certifier; it may end the organic status of this ground."
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
    Matter.TARP_LEFT: _(
        "%(field)s: the tarp of %(ended)s was not taken off by the end of the season."
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
SPRAYS = {
    Matter.ENTERED_EARLY: _(
        "%(field)s: work on %(day)s, while the interval of %(product)s ran until "
        "%(over)s. Read the label; there are exceptions for early entry."
    ),
    Matter.PLANNED_EARLY: _(
        "%(field)s: work is planned for %(day)s, and the interval of %(product)s runs "
        "until %(over)s. Read the label."
    ),
    Matter.INTERVAL_UNKNOWN: _(
        "%(product)s: the re-entry interval of its label is not written down."
    ),
    Matter.HOURS_UNKNOWN: _(
        "%(product)s on %(field)s, %(applied)s: from when until when is not written "
        "down."
    ),
    Matter.POSTED_NOT: _(
        "%(product)s on %(field)s, %(applied)s: that it was posted by %(due)s is not "
        "written down."
    ),
    Matter.POSTED_LATE: _(
        "%(product)s on %(field)s, %(applied)s was posted after %(due)s."
    ),
    Matter.HARVESTED_EARLY: _(
        "Lot %(lot)s from %(field)s was harvested %(days)s days after %(product)s; its "
        "label, as typed, asks for %(need)s."
    ),
    Matter.PREHARVEST_UNKNOWN: _(
        "%(product)s: the pre-harvest interval of its label is not written down, and "
        "lot %(lot)s followed after %(days)s days."
    ),
    Matter.PLANT_BACK_SHORT: _(
        "%(kind)s on %(field)s, sown %(sown)s, was grazed, hayed or threshed on "
        "%(used)s; %(product)s went on there on %(applied)s, and its label, as typed, "
        "asks for %(months)s months. Ask the licensed applicator."
    ),
    Matter.PLANT_BACK_UNKNOWN: _(
        "%(kind)s on %(field)s, sown %(sown)s, was grazed, hayed or threshed on "
        "%(used)s; %(product)s went on there on %(applied)s. Read its label: a stand "
        "that is eaten or threshed is no longer a cover crop."
    ),
    Matter.LABEL_NOT_READ: _(
        "%(animals)s went onto %(field)s, where %(product)s was put on %(applied)s; "
        "that its label was read first is not written down."
    ),
    Matter.RESTRICTED_NO_NUMBER: _(
        "%(product)s on %(field)s, %(applied)s: no registration number."
    ),
    Matter.RESTRICTED_NO_CROP: _(
        "%(product)s on %(field)s, %(applied)s: no crop or site is named."
    ),
    Matter.RESTRICTED_NO_NAME: _(
        "%(product)s on %(field)s, %(applied)s: no certified applicator is named."
    ),
    Matter.RESTRICTED_LATE: _(
        "%(product)s on %(field)s, %(applied)s was written down on %(written)s; "
        "within %(need)s days is asked for."
    ),
    Matter.LICENCE_MISSING: _(
        "%(product)s, restricted use, on %(field)s, %(applied)s: no licence is written "
        "down."
    ),
}
LOTS = {
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
    Matter.SEED_FROM_COVER: _(
        "Lot %(lot)s from %(field)s is seed of a cover crop. Ask NRCS before it is "
        "threshed under a contract."
    ),
    Matter.COVER_UNMEASURED: _(
        "%(field)s, sown %(sown)s: no weight of seed is written down for %(kind)s."
    ),
    Matter.ENDED_LATE: _(
        "%(kind)s on %(field)s ended on %(ended)s, before a crop sown on %(sown)s; the "
        "guideline for zone %(zone)s says by %(by)s. Ask your agent, and keep advice "
        "in writing."
    ),
    Matter.SEASON_EMPTY: _("Nothing is written down from %(first)s to %(last)s."),
}
MATTER = {**LAND, **SOIL, **SEED, **INPUTS, **SPRAYS, **LOTS, **KEEPING}
