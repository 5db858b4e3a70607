"""Covers that made way for a crop: how and when they ended is written down.

NRCS practice 340 has the method and the day of termination set; the copies read are
old, so the findings say to check the current text. Thirty days are our own.
"""

import pytest

from reports.calc.rules import findings
from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId, RuleSet, Severity
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled
from tests.calc.rules.faults import COVER

# Sown on 20 March on all of the ground; the crop on 10 May on all of it.
ENDED = rows.EndOf(1, 2, day("05-05"), "mown", "on_top")
BED = but(at.GROUND, id=2, name="Bed", area_m2=400.0, parent_id=1)
SOUTH = but(at.GROUND, id=3, name="South")


def stood(*ends, crop=at.STAND, fields=(at.GROUND, BED, SOUTH), **told):
    return spoiled(stands=(crop, but(COVER, **told)), ends=ends, fields=fields)


CASES = [
    ("no end", stood(), True),
    ("an end", stood(ENDED), False),
    ("cut to grow back", stood(but(ENDED, over=False)), True),
    ("killed by frost, as seen", stood(killed_on=day("04-20")), False),
    ("ended after the crop was sown", stood(but(ENDED, on=day("05-20"))), False),
    ("planned and never sown", stood(sown_on=None, planned_on=day("03-20")), False),
    ("sown after the crop", stood(sown_on=day("06-10")), False),
    ("sown the autumn before", stood(sown_on=day("2025-09-20")), True),
    ("both a cash crop", stood(purpose="cash"), False),
    ("the crop is another cover", stood(crop=but(at.STAND, purpose="cover")), False),
    (
        "side by side, each on its half",
        stood(crop=but(at.STAND, area_m2=2000.0), area_m2=2000.0),
        False,
    ),
    (
        "more than fits side by side",
        stood(crop=but(at.STAND, area_m2=2100.0), area_m2=2000.0),
        True,
    ),
    ("on a bed of the field", stood(field_id=2, area_m2=400.0), True),
    ("on other ground", stood(field_id=3), False),
    ("a crop sown last year", stood(crop=but(at.STAND, sown_on=day("2025-05-10"))), 0),
    (
        "the crop went in thirty days ago",
        but(stood(), today=day("06-09")),
        False,
    ),
    ("and thirty-one", but(stood(), today=day("06-10")), True),
]


@pytest.mark.parametrize(
    ("_what", "books", "asked"), CASES, ids=[one[0] for one in CASES]
)
@pytest.mark.parametrize(
    ("set_", "weight"),
    [(RuleSet.COVER_CROP, Severity.FIX), (RuleSet.INSURANCE, Severity.WARN)],
)
def test_a_cover_whose_place_a_crop_took_has_an_end(_what, books, asked, set_, weight):
    told = findings(books, [rule(RuleId.COVER_END, set_)])
    said = [(one.found.matter, one.severity) for one in told]
    assert said == ([(Matter.COVER_NOT_ENDED, weight)] if asked else [])


def test_days_beside_the_crop_may_be_given_by_whoever_holds_the_contract():
    given = rule(RuleId.COVER_END, RuleSet.COVER_CROP).overruled("past_days", 365)
    assert findings(stood(), [given]) == ()
    with pytest.raises(ValueError, match="past_days"):
        given.overruled("past_days", 366)
