"""No more of an input is put on than came: the reckoning inspectors do by hand.

No text gives a tolerance; five in a hundred for what comes in bags are our own.
"""

import pytest

from reports.calc.rules import findings
from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled
from tests.calc.rules.faults import delivered

ASKED = [rule(RuleId.STOCK)]
COUNT = rows.CountedStock(1, "input-products", 1, day("04-01"), 180.0)

# 200 kg went on on 1 May.
CASES = [
    ("as much came", delivered(200.0), None),
    ("within the tolerance", delivered(190.5), None),
    ("more went on than came", delivered(190.0), (190.0, 200.0)),
    ("no lot is written down", spoiled(), None),
    ("a count found enough", delivered(1.0, counts=(but(COUNT, mass_kg=200.0),)), None),
    ("a count found less", delivered(500.0, counts=(COUNT,)), (180.0, 200.0)),
    (
        "counted after it went on",
        delivered(1.0, counts=(but(COUNT, on=day("06-01")),)),
        None,
    ),
    (
        "the last of two counts holds",
        delivered(1.0, counts=(but(COUNT, mass_kg=0.0, on=day("03-15")), COUNT)),
        (180.0, 200.0),
    ),
    (
        "another thing was counted",
        delivered(190.0, counts=(but(COUNT, of="seed-lots"),)),
        (190.0, 200.0),
    ),
    ("put on in the season before", delivered(1.0, on=day("2025-05-01")), None),
]


@pytest.mark.parametrize(
    ("_what", "books", "told"), CASES, ids=[one[0] for one in CASES]
)
def test_no_more_of_an_input_goes_on_than_came_or_was_counted(_what, books, told):
    said = [one.found for one in findings(books, ASKED)]
    assert [(one.values["in_kg"], one.values["out_kg"]) for one in said] == (
        [told] if told else []
    )


def test_what_went_on_before_the_first_was_written_to_come_is_not_asked_about():
    books = delivered(1.0)
    later = tuple(but(one, on=day("05-02")) for one in books.delivered)
    assert findings(but(books, delivered=later), ASKED) == ()


def test_what_came_by_weight_is_not_held_against_what_went_by_volume():
    books = delivered(1.0)
    poured = but(at.PUT, measure="volume")
    assert findings(but(books, puts=(poured, at.SPRAYED)), ASKED) == ()


def test_what_is_measured_by_volume_is_told_by_volume():
    (one,) = findings(delivered(0.1, measure="volume", amount=0.2), ASKED)
    assert one.found.matter is Matter.MORE_POURED
    assert (one.found.values["in_m3"], one.found.values["out_m3"]) == (0.1, 0.2)
