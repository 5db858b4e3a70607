"""Law and guidance that the checks on the records lean on."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("CFR205", Tier.A, "USDA Agricultural Marketing Service", "7 CFR 205.202, 205.203(a) to (c) and 205.206, organic crops: land, soil, pests", 2026, "Code of Federal Regulations, copies of March and June 2026", "https://law.lawstack.com/cfr/7/205.203/", True),
    Source("CFR205.204", Tier.A, "USDA Agricultural Marketing Service", "7 CFR 205.204, seeds and planting stock", 2002, "Code of Federal Regulations, print of 1 January 2002", "http://edocket.access.gpo.gov/cfr_2003/7CFR205.204.htm", True),
    Source("CFR205.103", Tier.B, "USDA Agricultural Marketing Service", "7 CFR 205.103, recordkeeping by certified operations", 2021, "reprinted by a certifier before the rule of 2023", "https://mosaorganic.org/education-resources/organic-cultivator-newsletter/mass-balance-and-traceback-inspection-audits-explained", True),
    Source("CFR205.201", Tier.B, "USDA Agricultural Marketing Service", "7 CFR 205.201(a)(3), the plan's monitoring practices as amended in 2023", 2024, "reprinted by a certifier", "https://tilth.org/help-center/what-does-this-mean-for-organic-producers/", True),
    Source("CFR205.206C", Tier.B, "USDA Agricultural Marketing Service", "7 CFR 205.206(c), weed practices: mulches removed, flame, heat", 2018, "reprinted by a college course", "https://sites.google.com/allegheny.edu/stp2018/standards-for-organic/pest-management", True),
    Source("CFR205.601B", Tier.B, "USDA Agricultural Marketing Service", "7 CFR 205.601(b), synthetic mulches: paper, and plastic other than PVC", 2017, "reprinted by a horticulturist", "http://xtremehorticulture.blogspot.com/2017/04/synthetic-substances-allowed-by-usda-in.html", True),
    Source("CFR205.400", Tier.B, "USDA Agricultural Marketing Service", "7 CFR 205.400(f), telling the certifier at once", None, "reprinted by University of Kentucky Extension", "http://ces.ca.uky.edu/jefferson/anr/certification.htm", True),
    Source("CFR205-M", Tier.M, "USDA Agricultural Marketing Service", "7 CFR 205.105, 205.201, 205.203(e) and 205.272, cited from memory", None, "", "", False),
    Source("NOP-5029", Tier.B, "USDA National Organic Program", "Guidance 5029, seeds, seedlings and planting stock, with a certifier's reading of it", 2013, "", "https://ccof.org/news/planting-stock-guidance-from-nop", True),
    Source("USC6519", Tier.A, "United States Congress", "7 U.S.C. 6519(a)(2), recordkeeping under the Organic Foods Production Act", None, "United States Code", "http://complianceuniverse.org/recordkeeping-investigations-and-enforcement", True),
    Source("EU2018-M", Tier.M, "European Union", "Regulation (EU) 2018/848, Annex II, Part I, cited from memory", 2018, "", "", False),
    Source("CGSB-M", Tier.M, "Canadian General Standards Board", "CAN/CGSB-32.310, clause 5.1, cited from memory", None, "", "", False),
    Source("CGSB-B", Tier.B, "Canadian General Standards Board", "CAN/CGSB-32.310, clause 5.2.2, quoted by a certifier", None, "", "https://pacscertifiedorganic.ca/what-buffer-zone", True),
    Source("CFR170", Tier.B, "US Environmental Protection Agency", "40 CFR 170.311, display of application information, as Extension tells it", None, "Penn State Extension and Cooperative Extension pages", "https://extension.psu.edu/central-posting-location-is-key-for-the-worker-protection-standard", True),
    Source("CFR170T", Tier.B, "US Environmental Protection Agency", "40 CFR 170.401, training of workers, and 170.601(a)(1), owners and their family", 2024, "copies of the Code, one undated, one of November 2024", "https://checkoutapi.com/regulations/40/170.601", True),
    Source("CFR110", Tier.A, "USDA Agricultural Marketing Service", "7 CFR 110.3, records of restricted-use pesticides", 2006, "Code of Federal Regulations, print of 2006", "http://edocket.access.gpo.gov/cfr_2006/janqtr/7cfr110.3.htm", True),
    Source("CFR112", Tier.A, "US Food and Drug Administration", "21 CFR 112.161, general requirements for records", 2026, "Code of Federal Regulations, copy of June 2026", "https://law.lawstack.com/cfr/21/112.161/", True),
    Source("CFR201T", Tier.A, "USDA Agricultural Marketing Service", "7 CFR 201.30a, date of the latest germination test", 2026, "Code of Federal Regulations, copy of March 2026", "https://lexbuild.dev/ecfr/title-07/chapter-I/part-201/section-201.30a", True),
    Source("TAG-B", Tier.B, "Federal Seed Act", "What a label of agricultural seed says", 2009, "seed law notes and the Act of 1939, section 201", "http://seedlaw.blogspot.com/2009/05/federal-seed-act-labeling-requirements.html", True),
    Source("NRCS340", Tier.A, "USDA-NRCS", "Conservation practice 340, cover crop: North Carolina 2020, Michigan 2015, Maine 2013", 2020, "mirrored", "https://vdocuments.net/natural-resources-conservation-service.html", True),
    Source("RMA-TERM", Tier.B, "USDA-NRCS and Risk Management Agency", "Cover crop termination guidelines for non-irrigated land, 2013 and 2014", 2014, "reprinted in the Salina Journal and by Iowa Learning Farms", "https://iowalearningfarms.wordpress.com/2013/12/06/new-for-2014-nrcs-guidelines-for-cover-crop-termination/", True),
    Source("LABEL-UNL", Tier.A, "University of Nebraska-Lincoln Extension", "Ag agencies address label restrictions on crop rotations; how herbicide labels restrict using cover crops as forage", 2015, "CropWatch", "https://cropwatch.unl.edu/ag-agencies-address-label-restrictions-crop-rotations", True),
)
