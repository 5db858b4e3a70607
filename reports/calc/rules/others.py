"""Rules that stand beside the organic standards, and those of the books themselves."""

from __future__ import annotations

import datetime as dt

from reports.calc.shapes.rules import Param, Rule, RuleId, RuleSet, Severity

STOP, FIX = Severity.STOP, Severity.FIX
WARN, INFO = Severity.WARN, Severity.INFO
WORKERS, RESTRICTED = RuleSet.WORKERS, RuleSet.RESTRICTED
BOOKS, LABEL = RuleSet.BOOKS, RuleSet.LABEL
COVER, SEED_LAW = RuleSet.COVER_CROP, RuleSet.SEED_LAW
OURS = "ASSUMED"
# The sections before these ran out on this day, [CFR170].
REVISED = dt.date(2017, 1, 2)

# Posted within 24 hours, shown 30 days after the interval, kept 2 years, [CFR170].
POSTING = (
    Param("post_hours", 24, "hours", 0, 72),
    Param("show_days", 30, "days", 0, 365),
    Param("keep_years", 2, "years", 1, 10),
)
# Trained within 12 months; ground sprayed, or shut, within 30 days, [CFR170T].
TRAINING = (
    Param("months", 12, "months", 1, 24),
    Param("treated_days", 30, "days", 1, 365),
)
# Written down within 14 days, [CFR110]; the contractor's copy within 30 is from memory.
FORTNIGHT = (Param("days", 14, "days", 0, 60),)
MONTH = (Param("days", 30, "days", 0, 90),)
# Nobody sets when to renew a licence; two months ahead are our own.
SOON = (Param("soon_days", 60, "days", 0, 365, ours=True),)
# Months the label's longest wait often has, [LABEL-UNL].
ROTATION = (Param("months", 18, "months", 0, 60),)
# Five calendar months after the test month, [CFR201T].
TAG = (Param("months", 5, "months", 1, 24),)
# Days before planting by zone of the guideline, [RMA-TERM]; the zone is the farm's.
ZONES = (
    Param("zone", 3, "zone", 1, 4, ours=True),
    Param("days_1", 35, "days", -10, 90),
    Param("days_2", 15, "days", -10, 90),
    Param("days_3", 0, "days", -10, 90),
    Param("days_4", -5, "days", -10, 90),
)
# No text says for how long a cover may live on beside the crop: thirty days are ours.
BESIDE = (Param("past_days", 30, "days", 0, 365, ours=True),)
# A supervisor looks over such records in reasonable time, [CFR112]; 30 days are ours.
REVIEWED = (Param("days", 30, "days", 1, 365, ours=True),)
# Nobody sets how promptly; a day after is our own.
PROMPT = (Param("days", 1, "days", 0, 60, ours=True),)
# No text gives a tolerance; these shares are our own.
TOLERANCE = (
    Param("packed_share", 0.05, "share", 0, 0.5, ours=True),
    Param("bulk_share", 0.10, "share", 0, 0.5, ours=True),
)

# One rule a line, so that the list reads as a table.
# ruff: noqa: E501
# fmt: off
OTHERS: tuple[Rule, ...] = (
    Rule(RuleId.REENTRY, WORKERS, "40 CFR 170, and the label", STOP, "CFR170", effective_from=REVISED),
    Rule(RuleId.POSTING, WORKERS, "40 CFR 170.311(b)", FIX, "CFR170", POSTING, effective_from=REVISED),
    Rule(RuleId.TRAINED, WORKERS, "40 CFR 170.401, 170.601(a)(1)", STOP, "CFR170T", TRAINING, effective_from=REVISED, stale=True),
    Rule(RuleId.RESTRICTED_RECORD, RESTRICTED, "7 CFR 110.3(a)", FIX, "CFR110", stale=True),
    Rule(RuleId.RESTRICTED_DAYS, RESTRICTED, "7 CFR 110.3", FIX, "CFR110", FORTNIGHT, stale=True),
    Rule(RuleId.CONTRACTOR_COPY, RESTRICTED, "7 CFR 110.3", FIX, "CFR110", MONTH, stale=True),
    Rule(RuleId.LICENCE, RESTRICTED, "7 CFR 110.3(a)", STOP, "CFR110", SOON, stale=True),
    Rule(RuleId.DONE_BY, RuleSet.FOOD, "21 CFR 112.161(a)", FIX, "CFR112"),
    Rule(RuleId.REVIEW, RuleSet.FOOD, "21 CFR 112.161(b)", FIX, "CFR112", REVIEWED),
    Rule(RuleId.COVER_SEED, COVER, "NRCS practice 340, as your State prints it", STOP, "NRCS340", stale=True),
    Rule(RuleId.COVER_PLAN, COVER, "NRCS practice 340, as your State prints it", FIX, "NRCS340", stale=True),
    Rule(RuleId.COVER_END, COVER, "NRCS practice 340, as your State prints it", FIX, "NRCS340", BESIDE, stale=True),
    Rule(RuleId.COVER_INOCULANT, COVER, "NRCS practice 340, as your State prints it", WARN, "NRCS340", stale=True),
    Rule(RuleId.BURNING, COVER, "NRCS practice 340, as your State prints it", STOP, "NRCS340", stale=True),
    Rule(RuleId.TERMINATION_DAY, RuleSet.INSURANCE, "NRCS cover crop termination guidelines", WARN, "RMA-TERM", ZONES, stale=True),
    Rule(RuleId.COVER_END, RuleSet.INSURANCE, "NRCS cover crop termination guidelines", WARN, "RMA-TERM", BESIDE, stale=True),
    Rule(RuleId.SEED_TAG, SEED_LAW, "Federal Seed Act, what a tag says", FIX, "TAG-B"),
    Rule(RuleId.TAG_AGE, SEED_LAW, "7 CFR 201.30a", INFO, "CFR201T", TAG),
    Rule(RuleId.PREHARVEST, LABEL, "the product’s label", STOP, "LABEL-UNL"),
    Rule(RuleId.PLANT_BACK, LABEL, "the product’s label", STOP, "LABEL-UNL", ROTATION),
    Rule(RuleId.GRAZING_LABEL, LABEL, "the product’s label", WARN, "LABEL-UNL", ROTATION),
    Rule(RuleId.SEED_LINKED, BOOKS, "", FIX, OURS),
    Rule(RuleId.HARVEST_ORDER, BOOKS, "", FIX, OURS),
    Rule(RuleId.STOCK, BOOKS, "", FIX, OURS, TOLERANCE),
    Rule(RuleId.LATE, BOOKS, "", WARN, OURS, PROMPT),
    Rule(RuleId.NO_RECORDS, BOOKS, "", INFO, OURS),
    Rule(RuleId.DOCUMENT, BOOKS, "", FIX, OURS),
)
# fmt: on
