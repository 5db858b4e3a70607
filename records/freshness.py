"""How old a germination test is when seed comes and when it is sown."""

from __future__ import annotations

import datetime as dt

from farm.models import Farm
from records.models import OwnAssumption

# Months after the test month in which seed may be shipped between states: 7 CFR
# 201.30a, written for vegetable seed, the seller's duty; a mark for the buyer.
MONTHS_AT_RECEIPT = 5
# Our own choice for sowing; the farm may set its own under this name.
MONTHS_AT_SOWING = 12
OWN_KEY = "seed_test_months"


def months_between(tested_on: dt.date, on: dt.date) -> int:
    """Calendar months from the month of the test; below nothing before it."""
    return (on.year - tested_on.year) * 12 + on.month - tested_on.month


def months_at_sowing(farm: Farm) -> int:
    """How many months this farm takes a test as fresh."""
    rows = OwnAssumption.objects.on(farm).live().filter(key=OWN_KEY)
    found = rows.values_list("value", flat=True).first()
    return MONTHS_AT_SOWING if found is None else round(found)
