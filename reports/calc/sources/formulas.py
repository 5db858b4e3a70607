"""Where the formulas for residue, nitrogen, weeds, seed and cover come from."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("AGROSCOPE-SAEDN", Tier.A, "Agroscope", "Soil cover days, Swiss agri-environmental monitoring", None, "Swiss Confederation", "", True),
    Source("ARCAND10", Tier.A, "Arcand and others", "Phosphorus from buckwheat green manure", 2010, "Canadian Journal of Soil Science 90:257, abstract", "", True),
    Source("BUCHI16", Tier.A, "Buchi and others", "Soil cover days as a measure of cropping", 2016, "cited with the Agroscope measure", "", True),
    Source("CFACTOR", Tier.A, "KU Leuven and Flemish authorities", "cfactor, crop and cover factor code at 8c04cac8", None, "open source, src/cfactor/subfactors.py", "https://github.com/watem-sedem/cfactor", True),
    Source("DUIKER-PLS", Tier.B, "S. W. Duiker", "Pure live seed worked example", None, "Penn State Extension, in the trade press", "https://www.farms.com", True),
    Source("ERNST-PLS", Tier.C, "Ernst", "Pure live seed worked examples", None, "seed firm's page", "", True),
    Source("GHIDEY93", Tier.A, "Ghidey and Alberts", "Residue type and placement effects on decomposition", 1993, "Transactions of the ASAE 36, abstract", "https://agris.fao.org", True),
    Source("GREGORY82", Tier.A, "Gregory", "Soil cover prediction with various amounts and types of crop residue", 1982, "Transactions of the ASAE 25:1333-1337, as cited and coded in USDA erosion source", "", True),
    Source("HIGHS", Tier.A, "HiGHS developers; method by Huangfu and Hall", "HiGHS, linear and whole-number optimisation, 1.16.0, with its own account of the method", 2018, "open source, package highspy; Mathematical Programming Computation 10:119-142 named there", "https://github.com/ERGO-Code/HiGHS", True),
    Source("LSU-SPREAD", Tier.A, "Louisiana State University AgCenter", "Spreader calibration worked example", None, "Extension page", "", True),
    Source("MIRSKY13", Tier.A, "Mirsky and others", "Overcoming weed management challenges in cover crop-based organic rotational no-till soybean production", 2013, "Weed Technology 27(1), abstract", "", True),
    Source("NCSU-BIO", Tier.A, "North Carolina State University", "Sampling cover crop biomass and nitrogen, worked example", None, "class handout", "https://studylib.net/doc/6900202", True),
    Source("NICHOLS20", Tier.A, "Nichols and others", "Cover crops and weed suppression in the U.S. Midwest: a meta-analysis and modeling study", 2020, "Agricultural & Environmental Letters 5:e20022; data at 63abef61", "https://digitalcommons.unl.edu/agronomyfacpub/1396", True),
    Source("PENN-ES", Tier.A, "Commonwealth of Pennsylvania", "Erosion and sediment pollution control manual: pure live seed", None, "state manual", "", True),
    Source("PNW636", Tier.A, "Sullivan and Andrews", "Estimating plant-available nitrogen release from cover crops, PNW 636", 2012, "Oregon State University Extension", "https://studylib.net/doc/18138507/estimating-plant-available-nitrogen-release-from-cover-crops", True),
    Source("SEFP-DRILL", Tier.B, "Southeast Farm Press", "Calibrating a drill, worked example", None, "trade press", "", True),
    Source("SPES-201", Tier.A, "Virginia Cooperative Extension", "Fertiliser label conversions, SPES-201", None, "Virginia Tech", "", True),
    Source("SW97-045", Tier.A, "SARE", "Report SW97-045, buried barley, vetch and phacelia at Five Points, California", None, "project report", "https://projects.sare.org/project-reports/sw97-045", True),
    Source("TAMU-SPREAD", Tier.A, "Texas A&M University", "Spreader calibration worked example", None, "Extension page", "", True),
    Source("TXDOT-PLS", Tier.A, "Texas Department of Transportation", "Pure live seed worked example", None, "seeding specification", "", True),
    Source("UKY-SEEDS", Tier.A, "University of Kentucky", "Seeds per square foot and pounds per acre", None, "Extension table", "", True),
    Source("UNL-G20", Tier.A, "University of Nebraska", "Residue cover and erosion, conservation tillage G-20", 1990, "Digital Commons 289", "https://digitalcommons.unl.edu", True),
    Source("UPGM", Tier.A, "USDA-ARS and USDA-NRCS", "Crop records of the plant growth model at 1ae5dee", None, "public domain data files", "https://github.com/USDA-ARS-WMSRU/upgm-standalone", True),
    Source("WEPP9", Tier.A, "Stott, Alberts and Weltz", "Water erosion prediction, user documentation chapter 9: residue decomposition", 1995, "USDA-ARS", "https://www.scribd.com/document/410269209", True),
    Source("WEPS", Tier.A, "USDA-ARS", "Wind erosion prediction, decomposition source code at 947a7f70", None, "src/lib_decomp/decomp_process_mod.f95", "https://github.com/dailyerosion/weps", True),
)
