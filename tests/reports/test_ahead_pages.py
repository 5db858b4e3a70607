"""The pages that look ahead, from the tables to the page, on a farm of real weather."""

import datetime as dt

import numpy as np
import pytest
from django.urls import reverse

from records.models import Duty, Planting, WeatherDay
from reports import pdf
from reports.ledger.ahead import seed_left
from reports.papers.ahead import asked_day
from reports.papers.gaps import gaps_paper
from reports.papers.now import now_paper
from reports.papers.week import week_paper
from tests import world as cast
from tests.factories import (
    DutyFactory,
    FieldFactory,
    KindFactory,
    KindFigureFactory,
    ObservationFactory,
    PlantingFactory,
    SeedLotFactory,
    TerminationFactory,
)

TODAY = dt.date(2026, 7, 12)
SOWN = dt.date(2026, 6, 20)
FIGURES = (
    ("emergence_days", 3, 5, "days", "OMAFRA-BW"),
    ("canopy_days", 14, 14, "days", "MCCP3-ARROW"),
    ("first_flower_days", 28, 32, "days", "CALC"),
    ("full_bloom_days", 35, 35, "days", "CORN-HB-KEY"),
    ("viable_seed_days", 45, 45, "days", "CORN-HB-KEY"),
    ("end_after_flower_days", 7, 10, "days", "OMAFRA-BW"),
    ("regrowth_bloom_limit", 25, 25, "%", "COMMON"),
    ("kill_temp", 32, 32, "F", "ASSUMED"),
    ("seeding_rate_broadcast", 70, 70, "lb/ac", "CORN-BW"),
    ("decay_k", 0.025, 0.025, "per DD", "UPGM"),
    ("nitrogen_percent", 2, 2, "%", "MCCP3-N"),
)


@pytest.fixture
def here(world):
    return {"farm": world.farm, "written_by": world.owner}


@pytest.fixture
def stand(world, here):
    kind = world.ours.kind
    for attribute, low, high, unit, source in FIGURES:
        KindFigureFactory(
            kind=kind, attribute=attribute, low=low, high=high, unit=unit, source=source
        )
    years(world.ours["stations"])
    field = FieldFactory(**here, name="Creek")
    return PlantingFactory(**here, field=field, sown_on=SOWN, line__kind=kind)


def years(station, count=12):
    """Years alike but for a little: warm summers, first frost in October."""
    first = dt.date(TODAY.year - count, 1, 1)
    days = np.arange((TODAY - first).days + 1)
    wave = 10 - 13 * np.cos(2 * np.pi * (days - 20) / 365.25) + 2 * np.sin(days * 1.7)
    WeatherDay.objects.filter(station=station).delete()
    WeatherDay.objects.bulk_create(
        WeatherDay(
            station=station,
            day=first + dt.timedelta(days=int(day)),
            tmin_c=float(mean - 6),
            tmax_c=float(mean + 6),
            rain_mm=5.0 if day % 3 == 0 else 0.0,
        )
        for day, mean in zip(days, wave, strict=True)
    )


def address(world, name, *args, query=""):
    return reverse(name, args=[world.farm.slug, *args]) + query


def on(day=TODAY):
    return f"?on={day}"


def page(client, world, name, *args, query=None):
    answer = client.get(address(world, name, *args, query=query or on()))
    assert answer.status_code == 200
    return answer


# --- Now ---------------------------------------------------------------------


def now(world, **more):
    return now_paper(world.farm, on=TODAY, today=TODAY, me=world.owner, **more)


def test_the_now_page_tells_what_is_open_and_what_closes(world, stand, owner_client):
    paper = now(world)
    told = {(row.field_name, row.window.kind.value) for row in paper["now"].due}
    assert ("Creek", "cut") in told
    text = page(owner_client, world, "reports:now").content.decode()
    assert "Creek" in text and "Cut, to grow back" in text


def test_each_date_on_it_can_be_pressed_to_be_explained(world, stand, owner_client):
    text = page(owner_client, world, "reports:now").content.decode()
    explained = address(world, "reports:stand", stand.pk, query=f"{on()}#cut")
    assert explained in text
    told = page(owner_client, world, "reports:stand", stand.pk).content.decode()
    assert 'id="cut"' in told and "Why it closes" in told


