"""A caution when work is given out where something was sprayed lately."""

import datetime as dt

import pytest
from django.contrib.messages import get_messages
from django.urls import reverse

from records.protection import training_first
from tests.factories import (
    ApplicationFactory,
    DutyFactory,
    FieldFactory,
    InputProductFactory,
    RulesFollowedFactory,
    TrainingFactory,
)
from tests.records.typed import typed

TAUGHT = {"person": "Crew", "subject": "workers", "trained_on": dt.date(2026, 3, 1)}


@pytest.fixture
def here(world):
    return {"farm": world.farm, "written_by": world.owner}


@pytest.fixture
def sprayed(world, here):
    """Something sprayed on North on 20 June, on a farm that follows 40 CFR 170."""
    RulesFollowedFactory(**here, which="workers")
    product = InputProductFactory(**here, name="Soap", type="pest")
    field = world.ours["fields"]
    return ApplicationFactory(
        **here, product=product, field=field, applied_on=dt.date(2026, 6, 20)
    )


def given(world, here, **more):
    told = {"field": world.ours["fields"], "who_for": world.crew, **more}
    return DutyFactory(**here, **told)


@pytest.mark.django_db
def test_whoever_was_not_trained_is_named_with_the_spray(world, here, sprayed):
    """40 CFR 170.401: trained in the twelve months before work on such ground."""
    (told,) = training_first(given(world, here))
    assert "Soap was used here on 20 Jun 2026" in told
    assert "no training of Crew" in told


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("training", "warned"),
    [
        (TAUGHT, False),
        ({**TAUGHT, "person": "CREW"}, False),
        ({**TAUGHT, "subject": "food"}, True),
        ({**TAUGHT, "trained_on": dt.date(2025, 3, 1)}, True),
        ({**TAUGHT, "valid_until": dt.date(2026, 7, 1)}, True),
    ],
)
def test_training_of_the_year_is_enough(training, warned, world, here, sprayed):
    TrainingFactory(**here, **training)
    assert bool(list(training_first(given(world, here)))) is warned


@pytest.mark.django_db
def test_owner_family_and_work_for_nobody_are_left_out(world, here, sprayed):
    assert not list(training_first(given(world, here, who_for=world.owner)))
    assert not list(training_first(given(world, here, who_for=None)))
    duty = given(world, here)
    duty.farm.family = "crew"
    assert not list(training_first(duty))


@pytest.mark.django_db
@pytest.mark.parametrize(("part", "warned"), [(True, True), (False, False)])
def test_parts_of_the_ground_count_and_other_ground_does_not(
    part, warned, world, here, sprayed
):
    parent = world.ours["fields"] if part else None
    bed = FieldFactory(**here, parent=parent)
    assert bool(list(training_first(given(world, here, field=bed)))) is warned


@pytest.mark.django_db
def test_what_was_used_long_before_or_is_no_spray_warns_of_nothing(
    world, here, sprayed
):
    late = dt.date(2026, 9, 1)
    duty = given(world, here, earliest_on=late, latest_on=late)
    assert not list(training_first(duty))
    sprayed.product.type = "compost"
    sprayed.product.save()
    assert not list(training_first(given(world, here)))


@pytest.mark.django_db
@pytest.mark.parametrize("name", ["new", "duty-one"])
def test_the_caution_is_shown_when_the_duty_is_written(
    name, world, here, sprayed, owner_client
):
    url = reverse(
        f"records:{name}",
        args=["alder-hill", "duties"] if name == "new" else ["alder-hill"],
    )
    days = {"earliest_on": "2026-07-08", "latest_on": "2026-07-11"}
    sent = typed("duties", world.ours, who_for=world.crew.pk, **days)
    answer = owner_client.post(url, sent)
    assert answer.status_code == 302
    said = [str(one) for one in get_messages(answer.wsgi_request)]
    assert any("worker protection" in one for one in said)
