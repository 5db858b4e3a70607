"""Rules of the organic standards."""

from __future__ import annotations

import datetime as dt

from reports.calc.shapes.rules import Param, Rule, RuleId, RuleSet, Severity

US, EU, CA = RuleSet.ORGANIC_US, RuleSet.ORGANIC_EU, RuleSet.ORGANIC_CA
STOP, FIX = Severity.STOP, Severity.FIX
WARN, INFO = Severity.WARN, Severity.INFO
MEMORY = "CFR205-M"

# 36 months before harvest, [CFR205]; 14 days of nearness are our own.
LAND_US = (
    Param("months", 36, "months", 12, 60),
    Param("near_days", 14, "days", 0, 90, ours=True),
)
# 24 months, for perennials other than forage 36, as the text before had it.
LAND_EU = (
    Param("months", 24, "months", 12, 60),
    Param("perennial_months", 36, "months", 12, 72),
)
# Days from being worked in to harvest, [CFR205].
MANURE = (
    Param("contact_days", 120, "days", 60, 400),
    Param("other_days", 90, "days", 60, 400),
)
# Days within 131-170 °F (55-76.7 °C), turnings, C:N at the start, [CFR205].
HEAP = (
    Param("low_c", 55.0, "°C", 50, 60),
    Param("high_c", 76.7, "°C", 65, 80),
    Param("days_turned", 15, "days", 3, 60),
    Param("days_still", 3, "days", 3, 60),
    Param("turnings", 5, "times", 0, 30),
    Param("ratio_low", 25, "ratio", 10, 40),
    Param("ratio_high", 40, "ratio", 25, 80),
)
# Three sources are common practice, [NOP-5029]; a year is our own reading.
SEARCH = (
    Param("sources", 3, "times", 1, 10),
    Param("months", 12, "months", 1, 36, ours=True),
)
YEARLY = (Param("months", 12, "months", 1, 36, ours=True),)
# No federal width; 8 m in Canada, [CGSB-B].
NO_WIDTH = (Param("metres", 0, "m", 0, 200, ours=True),)
# The text gives no days after the season: that there are none is our own reading.
# Nor does it speak of sheets laid late for a clean bed in spring, or lying for years
# under a stand: those numbers are ours.
SHEETS = (
    Param("after_days", 0, "days", 0, 240, ours=True),
    Param("late_days", 120, "days", 0, 240, ours=True),
    Param("stand_months", 12, "months", 0, 60, ours=True),
)
# Kilograms a hectare and year, from memory: unverified, [EU2018-M].
NITROGEN = (Param("nitrogen_kg_ha", 170, "kg/ha", 50, 400),)
EIGHT_METRES = (Param("metres", 8, "m", 0, 200),)
AMENDED = dt.date(2024, 3, 19)