def test_what_was_ended_asks_for_nothing_more(world, here, stand):
    TerminationFactory(**here, planting=stand, ended_on=TODAY, reason="weeds")
    names = {row.field_name for row in now(world)["now"].due}
    assert "Creek" not in names


def test_records_that_are_missing_are_named(world, here, stand):
    lacks = {(row.field_name, row.missing.value) for row in now(world)["now"].lacks}
    assert ("Creek", "never_seen_up") in lacks
    ObservationFactory(**here, planting=stand, seen="emerged", seen_on=SOWN)
    lacks = {(row.field_name, row.missing.value) for row in now(world)["now"].lacks}
    assert ("Creek", "never_seen_up") not in lacks


def test_an_end_without_its_reason_is_asked_for(world, here, stand):
    TerminationFactory(**here, planting=stand, ended_on=TODAY, reason="")
    lacks = {(row.field_name, row.missing.value) for row in now(world)["now"].lacks}
    assert ("Creek", "no_reason") in lacks


def test_duties_stand_on_it_by_field_and_as_a_list(world, here, stand, owner_client):
    DutyFactory(
        **here,
        field=stand.field,
        words="Sharpen the scythe",
        earliest_on=TODAY,
        latest_on=TODAY,
    )
    for query in (on(), f"{on()}&by=field"):
        text = page(owner_client, world, "reports:now", query=query).content.decode()
        assert "Sharpen the scythe" in text


def test_nothing_that_happened_later_is_known_on_an_earlier_day(world, here, stand):
    TerminationFactory(**here, planting=stand, ended_on=TODAY, reason="weeds")
    earlier = TODAY - dt.timedelta(days=2)
    paper = now_paper(world.farm, on=earlier, today=TODAY, me=world.owner)
    assert "Creek" in {row.field_name for row in paper["now"].due}


@pytest.mark.parametrize(
    ("asked", "day"),
    [
        ("2026-07-01", dt.date(2026, 7, 1)),
        ("2026-08-01", TODAY),
        ("soon", TODAY),
        ("", TODAY),
        ("0001-01-01", TODAY),
    ],
)
def test_only_days_up_to_today_can_be_looked_from(asked, day):
    assert asked_day(asked, TODAY) == day


def test_thirty_fields_take_no_more_queries(
    world, here, stand, django_assert_num_queries
):
    with django_assert_num_queries(17) as first:
        now(world)
    for number in range(30):
        field = FieldFactory(**here, name=f"Bed {number}")
        PlantingFactory(**here, field=field, sown_on=SOWN, line__kind=world.ours.kind)
    with django_assert_num_queries(len(first)):
        now(world)


def test_without_weather_the_page_says_what_it_cannot_say(
    world, here, stand, as_person
):
    WeatherDay.objects.all().delete()
    client = as_person(world.crew)
    text = page(client, world, "reports:now").content.decode()
    assert "too few years are on record" in text
    assert "dates go by days, and no odds of frost are told" in text
    told = page(client, world, "reports:stand", stand.pk).content.decode()
    assert "No weather is on record" in told


# --- Stand and residue ---------------------------------------------------------


def test_a_stands_page_draws_its_stages_and_says_how_each_is_known(
    world, stand, owner_client
):
    text = page(owner_client, world, "reports:stand", stand.pk).content.decode()
    assert "<svg" in text and "the range in print, not odds" in text
    assert "In the week after sowing" in text


def test_an_inspector_reads_but_is_offered_nothing_to_write(world, stand, as_person):
    text = page(as_person(world.inspector), world, "reports:now").content.decode()
    assert "Write down the cut" not in text and "See the stand" in text


