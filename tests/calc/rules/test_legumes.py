"""Legumes under a contract: the right inoculant where one is needed.

NRCS practice 340 asks for it; the copies read are old. Where ground needs none the
farm says so in a reply, since no record tells what lives in a soil.
"""

import pytest

from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled
from tests.calc.rules.faults import COVER, found

ASKED = [rule(RuleId.COVER_INOCULANT)]
VETCH = rows.Line("Vetch", True, 2, 5.0)
OATS = rows.Line("Oats", False, 3, 20.0)
BARE = but(at.LOT, id=2, kind="Vetch", number="V-26")
CULTURE = rows.Product(9, "Vetch culture", "inoculant", approval="IPC 9")
ON_SEED = but(at.PUT, id=9, product_id=9, on=day("03-20"))


def sown(*lines, lot=BARE, puts=(), **told):
    return spoiled(
        stands=(at.STAND, but(COVER, lines=lines or (VETCH,), **told)),
        lots=(at.LOT, lot),
        products=(*CLEAN.products, CULTURE),
        puts=(*CLEAN.puts, *puts),
    )


CASES = [
    ("a legume with nothing told", sown(), True),
    ("said to be inoculated", sown(inoculated=True), False),
    ("it came on the seed", sown(lot=but(BARE, inoculant="rhizobia")), False),
    ("put on that day", sown(puts=(ON_SEED,)), False),
    ("put on with that planting", sown(puts=(but(ON_SEED, stand_id=2),)), False),
    ("put on a month before", sown(puts=(but(ON_SEED, on=day("02-20")),)), True),
    ("a mix with a legume in it", sown(OATS, VETCH), True),
    ("no legume", sown(OATS), False),
    ("a cash crop", sown(purpose="cash"), False),
    ("it sowed itself", sown(method="self_sown"), False),
    ("sown last year", sown(sown_on=day("2025-09-01")), False),
]


@pytest.mark.parametrize(
    ("_what", "books", "asked"), CASES, ids=[one[0] for one in CASES]
)
def test_a_legume_sown_as_a_cover_names_its_inoculant(_what, books, asked):
    told = found(books, ASKED)
    assert told == ({Matter.COVER_NOT_INOCULATED} if asked else set())