# One rule a line, so that the list reads as a table.
# ruff: noqa: E501
# fmt: off
ORGANIC: tuple[Rule, ...] = (
    Rule(RuleId.LAND_CLOCK, US, "7 CFR 205.202(b)", STOP, "CFR205", LAND_US),
    Rule(RuleId.LAND_HISTORY, US, "7 CFR 205.202(b)", FIX, "CFR205", LAND_US[:1]),
    Rule(RuleId.LAND_STATEMENTS, US, "7 CFR 205.202(b)", WARN, "CFR205"),
    Rule(RuleId.LAND_KEPT, US, "7 CFR 205.202(a)", INFO, "CFR205"),
    Rule(RuleId.BOUNDARY, US, "7 CFR 205.202(c)", FIX, "CFR205"),
    Rule(RuleId.EDGES, US, "7 CFR 205.202(c)", WARN, "CFR205", NO_WIDTH),
    Rule(RuleId.MANURE, US, "7 CFR 205.203(c)(1)", STOP, "CFR205", MANURE),
    Rule(RuleId.COMPOST, US, "7 CFR 205.203(c)(2)", FIX, "CFR205", (*HEAP, *MANURE)),
    Rule(RuleId.SEED_STATUS, US, "7 CFR 205.204(a)", FIX, "CFR205.204", stale=True),
    Rule(RuleId.SEED_SEARCH, US, "7 CFR 205.204(a)(1); NOP 5029", FIX, "NOP-5029", SEARCH),
    Rule(RuleId.SEED_TREATED, US, "7 CFR 205.204(a)(2)", STOP, "CFR205.204", stale=True),
    Rule(RuleId.INOCULANT, US, "7 CFR 205.105", FIX, MEMORY),
    Rule(RuleId.SUPPLIER, US, "7 CFR 205.201(a)(3)", FIX, "CFR205.201", YEARLY, effective_from=AMENDED),
    Rule(RuleId.APPROVAL, US, "7 CFR 205.201(a)(2)", STOP, MEMORY, LAND_US[:1]),
    Rule(RuleId.APPLICATOR, US, "7 U.S.C. 6519(a)(2)", FIX, "USC6519"),
    Rule(RuleId.TRIGGER, US, "7 CFR 205.206(e)", FIX, "CFR205"),
    Rule(RuleId.SPRAYED, US, "7 CFR 205.105, 205.202(b)", STOP, MEMORY),
    Rule(RuleId.TARP, US, "7 CFR 205.206(c)(6)", FIX, "CFR205.206C", SHEETS, stale=True),
    Rule(RuleId.SHEET_MATERIAL, US, "7 CFR 205.601(b)(2)", STOP, "CFR205.601B", stale=True),
    Rule(RuleId.BURNING, US, "7 CFR 205.203(e)(3)", STOP, MEMORY),
    Rule(RuleId.HARVEST_CHAIN, US, "7 CFR 205.103", FIX, "CFR205.103", stale=True),
    Rule(RuleId.LOTS_APART, US, "7 CFR 205.201(a)(5), 205.272", STOP, MEMORY),
    Rule(RuleId.SALE_STATUS, US, "7 CFR 205.103", STOP, "CFR205.103", stale=True),
    Rule(RuleId.CLEAN_OUT, US, "7 CFR 205.272", FIX, MEMORY),
    Rule(RuleId.INCIDENT, US, "7 CFR 205.400(f)", STOP, "CFR205.400", stale=True),
    Rule(RuleId.ENGINEERED, US, "7 CFR 205.105(e)", FIX, MEMORY),
    Rule(RuleId.LAND_CLOCK, EU, "Regulation (EU) 2018/848, Annex II, Part I, 1.7", STOP, "EU2018-M", LAND_EU),
    Rule(RuleId.LAND_HISTORY, EU, "Regulation (EU) 2018/848, Annex II, Part I, 1.7", FIX, "EU2018-M", LAND_EU),
    Rule(RuleId.SEED_STATUS, EU, "Regulation (EU) 2018/848, Annex II, Part I, 1.8", FIX, "EU2018-M"),
    Rule(RuleId.MANURE_NITROGEN, EU, "Regulation (EU) 2018/848, Annex II, Part I, 1.9", FIX, "EU2018-M", NITROGEN),
    Rule(RuleId.APPROVAL, EU, "Regulation (EU) 2018/848, Article 24", STOP, "EU2018-M", LAND_EU),
    Rule(RuleId.SPRAYED, EU, "Regulation (EU) 2018/848, Annex II, Part I, 1.10", STOP, "EU2018-M"),
    Rule(RuleId.SEED_TREATED, EU, "Regulation (EU) 2018/848, Annex II, Part I, 1.8", STOP, "EU2018-M"),
    Rule(RuleId.HARVEST_CHAIN, EU, "Regulation (EU) 2018/848, Article 34", FIX, "EU2018-M"),
    Rule(RuleId.LOTS_APART, EU, "Regulation (EU) 2018/848, Article 9", STOP, "EU2018-M"),
    Rule(RuleId.ENGINEERED, EU, "Regulation (EU) 2018/848, Article 11", FIX, "EU2018-M"),
    Rule(RuleId.LAND_CLOCK, CA, "CAN/CGSB-32.310, 5.1.1", STOP, "CGSB-M", LAND_US),
    Rule(RuleId.LAND_HISTORY, CA, "CAN/CGSB-32.310, 5.1.1", FIX, "CGSB-M", LAND_US[:1]),
    Rule(RuleId.EDGES, CA, "CAN/CGSB-32.310, 5.2.2", WARN, "CGSB-B", EIGHT_METRES),
    Rule(RuleId.MANURE, CA, "CAN/CGSB-32.310, 5.5", STOP, "CGSB-M", MANURE),
    Rule(RuleId.SEED_STATUS, CA, "CAN/CGSB-32.310, 5.3", FIX, "CGSB-M"),
    Rule(RuleId.SEED_TREATED, CA, "CAN/CGSB-32.310, 5.3", STOP, "CGSB-M"),
    Rule(RuleId.APPROVAL, CA, "CAN/CGSB-32.311", STOP, "CGSB-M", LAND_US[:1]),
    Rule(RuleId.SPRAYED, CA, "CAN/CGSB-32.310, 5.1.1", STOP, "CGSB-M"),
    Rule(RuleId.TARP, CA, "CAN/CGSB-32.311", FIX, "CGSB-M", SHEETS),
    Rule(RuleId.SHEET_MATERIAL, CA, "CAN/CGSB-32.311", STOP, "CGSB-M"),
    Rule(RuleId.HARVEST_CHAIN, CA, "CAN/CGSB-32.310, 4.4", FIX, "CGSB-M"),
    Rule(RuleId.LOTS_APART, CA, "CAN/CGSB-32.310, 4.4", STOP, "CGSB-M"),
    Rule(RuleId.ENGINEERED, CA, "CAN/CGSB-32.310, 4.4.4", FIX, "CGSB-M"),
)
# fmt: on
