"""Words for an order of seed: how it was worked out, and what holds it."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.order import OfferTrouble, Outcome, Rule

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
LISTS = (RULE, OUTCOME, OFFER_TROUBLE)
