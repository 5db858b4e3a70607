"""Ground: its sides, and what is written down of it on its way to organic.

7 CFR 205.202(c) asks for distinct boundaries and buffer zones, (a) for land that is
managed under the sections on soil, seed, rotation and pests.
"""

import pytest

from reports.calc.rules import findings
from reports.calc.shapes.rules import Matter, RuleId, RuleSet, Severity
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled

SOUTH = but(at.GROUND, id=2, name="South")
BED = but(at.GROUND, id=3, name="Bed", parent_id=1)
ITS_SIDE = but(at.SIDE, id=3, field_id=3)
NOT_OURS = but(at.GROUND, status="not_organic")
ASKED = RuleSet.ORGANIC_US, RuleSet.ORGANIC_CA


def drawn(*fields, sides=(at.SIDE,), **told):
    return spoiled(fields=fields or (at.GROUND,), sides=sides, **told)


SIDES = [
    ("a side is told", drawn(), []),
    ("no side is told", drawn(sides=()), [1]),
    ("of another field only", drawn(at.GROUND, SOUTH), [2]),
    ("a part goes by the whole", drawn(at.GROUND, BED), []),
    ("the whole by a side of its part", drawn(at.GROUND, BED, sides=(ITS_SIDE,)), []),
    ("whole and part are asked about once", drawn(at.GROUND, BED, sides=()), [1]),
    ("a part of a field under no rules", drawn(NOT_OURS, BED, sides=()), [3]),
    ("not organic", drawn(NOT_OURS, sides=()), []),
    (
        "on its way",
        drawn(but(at.GROUND, status="transitional"), sides=()),
        [1],
    ),
]


@pytest.mark.parametrize(
    ("_what", "books", "asked"), SIDES, ids=[one[0] for one in SIDES]
)
@pytest.mark.parametrize("set_", ASKED)
def test_of_ground_under_the_rules_it_is_told_what_lies_beside(
    _what, books, asked, set_
):
    told = findings(books, [rule(RuleId.EDGES, set_)])
    untold = [one for one in told if one.found.matter is Matter.EDGES_UNTOLD]
    assert [one.found.record for one in untold] == asked
    assert {one.severity for one in untold} <= {Severity.WARN}


ON_ITS_WAY = but(at.GROUND, status="transitional", status_since=day("2025-06-01"))


def kept(**told):
    return spoiled(**{"fields": (ON_ITS_WAY,), "entries": (), **told})


LOOKED = but(at.ENTRY, noun="observations")
YEARS = [
    ("nothing all season", kept(), True),
    ("one look", kept(entries=(LOOKED,)), False),
    ("a look the year before", kept(entries=(but(LOOKED, on=day("2025-07-01")),)), 1),
    ("a look at other ground", kept(entries=(but(LOOKED, field_id=2),)), True),
    ("the season is not over", kept(today=day("12-31")), False),
    (
        "on its way only since summer",
        kept(fields=(but(ON_ITS_WAY, status_since=day("06-01")),)),
        False,
    ),
    ("since when is not told", kept(fields=(but(ON_ITS_WAY, status_since=None),)), 1),
    ("organic already", kept(fields=(at.GROUND,)), False),
    (
        "a look at the bed in it",
        kept(fields=(ON_ITS_WAY, BED), entries=(but(LOOKED, field_id=3),)),
        False,
    ),
]


@pytest.mark.parametrize(
    ("_what", "books", "asked"), YEARS, ids=[one[0] for one in YEARS]
)
def test_of_ground_on_its_way_a_season_tells_something(_what, books, asked):
    told = findings(books, [rule(RuleId.LAND_KEPT)])
    said = [(one.found.matter, one.severity) for one in told]
    assert said == ([(Matter.LAND_IDLE, Severity.INFO)] if asked else [])