def test_both_residues_stand_side_by_side_with_what_matters(world, stand, owner_client):
    query = f"{on()}&end=2026-07-30&wish=weeds"
    answer = page(owner_client, world, "reports:residue", stand.pk, query=query)
    assert [row.wish.value for row in answer.context["advice"]] == ["weeds"]
    assert answer.context["choice"].ended_on == dt.date(2026, 7, 30)
    assert not answer.context["choice"].on_top.taken
    text = answer.content.decode()
    assert "Left on top against worked in" in text
    names = [pair.name for pair in answer.context["ways"]]
    assert names == ["Mass left", "Ground covered", "Weeds held back", "Nitrogen freed"]
    assert text.count("<svg") == 7
    assert answer.context["serving"].wish.value == "weeds"


def test_the_choice_and_its_reason_go_to_the_form_of_the_end(
    world, stand, owner_client
):
    query = f"?planting={stand.pk}&residue=worked_in&reason=Nitrogen+soon"
    form = page(owner_client, world, "records:new", "terminations", query=query)
    initial = form.context["form"].initial
    assert initial["residue"] == "worked_in" and initial["reason"] == "Nitrogen soon"


def test_a_stand_of_another_farm_is_not_found(world, stand, as_person):
    theirs = world.theirs["plantings"].pk
    for name in ("reports:stand", "reports:residue"):
        assert (
            as_person(world.owner).get(address(world, name, theirs)).status_code == 404
        )


# --- Gaps and plans ------------------------------------------------------------


def gaps(world, **asked):
    return gaps_paper(world.farm, on=TODAY, asked=asked)


def test_a_gap_names_the_kinds_that_fit_it(world, here, stand):
    bare = FieldFactory(**here, name="Bare")
    SeedLotFactory(**here, kind=world.ours.kind, lot_number="BW-30")
    (part,) = gaps(world, field=str(bare.pk))["parts"]
    assert part.gap.first == TODAY
    fit = part.best[0].fit
    assert fit.name == "Buckwheat" and fit.sow_from == TODAY
    assert fit.seed.on_hand_kg > 0
    assert fit.look_on > fit.sow_from


def test_the_days_of_a_gap_are_explained_at_a_press(world, here, stand, owner_client):
    FieldFactory(**here, name="Bare")
    text = page(owner_client, world, "reports:gaps").content.decode()
    assert "the first day on which this kind has time enough" in text
    assert "the last day from which it still covered the ground" in text


def test_seed_that_came_or_was_sown_later_is_not_told_of_an_earlier_day(world, here):
    kind, early = KindFactory(), TODAY - dt.timedelta(days=30)
    lot = SeedLotFactory(**here, kind=kind, received_on=early, received_kg=50.0)
    PlantingFactory(
        **here,
        field=world.ours["fields"],
        sown_on=TODAY,
        line__kind=kind,
        line__lot=lot,
        line__seed_kg=20.0,
    )
    before = seed_left(world.farm, on=early)[kind.slug][0].live_kg
    after = seed_left(world.farm, on=TODAY)[kind.slug][0].live_kg
    assert after == pytest.approx(before * 30 / 50)
    assert kind.slug not in seed_left(world.farm, on=early - dt.timedelta(days=1))


def test_one_press_plans_it_with_its_duties(world, here, stand, owner_client):
    bare = FieldFactory(**here, name="Bare")
    owner_client.post(
        address(world, "records:plan-one"),
        {
            "field": bare.pk,
            "kind": world.ours.kind.pk,
            "planned_on": "2026-07-20",
            "sow_until": "2026-08-10",
            "look_on": "2026-07-29",
            "end_by": "2026-09-15",
            "next_crop": "Garlic",
            "next_crop_on": "2026-10-01",
        },
    )
    plan = Planting.objects.get(field=bare)
    assert plan.planned_on == dt.date(2026, 7, 20) and plan.sown_on is None
    assert plan.next_crop == "Garlic"
    duties = Duty.objects.filter(planting=plan).order_by("latest_on")
    assert [row.what for row in duties] == ["look", "sow", "end"]
    assert [row.latest_on for row in duties] == [
        dt.date(2026, 8, 5),
        dt.date(2026, 8, 10),
        dt.date(2026, 9, 15),
    ]


def test_what_is_planned_is_no_gap_any_more(world, here, stand, owner_client):
    bare = FieldFactory(**here, name="Bare")
    sent = {"field": bare.pk, "kind": world.ours.kind.pk, "planned_on": TODAY}
    owner_client.post(address(world, "records:plan-one"), sent)
    first = [part.gap.first for part in gaps(world, field=str(bare.pk))["parts"]]
    assert TODAY not in first


