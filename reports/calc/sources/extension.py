"""What Extension, SARE and veterinary schools print, apart from Cornell."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("ACES-SUNN", Tier.A, "Alabama Extension", "Sunn hemp", None, "Auburn and Alabama A&M Universities", "https://www.aces.edu/blog/topics/forages-livestock/sunn-hemp/", True),
    Source("CSU-BW", Tier.A, "Colorado State University", "Guide to poisonous plants: buckwheat", None, "Veterinary Medicine", "https://csuvth.colostate.edu/poisonous_plants/Plants/Details/44", True),
    Source("CSU-VETCH", Tier.A, "Colorado State University", "Guide to poisonous plants: hairy vetch", None, "Veterinary Medicine", "https://csuvth.colostate.edu/poisonous_plants/Plants/Details/106", True),
    Source("ILL-FROST", Tier.A, "J. Morrison", "Frost and forage", None, "University of Illinois Extension", "http://livestocktrail.illinois.edu/pasturenet/paperDisplay.cfm?ContentID=10135", True),
    Source("MCCC", Tier.A, "Midwest Cover Crops Council", "Species pages", None, "plant descriptions", "https://www.midwestcovercrops.org/species/", True),
    Source("MOFGA", Tier.A, "E. Sideman", "Using green manures", None, "Maine Organic Farmers and Gardeners Association", "https://www.mofga.org/resources/fact-sheets/using-green-manures/", True),
    Source("MONT-NITR", Tier.A, "Montana State University", "Caution on grazing non-traditional forages", None, "Animal and Range Extension", "https://animalrangeextension.montana.edu/forage/caution_grazing_nontrad_forages.html", True),
    Source("MSU-E2956", Tier.A, "S. Snapp", "Mustards, a brassica cover crop for Michigan, bulletin E2956", 2016, "Michigan State University Extension", "https://msu-prod.dotcmscloud.com/resources/mustards_a_brassica_cover_crop_for_michigan_e2956", True),
    Source("MSU-RC", Tier.A, "Michigan State University", "Roller crimping cereal rye in Michigan", 2026, "after O'Donnell and Perkins 2019", "https://msu-prod.dotcms.cloud/resources/roller-crimping-to-terminate-cereal-rye-cover-crop-in-michigan", True),
    Source("ONT-FROST", Tier.A, "Ontario Forage Network", "Frost injury in sorghum species", 2024, "web page", "https://onforagenetwork.ca/2024/09/21/frost-injury-in-sorghum-species", True),
    Source("OSU-BERS", Tier.A, "Oregon State University", "Berseem clover", None, "forage fact sheet", "https://forages.oregonstate.edu/forages/berseem-clover", True),
    Source("OSU-EM9178", Tier.A, "C. Bouska, E. Dixon and B. Strik", "Growing berries on the Oregon coast: strawberries, EM 9178", 2018, "Oregon State University Extension", "https://fdocuments.us/document/growing-berries-on-the-oregon-coast-strawberries-4-placed-every-12-to-18-inches.html", True),
    Source("PFI-TARP", Tier.A, "Practical Farmers of Iowa", "Tarping for no-till cover crop termination", 2023, "research report", "https://practicalfarmers.org/research/tarping-for-no-till-cover-crop-termination", True),
    Source("PURDUE-ALF", Tier.A, "Purdue University", "Forage identification: alfalfa", None, "Agronomy Extension", "https://ag.purdue.edu/department/agry/agry-extension/forages/forage-id/legumes/alfalfa.html", True),
    Source("PURDUE-COW", Tier.A, "Purdue University", "Cowpea as a summer cover", None, "Vegetable Crops Hotline", "https://vegcropshotline.org/article/drought-busting-summer-nitrogen-fixer-look-no-further-than-cowpea/", True),
    Source("PURDUE-VETCH", Tier.A, "Purdue University", "Hairy vetch toxicosis", 2004, "Animal Disease Diagnostic Laboratory, winter 2004", "https://addl.purdue.edu/newsletters/2004/winter/vetch.asp", True),
    Source("SARE-BRASS", Tier.A, "SARE", "Managing cover crops profitably, 3rd edition: brassicas and mustards", 2007, "SARE Outreach", "https://www.sare.org/publications/managing-cover-crops-profitably/nonlegume-cover-crops/brassicas-and-mustards/?tid=4", True),
    Source("SARE-COWPEA", Tier.A, "SARE", "Managing cover crops profitably, 3rd edition: cowpeas", 2007, "SARE Outreach", "https://sare.org/publications/managing-cover-crops-profitably/legume-cover-crops/cowpeas", True),
    Source("SARE-GNC17-242", Tier.A, "SARE", "Report GNC17-242, nitrate in annual forages", None, "summary read", "https://projects.sare.org/project-reports/gnc17-242/", True),
    Source("SARE-ONC17-033", Tier.A, "SARE", "Report ONC17-033, tarps to end rye and vetch", None, "summary read", "https://projects.sare.org/project-reports/onc17-033/", True),
    Source("SARE-PEA", Tier.A, "SARE", "Managing cover crops profitably, 3rd edition: field peas", 2007, "SARE Outreach", "https://sare.org/publications/managing-cover-crops-profitably/legume-cover-crops/field-peas", True),
    Source("UGA", Tier.A, "University of Georgia", "Conservation tillage: cover crops, species pages", None, "College of Agricultural and Environmental Sciences", "http://caes2.caes.uga.edu/sustainag/contillage/covercrops/", True),
    Source("UKY-BLOAT", Tier.A, "University of Kentucky", "Managing legumes in spring pasture: bloat", None, "Grazer", "https://grazer.ca.uky.edu/content/managing-legumes-spring-pasture-bloat", True),
    Source("UMAINE", Tier.A, "University of Maine Extension", "Gardening manual: cover crops and green manures", None, "seeding-rate table", "https://extension.umaine.edu/gardening/manual/cover-crops-green-manures/", True),
    Source("UVM-SUDAX", Tier.A, "V. Grubinger", "Sorghum-sudangrass", None, "University of Vermont Extension", "https://www.uvm.edu/vtvegandberry/factsheets/Sudax.html", True),
    Source("UWEX-FROST", Tier.A, "University of Wisconsin Extension", "Frost seeding a cover crop in March", 2011, "Discovery Farms", "https://fyi.extension.wisc.edu/discoveryfarms/2011/02/frost-seeding-a-cover-crop-in-march/", True),
)
