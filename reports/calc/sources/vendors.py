"""Seed firms' and garden pages, used where nothing better was found."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("V-ADVAG", Tier.C, "Advanced Ag Systems", "Winter triticale forage", None, "web page", "https://advancedagsys.com/winter-triticale-forage/", True),
    Source("V-ALLIED", Tier.C, "Allied Seed", "Triticale", None, "web page", "https://www.alliedseed.com/cover-crop/triticale/", True),
    Source("V-BAILEY", Tier.C, "Bailey Seed", "Ground covered by a pound of seed", None, "web page", "http://baileyseed.com/resources/cover-crop/", True),
    Source("V-BBB", Tier.C, "BBB Seed", "Crimson clover and rye", None, "web page", "https://bbbseed.com/", True),
    Source("V-BIOTILL", Tier.C, "biotill", "Austrian winter pea", None, "web page", "https://biotill.com/?p=290", True),
    Source("V-BLACKJ", Tier.C, "Blackjack Wildlife", "Buckwheat", None, "web page", "https://blackjackwildlife.com/products/buckwheat", True),
    Source("V-BYRON", Tier.C, "Byron Seeds", "Species pages", None, "web page", "http://byronseeds.net/our_products/cover_crops/index.php", True),
    Source("V-CCC", Tier.C, "covercropcentral.net", "Crimson clover", None, "web page", "https://covercropcentral.net/crimson-clover", True),
    Source("V-CCZA", Tier.C, "covercrops.co.za", "Buckwheat", None, "web page", "https://www.covercrops.co.za/buckwheat", True),
    Source("V-CHESAK", Tier.C, "Chesak Seed House", "German millet", None, "web page", "https://chesakseedhouse.com/product/german-millet", True),
    Source("V-COTS", Tier.C, "Cotswold Seeds", "Berseem", None, "web page", "https://cotswoldseeds.com/species/132/berseem-clover", True),
    Source("V-COVCOM", Tier.C, "covercrop.com", "Radish", None, "web page", "http://covercrop.com/index.php/cover-crops/radishes", True),
    Source("V-DLF", Tier.C, "DLF / La Crosse", "Hairy vetch", None, "web page", "https://us.dlf.com/la-crosse-seed/wildlife-conservation/species/hairy-winter-vetch", True),
    Source("V-FEDCO", Tier.C, "Fedco", "Mustard", None, "web page", "https://fedcoseeds.com/ogs/mustard-8070", True),
    Source("V-NICHOLS", Tier.C, "Nichols Garden Nursery", "Species page", None, "web page", "https://nicholsgardennursery.com/", True),
    Source("V-NOFAMA", Tier.C, "NOFA/Mass store", "Tillage radish", None, "web page", "https://www.nofamass.store/product-page/tillage-radish-conv", True),
    Source("V-ONEAL", Tier.C, "O'Neal's", "Pearl millet", None, "web page", "https://onealsfarmandgarden.com/", True),
    Source("V-ROUND", Tier.C, "Roundstone", "Austrian winter pea", None, "web page", "https://brittanycwray7.wixsite.com/roundstone-native-se/", True),
    Source("V-SOUTHEXP", Tier.C, "Southern Exposure Seed Exchange", "Buckwheat", None, "web page", "http://www.southernexposure.com/buckwheat-1-lb-p-1093.html", True),
    Source("V-SUSTAIN", Tier.C, "sustain.farm", "Species pages", None, "web page", "https://sustain.farm/", True),
    Source("V-SWSEED", Tier.C, "Southwest Seed", "Phacelia", None, "web page", "http://southwestseed.com/cover-crop/phacelia", True),
    Source("V-TENRIV", Tier.C, "Ten Rivers / Kenagy farm", "Phacelia", None, "web page", "https://www.tenriversmarketplace.com/products/phacelia-organic-local-product", True),
    Source("V-TERRIT", Tier.C, "Territorial Seed", "Phacelia", None, "web page", "https://territorialseed.com/", True),
    Source("V-TERRVET", Tier.C, "giftsforfoed.shop", "Hairy vetch", None, "web page", "https://giftsforfoed.shop/product/hairy-vetch-online", True),
    Source("V-UFSEED", Tier.C, "UF Seeds", "Millet", None, "web page", "https://www.ufseeds.com/millet", True),
    Source("V-WILDG", Tier.C, "Wild Garden Seed", "Phacelia", None, "web page", "https://www.wildgardenseed.com/index.php?cPath=93_90", True),
)
