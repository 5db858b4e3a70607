"""Who may put on restricted use, and who may work where something was sprayed."""

import pytest

from reports.calc.rules import findings
from reports.calc.rules.trained import people
from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId, Severity
from tests.calc import books as at
from tests.calc.books import but, day, rule, spoiled
from tests.calc.rules.faults import PEST, RESTRICTED, found, sprayed

CARD = rows.Licence(1, "4711", "NE", day("2026-01-01"), day("2026-12-31"))
LICENCE = [rule(RuleId.LICENCE)]
TRAINED = [rule(RuleId.TRAINED)]
TAUGHT = rows.Trained(1, day("03-01"), "Wren", "Signs", subject="workers")
# Put on 10 June at 14:00 and shut for 12 hours: lately sprayed until 11 July.
SPRAYED = (at.PUT, at.SPRAYED)


def put_on(licence, *held, on="06-10"):
    return but(sprayed(RESTRICTED, licence=licence, on=day(on)), licences=held)


@pytest.mark.parametrize("typed", ["4711", "NE 4711", "ne-4711", " N.E. 47 11 "])
def test_a_licence_is_known_however_its_number_is_typed(typed):
    assert found(put_on(typed, CARD), LICENCE) == set()


@pytest.mark.parametrize(
    ("on", "matter"),
    [
        ("2025-12-31", Matter.LICENCE_NOT_YET),
        ("2026-01-01", None),
        ("2026-12-31", None),
        ("2027-01-01", Matter.LICENCE_RAN_OUT),
    ],
)
def test_a_licence_holds_from_its_first_day_to_its_last(on, matter):
    """7 CFR 110.3(a) asks for the number of a certified applicator; a day is a day."""
    books = put_on("4711", CARD, on=on)
    books = but(books, season=but(at.SEASON, first=day("2025-01-01")))
    books = but(books, season=but(books.season, last=day("2027-12-31")))
    assert found(books, LICENCE) == ({matter} if matter else set())


def test_a_renewed_licence_holds_by_either_of_its_records():
    before = but(CARD, since=day("2020-01-01"), until=day("2025-12-31"))
    assert found(put_on("4711", before, CARD), LICENCE) == set()


@pytest.mark.parametrize(
    ("until", "renewed", "told"),
    [
        ("2027-01-14", False, False),
        ("2027-01-15", False, True),
        ("2027-03-16", False, True),
        ("2027-03-17", False, False),
        ("2027-03-16", True, False),
    ],
)
def test_a_licence_used_this_season_is_named_sixty_days_before_it_ends(
    until, renewed, told
):
    """Sixty days are our own; the books are looked at on 15 January 2027."""
    held = [but(CARD, until=day(until))]
    held += [but(CARD, id=2, since=day(until), until=day("2029-12-31"))] * renewed
    matters = found(put_on("4711", *held), LICENCE)
    assert matters == ({Matter.LICENCE_SOON} if told else set())
    assert found(but(sprayed(RESTRICTED), licences=tuple(held)), LICENCE) == {
        Matter.LICENCE_MISSING
    }


@pytest.mark.parametrize("typed", ["", " ", "-"])
def test_a_mark_is_no_number_of_a_licence(typed):
    assert found(put_on(typed, CARD), LICENCE) == {Matter.LICENCE_MISSING}


@pytest.mark.parametrize(
    ("held", "weight"),
    [
        ((), Severity.FIX),
        ((but(CARD, until=day("06-01")),), Severity.STOP),
    ],
)
def test_an_unknown_licence_is_to_mend_and_one_that_ran_out_stops(held, weight):
    (one,) = findings(put_on("4711", *held), LICENCE)
    assert one.severity is weight


def test_a_product_of_general_use_asks_for_no_licence():
    assert found(sprayed(PEST), LICENCE) == set()


def worked(on, *trained, who="Wren", **told):
    cut = but(at.ENTRY, noun="harvest-lots", on=day(on), done_by=who)
    return spoiled(entries=(cut,), trained=trained, **told)


@pytest.mark.parametrize(
    ("on", "asked"),
    [
        ("06-10", False),
        ("06-11", True),
        ("07-11", True),
        ("07-12", False),
    ],
)
def test_ground_counts_as_sprayed_until_thirty_days_after_its_interval(on, asked):
    """40 CFR 170.401: used, or under an interval, within the past 30 days."""
    told = found(worked(on), TRAINED)
    assert told == ({Matter.UNTRAINED_WORKED} if asked else set())


