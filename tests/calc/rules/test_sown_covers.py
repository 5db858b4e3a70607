"""What is written down of a cover that was sown under a contract.

NRCS practice 340 names species, rate, date, depth and method; the copies read are old.
"""

import pytest

from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled
from tests.calc.rules.faults import COVER, found

PLAN = [rule(RuleId.COVER_PLAN)]
WHOLE = but(COVER, depth_m=0.03)
UNWEIGHED = (rows.Line("Rye", False, 1),)
NO_DEPTH, UNMEASURED = Matter.COVER_NO_DEPTH, Matter.COVER_UNMEASURED

CASES = [
    ("weighed, and its depth told", WHOLE, set()),
    ("drilled with no depth", but(WHOLE, depth_m=None), {NO_DEPTH}),
    ("broadcast needs none", but(WHOLE, depth_m=None, method="broadcast"), set()),
    ("no weight", but(WHOLE, lines=UNWEIGHED), {UNMEASURED}),
    ("neither", but(WHOLE, depth_m=None, lines=UNWEIGHED), {NO_DEPTH, UNMEASURED}),
    ("it sowed itself", but(WHOLE, lines=UNWEIGHED, method="self_sown"), set()),
    ("a cash crop", but(WHOLE, depth_m=None, purpose="cash"), set()),
    ("sown last year", but(WHOLE, depth_m=None, sown_on=day("2025-09-01")), set()),
    ("planned only", but(WHOLE, depth_m=None, sown_on=None), set()),
]


@pytest.mark.parametrize(
    ("_what", "cover", "asked"), CASES, ids=[one[0] for one in CASES]
)
def test_a_cover_is_told_with_its_weight_of_seed_and_its_depth(_what, cover, asked):
    assert found(spoiled(stands=(at.STAND, cover)), PLAN) == asked