def test_a_plan_on_another_farms_field_is_refused(world, stand, owner_client):
    sent = {
        "field": world.theirs["fields"].pk,
        "kind": world.ours.kind.pk,
        "planned_on": TODAY,
    }
    answer = owner_client.post(address(world, "records:plan-one"), sent)
    assert answer.status_code == 200 and answer.context["form"].errors["field"]


def sheet(world, *rows, do="save"):
    sent = {"rows-TOTAL_FORMS": len(rows), "rows-INITIAL_FORMS": 0, "do": do}
    for place, row in enumerate(rows):
        sent |= {f"rows-{place}-{name}": value for name, value in row.items()}
    return sent


def row_of(world, field, day, **more):
    return {"field": field.pk, "kind": world.ours.kind.pk, "planned_on": day, **more}


def test_many_fields_are_planned_at_once(world, here, owner_client):
    fields = [FieldFactory(**here, name=name) for name in "AB"]
    rows = [row_of(world, field, "2027-06-01") for field in fields]
    owner_client.post(address(world, "records:plan", 2027), sheet(world, *rows))
    planned = Planting.objects.filter(field__in=fields)
    assert {row.planned_on for row in planned} == {dt.date(2027, 6, 1)}
    assert Duty.objects.filter(planting__in=planned, what="sow").count() == 2


def test_all_rows_are_saved_or_none(world, here, owner_client):
    field = FieldFactory(**here, name="A")
    rows = [row_of(world, field, "2027-06-01"), row_of(world, field, "soon")]
    answer = owner_client.post(
        address(world, "records:plan", 2027), sheet(world, *rows)
    )
    assert answer.status_code == 200
    assert not Planting.objects.filter(field=field).exists()


def test_picked_rows_move_by_a_week_and_nothing_is_saved(world, here, owner_client):
    field = FieldFactory(**here, name="A")
    rows = [
        row_of(world, field, "2027-06-01", pick="on"),
        row_of(world, field, "2027-06-01"),
    ]
    answer = owner_client.post(
        address(world, "records:plan", 2027), sheet(world, *rows, do="later")
    )
    days = [row["planned_on"].value() for row in answer.context["rows"]]
    assert days == ["2027-06-08", "2027-06-01"]
    assert not Planting.objects.filter(field=field).exists()


def test_more_rows_can_be_asked_for(world, owner_client):
    answer = owner_client.post(
        address(world, "records:plan", 2027), sheet(world, {}, do="more")
    )
    assert len(answer.context["rows"].forms) == 4


def test_last_years_covers_are_copied_a_year_on(world, stand, owner_client):
    answer = page(owner_client, world, "records:plan", 2027, query="?copy=1")
    days = {row.initial.get("planned_on") for row in answer.context["rows"]}
    assert SOWN + dt.timedelta(weeks=52) in days


def test_a_plan_written_down_is_moved_on_the_sheet(world, here, owner_client):
    plan = PlantingFactory(
        **here,
        field=world.ours["fields"],
        sown_on=None,
        planned_on=dt.date(2027, 6, 1),
        line__kind=world.ours.kind,
    )
    row = row_of(world, plan.field, "2027-06-08", planting=plan.pk)
    owner_client.post(address(world, "records:plan", 2027), sheet(world, row))
    plan.refresh_from_db()
    assert plan.planned_on == dt.date(2027, 6, 8)
    assert plan.lines.count() == 1


def checks(client, world, field, kind, day):
    query = f"?prefix=r&r-field={field.pk}&r-kind={kind.pk}&r-planned_on={day}"
    answer = page(client, world, "reports:plan-check", query=query)
    return {
        one.value for _kind, check in answer.context["checks"] for one in check.found
    }