@pytest.mark.parametrize(
    ("training", "holds"),
    [
        (TAUGHT, True),
        (but(TAUGHT, on=day("2025-06-20")), True),
        (but(TAUGHT, on=day("2025-06-19")), False),
        (but(TAUGHT, on=day("06-21")), False),
        (but(TAUGHT, until=day("06-19")), False),
        (but(TAUGHT, subject="food"), False),
        (but(TAUGHT, person="Tomás"), False),
        (but(TAUGHT, person="WREN"), True),
    ],
)
def test_training_holds_for_twelve_months_for_whoever_had_it(training, holds):
    """40 CFR 170.401: trained within the last 12 months."""
    told = found(worked("06-20", training), TRAINED)
    assert told == (set() if holds else {Matter.UNTRAINED_WORKED})


@pytest.mark.parametrize("who", ["Ada", "ada", "Ada and Ben", "Sprayers for hire"])
def test_owner_family_and_contractors_are_left_out(who):
    """40 CFR 170.601(a)(1); whoever is hired answers for their own people."""
    hired = rows.Partner(9, "Sprayers for hire", "", is_contractor=True)
    told = {"exempt": frozenset({"Ada", "Ben"}), "partners": (at.PARTNER, hired)}
    assert found(worked("06-20", who=who, **told), TRAINED) == set()


def test_of_several_people_one_without_training_is_enough():
    told = worked("06-20", TAUGHT, who="Wren, A. Hand")
    (one,) = findings(told, TRAINED)
    assert one.found.values["who"] == "A. Hand"
    assert one.severity is Severity.FIX


def test_people_of_one_box_are_told_apart():
    assert people("Wren & Tomás; Ada y Ben / C. Ray") == [
        "Wren",
        "Tomás",
        "Ada",
        "Ben",
        "C. Ray",
    ]
    assert people("Andy Yates") == ["Andy Yates"]


LOOKED = [
    ("a look at the stand", "observations", "06-20", "Wren", (), True),
    ("nobody is named", "observations", "06-20", "", (), False),
    ("trained before", "observations", "06-20", "Wren", (TAUGHT,), False),
    ("two went", "observations", "06-20", "Wren and A. Hand", (TAUGHT,), True),
    ("the owner looks", "observations", "06-20", "Ada", (), False),
    ("the day of spraying", "observations", "06-10", "Wren", (), False),
    ("the day after", "observations", "06-11", "Wren", (), True),
    ("thirty days after the interval", "observations", "07-11", "Wren", (), True),
    ("a day more", "observations", "07-12", "Wren", (), False),
    ("before the spray", "observations", "06-01", "Wren", (), False),
    ("weighed frames", "biomass-samples", "06-20", "Wren", (), True),
    ("moved the water", "irrigations", "06-20", "Wren", (), True),
    ("took soil", "soil-tests", "06-20", "Wren", (), True),
    ("laid a film", "mulch-films-and-tarps", "06-20", "Wren", (), True),
    ("noticed a mishap", "incidents", "06-20", "Wren", (), False),
    ("had something stored", "storages", "06-20", "Wren", (), False),
]


@pytest.mark.parametrize(
    ("_what", "noun", "on", "who", "trained", "asked"),
    LOOKED,
    ids=[one[0] for one in LOOKED],
)
def test_whoever_walked_sprayed_ground_is_asked_for_training(
    _what, noun, on, who, trained, asked
):
    """40 CFR 170.401 speaks of tasks on an establishment: a look is one of them."""
    seen = but(at.ENTRY, noun=noun, on=day(on), done_by=who)
    books = spoiled(entries=(seen,), trained=trained, exempt=frozenset({"Ada"}))
    assert found(books, TRAINED) == ({Matter.UNTRAINED_WORKED} if asked else set())


def test_work_on_other_ground_is_free():
    other = but(at.GROUND, id=2, name="South")
    cut = but(at.ENTRY, noun="harvest-lots", on=day("06-20"), field_id=2)
    books = spoiled(fields=(at.GROUND, other), entries=(cut,))
    assert found(books, TRAINED) == set()
    assert found(but(books, drawn_over=frozenset({(1, 2)})), TRAINED)


@pytest.mark.parametrize(
    ("first", "last", "stops"),
    [
        ("06-01", "06-10", False),
        ("06-01", "06-11", True),
        ("07-11", "07-20", True),
        ("07-12", "07-20", False),
    ],
)
def test_work_given_to_the_untrained_on_sprayed_ground_stops(first, last, stops):
    task = rows.Task(1, 1, day(first), day(last), "Wren")
    told = findings(spoiled(tasks=(task,), entries=()), TRAINED)
    assert [one.severity for one in told] == [Severity.STOP] * stops
    taught = spoiled(tasks=(task,), entries=(), trained=(TAUGHT,))
    assert findings(taught, TRAINED) == ()
