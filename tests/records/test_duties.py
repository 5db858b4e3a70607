"""Duties are settled by the record that does them, and open again if it is voided."""

import datetime as dt

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from farm.models import Change
from farm.writing import void, write
from records.models import Duty, Observation, Planting, SeedLine, Termination
from reports.calc.shapes.ahead import WindowKind
from reports.papers.dues import MADE_OF
from tests.factories import DutyFactory, PlantingFactory
from tests.records.typed import typed

NOW = dt.datetime(2026, 9, 1, 12, tzinfo=dt.UTC)


@pytest.fixture
def here(world):
    return {"farm": world.farm, "written_by": world.owner}


@pytest.fixture
def stand(world, here):
    return PlantingFactory(
        **here, field=world.ours["fields"], line__kind=world.ours.kind
    )


def duty(world, here, what, planting=None):
    return DutyFactory(**here, what=what, field=world.ours["fields"], planting=planting)


def is_open(row):
    return Duty.objects.open().filter(pk=row.pk).exists()


def sown(world, **more):
    row = Planting(
        farm=world.farm,
        field=world.ours["fields"],
        area_m2=100.0,
        sown_on=dt.date(2026, 8, 1),
        **more,
    )
    parts = {"lines": [SeedLine(kind=world.ours.kind)]}
    return write(row, by=world.owner, now=NOW, parts=parts)


def ended(world, stand, **more):
    row = Termination(
        farm=world.farm,
        planting=stand,
        area_m2=stand.area_m2,
        ended_on=dt.date(2026, 8, 20),
        method="flail_mown",
        **{"residue": "on_top", **more},
    )
    return write(row, by=world.owner, now=NOW)


def test_an_end_settles_the_duty_to_end(world, here, stand):
    row = duty(world, here, "end", stand)
    end = ended(world, stand)
    row.refresh_from_db()
    assert not is_open(row) and row.settled_by == end


def test_a_cut_that_grows_back_settles_only_the_cut(world, here, stand):
    cut, end = duty(world, here, "cut", stand), duty(world, here, "end", stand)
    ended(world, stand, outcome="regrows")
    assert not is_open(cut) and is_open(end)


def test_working_in_settles_the_duty_to_work_in(world, here, stand):
    row = duty(world, here, "work_in", stand)
    ended(world, stand, residue="worked_in", worked_in_on=dt.date(2026, 8, 20))
    assert not is_open(row)


def test_an_observation_settles_the_duty_to_look(world, here, stand):
    row = duty(world, here, "look", stand)
    seen = Observation(
        farm=world.farm, planting=stand, seen_on=dt.date(2026, 8, 3), seen="emerged"
    )
    write(seen, by=world.owner, now=NOW)
    assert not is_open(row)


def test_sowing_settles_what_was_planned_on_the_field_of_the_same_kind(world, here):
    plan = PlantingFactory(
        **here,
        field=world.ours["fields"],
        sown_on=None,
        planned_on=dt.date(2026, 8, 1),
        line__kind=world.ours.kind,
    )
    row = duty(world, here, "sow", plan)
    planted = sown(world)
    row.refresh_from_db()
    assert row.settled_by == planted


def test_a_plan_settles_nothing_until_it_is_sown(world, here):
    row = duty(world, here, "sow")
    plan = sown(world)
    void(plan, by=world.owner, now=NOW, reason="A slip")
    assert is_open(row)


def test_the_next_crop_settles_the_duty_to_plant(world, here):
    row = duty(world, here, "plant")
    sown(world, purpose="cash")
    assert not is_open(row)


def test_a_record_of_another_planting_settles_nothing(world, here, stand):
    other = PlantingFactory(**here, field=world.ours["fields"])
    row = duty(world, here, "end", stand)
    ended(world, other)
    assert is_open(row)


def test_a_voided_record_settles_nothing_any_more(world, here, stand):
    row = duty(world, here, "end", stand)
    end = ended(world, stand)
    void(end, by=world.owner, now=NOW, reason="Wrong bed")
    assert is_open(row)


def test_settling_is_noted_among_the_changes(world, here, stand):
    row = duty(world, here, "end", stand)
    end = ended(world, stand)
    noted = Change.objects.get(noun="duty", object_id=row.pk, verb="changed")
    assert noted.after == {"ending": str(end)}


def test_a_duty_done_by_hand_is_settled(world, here):
    row = duty(world, here, "sow")
    row.done_on = dt.date(2026, 7, 9)
    row.save()
    assert not is_open(row)


def test_a_person_sees_their_own_duties_and_those_of_nobody(world, here):
    mine = DutyFactory(**here, field=world.ours["fields"], who_for=world.crew)
    other = DutyFactory(**here, field=world.ours["fields"], who_for=world.owner)
    nobody = DutyFactory(**here, field=world.ours["fields"])
    found = set(Duty.objects.for_person(world.crew))
    assert {mine, nobody} <= found and other not in found


def test_a_duty_cannot_be_given_to_a_stranger(world, owner_client):
    url = reverse("records:new", args=[world.farm.slug, "duties"])
    sent = typed("duties", world.ours, who_for=world.stranger.pk)
    answer = owner_client.post(url, sent)
    assert answer.status_code == 200 and answer.context["form"].errors["who_for"]


def test_a_duty_is_given_to_one_of_the_farm(world, owner_client):
    url = reverse("records:new", args=[world.farm.slug, "duties"])
    owner_client.post(url, typed("duties", world.ours, who_for=world.crew.pk))
    assert Duty.objects.latest("pk").who_for == world.crew


def test_a_duty_is_not_over_before_it_begins(world, owner_client):
    url = reverse("records:new", args=[world.farm.slug, "duties"])
    sent = typed("duties", world.ours, latest_on="2026-06-19")
    assert owner_client.post(url, sent).context["form"].errors["latest_on"]


def test_something_else_is_said_in_words(world, here):
    row = DutyFactory.build(**here, what="other", field=world.ours["fields"])
    with pytest.raises(ValidationError, match="in words"):
        row.full_clean()


def test_the_windows_a_duty_may_come_from_are_those_that_are_reckoned():
    reckoned = {kind.value for kind in WindowKind}
    assert set(Duty.Window.values) - {"plant_back"} <= reckoned


def test_every_window_makes_a_duty_with_what_it_asks_for_and_where_it_came_from():
    whats, origins = zip(*MADE_OF.values(), strict=True)
    assert set(MADE_OF) == set(WindowKind)
    assert set(whats) <= set(Duty.What.values)
    assert set(origins) - {""} <= set(Duty.Window.values)
