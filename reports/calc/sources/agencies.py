"""Law, regulation and what government agencies print."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("CFR66.6", Tier.A, "USDA Agricultural Marketing Service", "7 CFR 66.6, list of bioengineered foods, as amended at 88 FR 83311", 2024, "Code of Federal Regulations, copy of 2024", "https://www.customsmobile.com/regulations/title7_chapterI-i1_part66_subpartA_section66.6", True),
    Source("CFR201.31", Tier.A, "USDA", "7 CFR 201.31, germination standards for vegetable seeds in interstate commerce", 2015, "Code of Federal Regulations, 2015 edition", "https://github.com/18F/allregs/blob/0f10affa243f1d129291dfe5109f791d42ec4920/html/sections/7CFR201.31.html", True),
    Source("CFR201.46", Tier.A, "USDA", "7 CFR 201.46, table 1, weight of working sample and seeds per gram", 2015, "Code of Federal Regulations, 2015 edition", "https://github.com/18F/allregs/blob/0f10affa243f1d129291dfe5109f791d42ec4920/html/sections/7CFR201.46.html", True),
    Source("CFR201.58", Tier.A, "USDA", "7 CFR 201.58, table 2, germination requirements", 2015, "Code of Federal Regulations, 2015 edition", "https://github.com/18F/allregs/blob/0f10affa243f1d129291dfe5109f791d42ec4920/html/sections/7CFR201.58.html", True),
    Source("IC-24-6-1-1", Tier.A, "State of Indiana", "Indiana Code 24-6-1-1, bushel weights", None, "Indiana Code", "http://www.state.in.us/legislative/ic/code/title24/ar6/ch1.html", True),
    Source("NDCC-64-01-05", Tier.A, "State of North Dakota", "Century Code 64-01-05, standard weight of a bushel", None, "North Dakota Century Code", "https://ndcc.app/doku.php?id=64:64-01:start", True),
    Source("WVSEED", Tier.A, "West Virginia Department of Agriculture", "Legislative rule 61-09, appendix 1, germination standards", None, "West Virginia Code of State Rules", "https://d1tvxue8o4w0fl.cloudfront.net/regulation/west-virginia-administrative-code/agency-61-agriculture/title-61-legislative-rule-department-of-agriculture/series-61-09-wv-seed-law/appendix-1", True),
    Source("NIST-ACRE", Tier.A, "NIST and NOAA", "Deprecation of the United States survey foot", 2020, "Federal Register 85:62698", "http://federal.elaws.us/fr/10/5/2020/2020-21902", True),
    Source("NRCS-NB-190-16-8", Tier.A, "USDA-NRCS", "National Bulletin 190-16-8, buckwheat near commodity wheat", 2016, "quoted in Kansas State Agronomy eUpdate 561", "https://eupdate.agronomy.ksu.edu/article/restrictions-on-buckwheat-use-in-cover-crop-mixtures-near-commodity-wheat-561-6", True),
    Source("NRCS-MT93", Tier.B, "USDA-NRCS Montana", "Agronomy Technical Note MT-93, page 31", None, "quoted by the Montana Wheat and Barley Committee", "https://montanawbc.com/?p=10303", True),
    Source("NRCS-CN", Tier.B, "USDA-NRCS", "Carbon to nitrogen ratios in cropping systems, table 1", None, "transcribed copy", "https://r.arson.gg/r/stre/comments/oyrond/usda_natural_resources_conservation_service", True),
    Source("NRCS-BW-PG", Tier.B, "Pavek", "Plant guide: buckwheat", None, "USDA-NRCS Pullman, mirrored", "https://plants.vegeworx.com/p/Fagopyrum-sagittatum-FASA", True),
    Source("NRCS-SUNN-PG", Tier.B, "USDA-NRCS", "Plant guide: sunn hemp", None, "Cape May, mirrored", "https://docslib.org/doc/13727630/sunn-hemp-crotalaria-juncea-plant-guide", True),
    Source("NRCS-SQ10", Tier.B, "USDA-NRCS", "Soil Quality Agronomy Technical Note 10: sunn hemp", 1999, "mirrored", "https://docslib.org/doc/4505221/sunn-hemp-a-cover-crop-for-southern-farming-systems", True),
    Source("NRCS-RYE-FS", Tier.B, "USDA-NRCS", "Plant fact sheet: cereal rye", None, "mirrored", "https://docsbay.net/contributed-by-usda-nrcs-plant-materials-program-s1", True),
    Source("NRCS-BERS-PG", Tier.B, "USDA-NRCS", "Plant guide: berseem clover", 2020, "Booneville, text on a third-party page", "https://bajabound2015.com/black-clover-release-date-new-season-9952", True),
    Source("NRCS-GA340", Tier.B, "USDA-NRCS Georgia", "Practice 340, planting table 1", None, "mirrored", "https://docest.com/doc/57978/1-2-3-see-footnotes-at-the-end-of-the-document", True),
    Source("OMAFRA-BW", Tier.A, "Ontario Ministry of Agriculture, Food and Rural Affairs", "Cover crops: buckwheat", None, "fact sheet", "http://www.omafra.gov.on.ca/english/crops/facts/cover_crops01/buckwheat.htm", True),
    Source("OMAFRA-SS", Tier.A, "Ontario Ministry of Agriculture, Food and Rural Affairs", "Sorghum sudan", None, "fact sheet", "https://ontario.ca/page/sorghum-sudan", True),
    Source("ONVEG12", Tier.A, "A. Verhallen", "Time to make the cover crop switch", 2012, "Ontario Ministry of Agriculture, Food and Rural Affairs", "https://onvegetables.com/2012/10/12/time-cover-crop-switch/", True),
)
