"""What was put on one stand counts for the stand that followed it on that ground.

7 CFR 205.203(c)(1): the days run to the harvest of the crop that people eat, whichever
stand the manure was put on; 205.202(b): three years before an organic lot is cut.
"""

import pytest

from reports.calc.rules import findings
from reports.calc.shapes import books as rows
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter, RuleId, RuleSet
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled
from tests.calc.rules.faults import MANURE, found

RYE = but(at.STAND, id=2, purpose="cover", sown_on=day("2024-10-01"))
RYE_ENDED = rows.EndOf(1, 2, day("2025-01-20"), "tilled", "worked_in")
LETTUCE = but(at.STAND, sown_on=day("2025-01-25"))
# Put on the rye, and worked in with it, 48 days before the lettuce was cut.
DUNG = but(at.PUT, id=3, product_id=3, stand_id=2, on=day("2025-01-20"))
CUT = but(at.CROP, on=day("2025-03-09"))
HALF = 2000.0


def grown(rye=RYE, lettuce=LETTUCE, ends=(RYE_ENDED,), **told):
    return spoiled(
        season=Span(day("2025-01-01"), day("2025-12-31")),
        stands=(lettuce, rye),
        ends=ends,
        products=(*CLEAN.products, MANURE),
        puts=(but(DUNG, worked_in_on=day("2025-01-20"), **told),),
        crops=(CUT,),
    )


BESIDE = {"rye": but(RYE, area_m2=HALF), "lettuce": but(LETTUCE, area_m2=HALF)}
MANURED = [
    ("put on the cover before", grown(), True),
    ("put on the ground", grown(stand_id=None), True),
    ("put on the crop itself", grown(stand_id=1), True),
    ("on half, and the crop on a half later", grown(**BESIDE), True),
    (
        "side by side, each on its half",
        grown(rye=BESIDE["rye"], lettuce=BESIDE["lettuce"], ends=()),
        False,
    ),
    (
        "both at once, with no room for it",
        grown(ends=(but(RYE_ENDED, on=day("2025-04-01")),)),
        True,
    ),
    (
        "side by side, until the crop was up",
        grown(**BESIDE, ends=(but(RYE_ENDED, on=day("2025-02-20")),)),
        False,
    ),
    (
        "an annual of two years ago without an end",
        grown(
            rye=but(BESIDE["rye"], sown_on=day("2023-10-01")),
            lettuce=BESIDE["lettuce"],
            ends=(),
        ),
        True,
    ),
]


@pytest.mark.parametrize(
    ("_what", "books", "asked"), MANURED, ids=[one[0] for one in MANURED]
)
def test_manure_on_a_cover_holds_the_crop_that_follows(_what, books, asked):
    told = found(books, [rule(RuleId.MANURE)])
    assert told == ({Matter.MANURE_SOON} if asked else set())


LIME = rows.Product(9, "Lime", "lime")


@pytest.mark.parametrize(
    ("set_", "on", "stops"),
    [
        (RuleSet.ORGANIC_US, "2023-09-03", True),
        (RuleSet.ORGANIC_US, "2023-09-02", False),
        (RuleSet.ORGANIC_CA, "2023-09-02", False),
        (RuleSet.ORGANIC_EU, "2024-05-11", True),
        (RuleSet.ORGANIC_EU, "2024-05-10", False),
    ],
)
def test_what_nobody_approved_stops_a_lot_as_long_as_the_lands_clock_runs(
    set_, on, stops
):
    """Sown on 10 May 2026 and cut on 2 September: three years before the harvest, and
    in the Union two before the sowing (from memory, unverified)."""
    put = but(at.PUT, id=9, product_id=9, on=day(on))
    books = spoiled(products=(*CLEAN.products, LIME), puts=(*CLEAN.puts, put))
    told = found(books, [rule(RuleId.APPROVAL, set_)])
    assert told == ({Matter.GREW_UNAPPROVED} if stops else set())


def test_the_certifier_may_say_how_long_it_stops_lots():
    put = but(at.PUT, id=9, product_id=9, on=day("2023-09-03"))
    books = spoiled(products=(*CLEAN.products, LIME), puts=(*CLEAN.puts, put))
    given = rule(RuleId.APPROVAL, RuleSet.ORGANIC_US).overruled("months", 24)
    assert findings(books, [given]) == ()
