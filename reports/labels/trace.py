"""Words for the way from seed to sale, and for balances."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.trace import Goods, Link, Missing

LINK = {
    Link.SUPPLIER: _("supplier"),
    Link.SEED: _("seed lot"),
    Link.INPUT: _("input product"),
    Link.INPUT_LOT: _("lot of an input"),
    Link.PUT_ON: _("application"),
    Link.FIELD: _("field"),
    Link.PLANTING: _("planting"),
    Link.ENDED: _("termination"),
    Link.HARVEST: _("harvest lot"),
    Link.STORE: _("storage"),
    Link.SALE: _("sale or use"),
}
MISSING = {
    Missing.SUPPLIER: _("its supplier"),
    Missing.CERTIFICATE: _("its organic certificate"),
    Missing.SEED_LOT: _("the lot of its seed"),
    Missing.PLANTING: _("the planting it came from"),
    Missing.STORE_OR_SALE: _("where it was stored or sold"),
    Missing.INVOICE: _("its invoice"),
    Missing.INPUT_LOT: _("the lot of the product"),
    Missing.DELIVERY: _("when that lot came"),
}
GOODS = {
    Goods.SEED: _("seed"),
    Goods.INPUTS: _("inputs"),
    Goods.PRODUCT: _("harvest"),
}
LISTS = (LINK, MISSING, GOODS)
