"""Words for an order of seed: how it was worked out, what holds it, what came."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.how_much import ToldBy
from reports.calc.shapes.lot_books import Entry
from reports.calc.shapes.order import OfferTrouble, Outcome, Rule
from reports.calc.shapes.receipt import Difference

RULE = {
    Rule.ORGANIC_FIRST: _("organic seed first"),
    Rule.LEAST_ORDER: _("suppliers’ least orders"),
    Rule.WHOLE_BAGS: _("whole bags"),
    Rule.IN_STOCK: _("days in stock"),
}
OUTCOME = {
    Outcome.NOTHING_NEEDED: _("Nothing has to be bought."),
    Outcome.CHEAPEST: _("No order that covers every planting costs less."),
    Outcome.BEST_FOUND: _("The best order found in the time; a cheaper one may exist."),
    Outcome.NOT_COVERED: _("Not everything can be covered by what is offered."),
}
OFFER_TROUBLE = {
    OfferTrouble.NO_PRICE: _("no price is written down"),
    OfferTrouble.NO_BAG_SIZE: _("no size of bag is written down"),
    OfferTrouble.NO_PURE_LIVE_SEED: _("its pure live seed is nothing, or not known"),
    OfferTrouble.BREAKS_OUT_OF_ORDER: _("its price breaks are out of order"),
}
DIFFERENCE = {
    Difference.NOTHING_YET: _("nothing came yet"),
    Difference.SHORT: _("less came than was ordered"),
    Difference.OVER: _("more came than was ordered"),
    Difference.WEAKER: _("the tag shows less live seed than was offered"),
    Difference.NOT_TESTED: _("no test is written down from the tag"),
    Difference.OTHER_STATUS: _("organic, untreated or treated: not as ordered"),
    Difference.OTHER_VARIETY: _("another variety than was ordered"),
    Difference.NOT_ORDERED: _("not in the order"),
    Difference.OTHER_KINDS: _("other kinds are in it than were ordered"),
    Difference.UNSHOWN: _(
        "engineered varieties are sold: neither a statement nor a test is written down"
    ),
}
ENTRY = {
    Entry.CAME: _("came"),
    Entry.RECEIVED: _("more received"),
    Entry.BROUGHT_BACK: _("brought back from the field"),
    Entry.SOWN: _("sown"),
    Entry.RETURNED: _("returned to the supplier"),
    Entry.PASSED_ON: _("sold or given away"),
    Entry.DISCARDED: _("discarded"),
    Entry.COUNTED: _("counted"),
}
TOLD_BY = {
    ToldBy.RATE: _("its rate of pure live seed"),
    ToldBy.SHARE: _("its share of its full rate, %"),
    ToldBy.WEIGHT: _("its part of the mix by weight"),
    ToldBy.SEEDS: _("live seeds on a square foot (a square metre in metric units)"),
}
LISTS = (RULE, OUTCOME, OFFER_TROUBLE, DIFFERENCE, ENTRY, TOLD_BY)
