"""Copies and summaries of handbooks, bulletins and tables."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("AZ-197002", Tier.B, "University of Arizona Extension", "Sudangrass hay, 197002", None, "mirrored", "https://fliphtml5.com/qenl/ldoo/basic", True),
    Source("BUSHEL-STATES", Tier.B, "sizes.com", "Bushel weights by state, nineteenth century, with Revised Statutes 2919", None, "web table", "https://www.sizes.com/units/bushel_US_as_mass.htm", True),
    Source("CLEMSON20", Tier.B, "Clemson Extension", "Fall garden cover crops", 2020, "newspaper column", "https://www.dillonheraldonline.com/2020/09/27/forage-radish/", True),
    Source("EORG-VETCH", Tier.B, "eOrganic", "Hairy vetch, node 469", None, "adapted from Managing cover crops profitably", "https://eorganic.org/node/469", True),
    Source("FAGERIA85", Tier.B, "Fageria", "C/N ratio of straw of major cereal and legume crops, table 8.5", None, "book table on a web copy", "http://what-when-how.com/Tutorial/topic-1587nvogh30/Nitrogen-Management-in-Crop-Production-364.html", True),
    Source("FARMPROG12", Tier.B, "Farm Progress", "Summary of the SARE and Cornell buckwheat result LNE05-214", 2012, "28 December 2012", "http://farmprogress.com/story-want-know-cover-crops-here-9-72055-printversion", True),
    Source("FL-SUNN", Tier.B, "Florida county Extension", "The many uses of sunn hemp", 2018, "newspaper column", "https://archive.crestviewbulletin.com/2018/05/02/the-many-uses-of-sunn-hemp", True),
    Source("HARRINGTON54", Tier.B, "Harrington and Minges", "Vegetable seed germination: days to emergence by soil temperature", 1954, "California Extension leaflet, as tabulated in Knott's handbook and a teaching manual", "https://issuhub.com/view/index?id=3972&pageIndex=132", True),
    Source("HOORMAN14", Tier.B, "J. Hoorman", "Sorghum sudan after wheat harvest", 2014, "Ohio soil-health column", "https://blog.hoormansoilhealth.com/2014/04/sorghum-sudan-after-wheat-harvest.html", True),
    Source("JEFF-BW", Tier.B, "Jefferson Institute", "Buckwheat crop guide", None, "text on a seed page", "https://www.geneticseed.com/comm_viewproduct.aspx?ID=85", True),
    Source("MANSEED", Tier.B, "The manual of seed saving", "Buckwheat", None, "entry on a web copy", "http://what-when-how.com/Tutorial/topic-604cggt/The-Manual-of-Seed-Saving-255.html", True),
    Source("MCCP2", Tier.B, "SARE", "Managing cover crops profitably, 2nd edition", 1998, "single pages on a page-flip site", "https://www.yumpu.com/en/document/view/34614151/managing-cover-crops-profitably-valley-crops-home/", True),
    Source("MCCP3-ARROW", Tier.B, "SARE", "Managing cover crops profitably, 3rd edition: buckwheat", 2007, "chapter text on a seed firm's page", "https://arrowseed.com/individual-species/buckwheat/", True),
    Source("MCCP3-GP", Tier.B, "SARE", "Managing cover crops profitably, 3rd edition, chart 3", 2007, "figures in a drill maker's table", "https://www.greatplainsag.com/en/cover-crops/10085/cover-crop-planting-guidelines", True),
    Source("MCCP3-N", Tier.B, "SARE", "Managing cover crops profitably, page 25: estimating nitrogen", 2007, "page copy; which edition is not certain", "https://www.yumpu.com/en/document/view/34614151/managing-cover-crops-profitably-valley-crops-home/", True),
    Source("MCCP3-N40", Tier.B, "SARE", "Managing cover crops profitably, 3rd edition, chart 2: buckwheat ratings", 2007, "ratings on a seed firm's page, 0-5", "https://north40ag.com/crops/buckwheat/", True),
    Source("MCCP3-RIKER", Tier.B, "SARE", "Managing cover crops profitably, 3rd edition: oats", 2007, "text on a seed firm's page", "https://rikerfarmseed.com/cover-crops/", True),
    Source("MOSJIDIS", Tier.B, "Mosjidis, Burke and Hess", "The facts about sunn hemp toxicity", None, "review abstract, reprinted", "https://petcherseeds.com/pages/sunn-hemp-and-cattle", True),
    Source("MU-G4020", Tier.B, "W. J. Murphy", "Tables for weights and measurement: crops, guide G4020", None, "University of Missouri, as reproduced by R. Rowlett", "http://www.unc.edu/~rowlett/units/scales/bushels.html", True),
    Source("ORYG-GUIDE", Tier.B, "Oregon ryegrass growers", "Annual ryegrass grower guide", None, "mirrored", "https://slideblast.com/rye-grass-guide_59a723a31723dd117c2eeab6.html", True),
    Source("PSU-RC", Tier.B, "Penn State Extension", "Terminating cover crops with a roller crimper in organic grain rotations", None, "mirrored", "https://vdocument.in/terminating-cover-crops-with-a-roller-crimper-in-organic-.html", True),
    Source("PSU-SOLE", Tier.B, "Penn State Extension", "Sole seeding rates and latest dates", None, "table in the trade press", "https://no-tillfarmer.com/articles/9032-plant-cover-crops-asap", True),
    Source("PSU-SUM", Tier.B, "Penn State Extension", "Cover crop considerations after small grain harvest", None, "note in the trade press", "https://www.covercropstrategies.com/articles/665-cover-crop-considerations-after-small-grain-harvest", True),
    Source("SFSP-PHA", Tier.B, "Small Farm Success Project", "Phacelia tanacetifolia, fact sheet 2a", None, "mirrored", "https://docslib.org/doc/7586941/phacelia-tanacetifolia-a-brief-overview-of-a-potentially-useful", True),
    Source("TRIT-TS", Tier.B, "Pennsylvania cover crop tech sheet", "Triticale as a cover crop", None, "mirrored", "https://docslib.org/doc/9132989/using-triticale-as-a-cover-crop", True),
    Source("UCSAREP-HV", Tier.B, "UC SAREP", "Hairy vetch", None, "text copied on a seed page", "https://caribbeangardenseed.com/products/hairy-vetch-seeds-cover-crops-green-manure", True),
    Source("UF-SUNN", Tier.B, "Treadwell and Alligood", "Sunn hemp, HS1126", None, "University of Florida IFAS, mirrored", "https://docslib.org/doc/12064506/", True),
    Source("UT-FROST", Tier.B, "G. Bates", "Beware of frosted sorghums", None, "University of Tennessee, reprinted", "https://www.stockdales.com/ask-an-expert/beware-of-frosted-sorghums/", True),
    Source("WI-FROST", Tier.B, "Extension article", "Fall frost and forages", None, "trade press", "https://www.agproud.com/articles/35189-fall-frost-and-forages", True),
)
