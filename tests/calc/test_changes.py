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


def test_what_changed_says_how_much_of_it_there_was_and_which_record_was_the_first():
    stands = tuple(
        but(at.STAND, id=n, sown_on=day(on), area_m2=area_m2)
        for n, on, area_m2 in ((5, "06-01", 300.0), (6, "05-01", 200.0))
    )
    told = {
        one.part: one.uses
        for one in changes_between(spoiled(stands=stands), BEFORE, at.SEASON)
    }
    kind = told[Part.KINDS]["Buckwheat"]
    assert (kind.noun, kind.record, kind.first) == ("plantings", 6, day("05-01"))
    assert (kind.times, kind.area_m2) == (2, 500.0)
    field = told[Part.LAND][at.GROUND.name]
    assert (field.noun, field.record, field.times) == ("fields", at.GROUND.id, 2)
    assert field.area_m2 == at.GROUND.area_m2


def test_weights_and_volumes_of_an_input_are_added_up_apart():
    puts = (
        but(at.PUT, id=1, on=day("05-01"), amount=3.0, measure="mass"),
        but(at.PUT, id=2, on=day("05-02"), amount=4.0, measure="mass"),
        but(at.PUT, id=3, on=day("05-03"), amount=0.5, measure="volume"),
    )
    (one,) = (
        one
        for one in changes_between(spoiled(puts=puts), BEFORE, at.SEASON)
        if one.part is Part.INPUTS
    )
    (use,) = one.uses.values()
    assert (use.mass_kg, use.volume_m3, use.times) == (7.0, 0.5, 3)
