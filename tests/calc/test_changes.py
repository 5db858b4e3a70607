"""What came and what went from one season to the next."""

from reports.calc.changes import changes_between
from reports.calc.shapes.basics import Span
from reports.calc.shapes.changes import Part
from tests.calc import books as at
from tests.calc.books import but, day, spoiled

BEFORE = Span(day("2025-01-01"), day("2025-12-31"))


def told_of(**rows):
    told = changes_between(spoiled(**rows), BEFORE, at.SEASON)
    return {one.part: (one.came, one.went) for one in told}


def test_land_whose_status_began_this_season_is_new_and_that_of_the_last_did_not_go():
    field = but(at.GROUND, id=8, name="Bench", status_since=day("04-01"))
    older = but(at.GROUND, id=9, name="Table", status_since=day("2025-04-01"))
    told = told_of(fields=(at.GROUND, field, older))
    assert told[Part.STATUS] == (("Bench",), ())


def test_a_way_of_sowing_that_was_not_used_before_is_told():
    last = but(at.STAND, id=7, sown_on=day("2025-05-01"), method="broadcast")
    told = told_of(stands=(at.STAND, last))
    assert told[Part.SOWINGS] == (("drilled",), ("broadcast",))


def test_beds_are_told_in_the_order_of_their_numbers():
    beds = [but(at.GROUND, id=n, name=f"Bed {n}") for n in (10, 2, 1)]
    stands = tuple(but(at.STAND, id=bed.id, field_id=bed.id) for bed in beds)
    told = told_of(fields=tuple(beds), stands=stands)
    assert told[Part.LAND] == (("Bed 1", "Bed 2", "Bed 10"), ())
