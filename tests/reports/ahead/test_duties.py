"""From the Now page: a date explained, a duty at one press, the farm as of a day."""

import datetime as dt

from records.models import Duty, WeatherDay
from reports.papers.now import now_paper
from tests.factories import (
    DutyFactory,
    FieldFactory,
    ObservationFactory,
    PlantingFactory,
    TerminationFactory,
)
from tests.reports.ahead.places import SOWN, TODAY, address, on, page


def pressed(world, stand, **more):
    return {
        "what": "cut",
        "from_window": "cut",
        "field": stand.field_id,
        "planting": stand.pk,
        "earliest_on": TODAY,
        "latest_on": TODAY + dt.timedelta(days=5),
        "on": TODAY,
        **more,
    }


def test_one_press_on_a_window_makes_a_duty_with_its_days(
    world,
    stand,
    owner_client,
):
    text = page(owner_client, world, "reports:now").content.decode()
    assert "Make it a duty" in text and 'name="from_window" value="cut"' in text
    sent = pressed(world, stand, who_for=world.crew.pk)
    answer = owner_client.post(address(world, "records:duty-one"), sent)
    assert answer.url.endswith(f"?on={TODAY}#duties")
    duty = Duty.objects.get(planting=stand)
    assert (duty.what, duty.who_for, duty.from_window) == ("cut", world.crew, "cut")
    text = page(owner_client, world, "reports:now").content.decode()
    assert "Crew, by 17 Jul" in text
    assert "From the window of cutting, to grow back" in text


def test_a_window_pressed_twice_is_one_duty(world, stand, owner_client):
    for _press in range(2):
        owner_client.post(address(world, "records:duty-one"), pressed(world, stand))
    assert Duty.objects.filter(planting=stand).count() == 1


def test_a_duty_for_another_farms_planting_is_refused(
    world,
    stand,
    owner_client,
):
    sent = pressed(world, stand, planting=world.theirs["plantings"].pk)
    answer = owner_client.post(address(world, "records:duty-one"), sent)
    assert answer.context["form"].errors["planting"]
    assert not Duty.objects.filter(planting=stand).exists()


def test_a_duty_is_settled_by_the_record_on_the_day_it_tells_of(
    world,
    here,
    stand,
    owner_client,
):
    owner_client.post(address(world, "records:duty-one"), pressed(world, stand))
    end = TerminationFactory(
        **here, planting=stand, ended_on=TODAY, outcome="regrows", reason="weeds"
    )
    end.settle(by=world.owner, now=dt.datetime(2026, 7, 12, 12, tzinfo=dt.UTC))
    before = TODAY - dt.timedelta(days=1)
    told = {day: now_duties(world, day) for day in (before, TODAY)}
    assert told[before] == ["cut"] and told[TODAY] == []


def now_duties(world, day):
    paper = now_paper(world.farm, on=day, today=TODAY, me=world.owner)
    own = world.ours["duties"].pk
    return [row.code for row in paper["duties"] if row.id != own]


def test_a_date_says_how_it_was_made_and_what_was_seen(
    world,
    here,
    stand,
    owner_client,
):
    up = SOWN + dt.timedelta(days=4)
    ObservationFactory(**here, planting=stand, seen="emerged", seen_on=up)
    text = page(owner_client, world, "reports:now").content.decode()
    assert "How this day was made" in text
    assert "Seen, and set in place of what was reckoned" in text
    assert f"Station {world.ours['stations']}, read to" in text


def test_what_was_sown_later_was_a_plan_on_an_earlier_day(
    world,
    here,
    stand,
):
    planned = TODAY - dt.timedelta(days=8)
    field = FieldFactory(**here, name="Meadow")
    PlantingFactory(
        **here,
        field=field,
        planned_on=planned,
        sown_on=TODAY,
        line__kind=world.ours.kind,
    )
    day = TODAY - dt.timedelta(days=2)
    paper = now_paper(world.farm, on=day, today=TODAY, me=world.owner)
    told = {(row.field_name, row.missing.value) for row in paper["now"].lacks}
    assert ("Meadow", "planned_not_sown") in told


def test_what_is_written_down_from_an_earlier_day_is_dated_that_day(
    world,
    here,
    stand,
    owner_client,
):
    asked = f"?planting={stand.pk}&on=2026-07-01"
    form = page(owner_client, world, "records:new", "terminations", query=asked)
    assert form.context["form"].initial["ended_on"] == dt.date(2026, 7, 1)
    plan = PlantingFactory(
        **here,
        field=stand.field,
        planned_on=dt.date(2026, 7, 1),
        sown_on=None,
        line__kind=world.ours.kind,
    )
    asked = "?do=sow&on=2026-07-02"
    form = page(owner_client, world, "records:edit", "plantings", plan.pk, query=asked)
    assert form.context["form"].initial["sown_on"] == dt.date(2026, 7, 2)


def test_years_with_days_not_read_are_named(world, stand, owner_client):
    days = dt.date(2020, 7, 1), dt.date(2020, 8, 15)
    WeatherDay.objects.filter(day__range=days).delete()
    text = page(owner_client, world, "reports:stand", stand.pk).content.decode()
    assert "Years that do not stand in everywhere" in text
    assert '<th scope="row">2020</th><td class="figures"' in text


def test_a_duty_set_by_hand_says_who_set_its_days(world, here, stand, owner_client):
    DutyFactory(**here, field=stand.field, earliest_on=TODAY, latest_on=TODAY)
    text = page(owner_client, world, "reports:now", query=on()).content.decode()
    assert "by hand or with a plan; no window stands behind it" in text


def test_frost_that_may_kill_a_stand_stands_on_it_until_it_came(
    world,
    here,
    stand,
):
    field = FieldFactory(**here, name="Low ground")
    PlantingFactory(
        **here, field=field, sown_on=dt.date(2025, 8, 20), line__kind=world.ours.kind
    )

    def told(day):
        paper = now_paper(world.farm, on=day, today=TODAY, me=world.owner)
        rows = (row for row in paper["now"].due if row.field_name == "Low ground")
        return {(row.window.kind.value, row.state.value) for row in rows}

    days = (dt.date(2025, 10, 20) + dt.timedelta(days=4 * n) for n in range(5))
    kinds = {kind for day in days for kind, _state in told(day)}
    assert "frost_kill" in kinds
    assert "frost_kill" not in {kind for kind, _ in told(dt.date(2025, 12, 20))}