def test_a_row_is_checked_against_windows_and_overlaps(
    world, here, stand, owner_client
):
    kind, bare = world.ours.kind, FieldFactory(**here, name="Bare")
    late = f"{TODAY.year}-11-01"
    assert "unlikely" in checks(owner_client, world, bare, kind, late)
    today = dt.datetime.now(dt.UTC).date()
    PlantingFactory(**here, field=bare, sown_on=None, planned_on=today, line__kind=kind)
    assert "overlaps" in checks(owner_client, world, bare, kind, today)


def test_plan_and_what_happened_stand_side_by_side(world, here, stand, owner_client):
    PlantingFactory(
        **here,
        field=stand.field,
        planned_on=dt.date(2026, 5, 1),
        sown_on=dt.date(2026, 5, 20),
        line__kind=world.ours.kind,
    )
    answer = page(owner_client, world, "reports:turned", 2026)
    told = {(row.came.value, row.late_days) for row in answer.context["rows"]}
    assert ("late", 19) in told and ("unplanned", None) in told


def test_dates_foretold_stand_beside_those_seen(world, here, stand, owner_client):
    ObservationFactory(
        **here, planting=stand, seen="first_flower", seen_on=dt.date(2026, 7, 22)
    )
    answer = page(owner_client, world, "reports:foretold")
    late = {
        row.told.name.value: row.late_days
        for name, row in answer.context["rows"]
        if name == "Creek"
    }
    stages = {one.name.value for one, told in answer.context["by_stage"] if told}
    assert "first_flower" in stages
    # In print: first flower on day 30, which is 20 July.
    assert late["first_flower"] == 2


# --- The week sheet --------------------------------------------------------------


def test_the_week_sheet_prints_what_is_to_be_done(world, here, stand):
    DutyFactory(
        **here,
        field=stand.field,
        words="Mow the strip",
        earliest_on=TODAY,
        latest_on=TODAY + dt.timedelta(days=2),
    )
    paper = week_paper(world.farm, on=TODAY, today=TODAY)
    assert "Creek" in [part.name for part in paper["fields"]]
    printed = pdf.print_paper("week_print", paper)
    assert printed.startswith(b"%PDF") and len(printed) > 2000
    assert printed == pdf.print_paper("week_print", paper)


def test_a_farm_without_anything_has_a_now_page(db, as_person):
    member = cast.MembershipFactory(farm__slug="bare", farm__name="Bare")
    client = as_person(member.user)
    for name in ("now", "gaps", "foretold"):
        assert client.get(reverse(f"reports:{name}", args=["bare"])).status_code == 200


# --- Cautions at the moment of the act --------------------------------------------


def cautions(client, world, **chosen):
    query = "?" + "&".join(f"{name}={value}" for name, value in chosen.items())
    answer = page(client, world, "reports:acts", query=query)
    return [row.act.value for row in answer.context["warned"]]


def test_the_form_of_an_end_asks_for_the_cautions_of_what_is_chosen(
    world, stand, owner_client
):
    form = page(owner_client, world, "records:new", "terminations", query="?")
    assert address(world, "reports:acts") in form.content.decode()
    assert cautions(owner_client, world, planting=stand.pk, method="grazed") == [
        "graze"
    ]


def test_spreading_manure_is_warned_of(world, stand, owner_client):
    product = world.ours["input-products"]
    assert cautions(owner_client, world, product=product.pk) == []
    product.type = "manure"
    product.save()
    assert cautions(owner_client, world, product=product.pk) == ["manure"]


def test_each_caution_stands_with_its_source_on_the_assumptions_page(
    world, owner_client
):
    text = page(owner_client, world, "reports:assumptions").content.decode()
    assert "Ask your veterinarian or Extension about this kind" in text
    assert "common practice" in text


def test_a_mix_is_checked_kind_by_kind_as_it_is_typed(world, here, stand, owner_client):
    KindFactory(farm=world.farm, slug="moon-grass", name="Moon grass")
    query = f"?prefix=r&r-field={stand.field_id}&r-planned_on={TODAY}"
    query += "&r-mix=Buckwheat+60+%2B+Moon+grass+40"
    answer = page(owner_client, world, "reports:plan-check", query=query)
    names = [kind.name for kind, _check in answer.context["checks"]]
    assert sorted(names) == ["Buckwheat", "Moon grass"]
