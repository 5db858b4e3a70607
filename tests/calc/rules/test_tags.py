"""What a tag of field seed tells of weeds.

The Federal Seed Act has the tag of agricultural seed name each noxious weed with its
number in a weight of seed; vegetable seed is labelled by other sections.
"""

import pytest

from reports.calc.rules import findings
from reports.calc.shapes.rules import Matter, RuleId, Severity
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled

LOTS = [
    ("told", {"noxious_told": True}, False),
    ("not told", {"noxious_told": False}, True),
    ("a vegetable", {"noxious_told": None}, False),
    ("saved, so without a tag", {"noxious_told": False, "bought": False}, False),
    ("planting stock", {"noxious_told": False, "is_stock": True}, False),
    (
        "bought the year before and sown now",
        {"noxious_told": False, "received_on": day("2025-03-10")},
        True,
    ),
    (
        "bought the year before and not sown",
        {"noxious_told": False, "received_on": day("2025-03-10"), "id": 9},
        False,
    ),
]


@pytest.mark.parametrize(("_what", "told", "asked"), LOTS, ids=[one[0] for one in LOTS])
def test_a_tag_of_field_seed_tells_of_noxious_weeds(_what, told, asked):
    found = findings(spoiled(lots=(but(at.LOT, **told),)), [rule(RuleId.SEED_TAG)])
    said = [(one.found.matter, one.severity) for one in found]
    assert said == ([(Matter.TAG_NO_WEEDS, Severity.WARN)] if asked else [])
