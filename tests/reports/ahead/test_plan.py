"""The plan of a season in one sheet, checked as it is typed."""

import datetime as dt

from records.models import Duty, Planting
from tests.factories import (
    FieldFactory,
    KindFactory,
    PlantingFactory,
)
from tests.reports.ahead.places import (
    SOWN,
    TODAY,
    address,
    page,
)


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


def test_a_mix_is_checked_kind_by_kind_as_it_is_typed(world, here, stand, owner_client):
    KindFactory(farm=world.farm, slug="moon-grass", name="Moon grass")
    query = f"?prefix=r&r-field={stand.field_id}&r-planned_on={TODAY}"
    query += "&r-mix=Buckwheat+60+%2B+Moon+grass+40"
    answer = page(owner_client, world, "reports:plan-check", query=query)
    names = [kind.name for kind, _check in answer.context["checks"]]
    assert sorted(names) == ["Buckwheat", "Moon grass"]


def test_a_filled_row_is_folded_to_one_line_and_a_wrong_one_stands_open(
    world, here, owner_client
):
    field = FieldFactory(**here, name="A")
    rows = [row_of(world, field, "2027-06-01"), row_of(world, field, "soon")]
    answer = owner_client.post(
        address(world, "records:plan", 2027), sheet(world, *rows)
    )
    text = answer.content.decode()
    assert '<details><summary>1. <span id="gist-rows-0">A · Buckwheat · 1 Jun' in text
    assert '<details open><summary>2. <span id="gist-rows-1">A · Buckwheat · s' in text


def test_the_line_of_a_folded_row_follows_what_is_typed(world, stand, owner_client):
    kind = world.ours.kind.pk
    typed = f"rows-4-field={stand.field_id}&rows-4-kind={kind}&rows-4-planned_on="
    query = f"?prefix=rows-4&{typed}{TODAY}"
    text = page(owner_client, world, "reports:plan-check", query=query).content.decode()
    assert (
        'id="gist-rows-4" hx-swap-oob="true">Creek · Buckwheat · 12 Jul 2026<' in text
    )
    strange = query.replace("rows-4", "x<b>")
    answer = page(owner_client, world, "reports:plan-check", query=strange)
    assert "hx-swap-oob" not in answer.content.decode()


def test_a_stand_ended_by_the_date_of_the_gap_is_explained_at_a_press(
    world, here, stand, owner_client
):
    field = FieldFactory(**here, name="Bare")
    crop = dt.date(2026, 10, 1)
    PlantingFactory(**here, field=field, sown_on=None, planned_on=crop)
    query = f"{address(world, 'reports:gaps')}?on={TODAY}&field={field.pk}"
    text = owner_client.get(query).content.decode()
    assert (
        "is planned for 1 October 2026; after this kind is worked in, it waits" in text
    )
    assert "its seed can sprout from about" in text


def test_a_plan_that_was_given_up_stands_with_its_reason(
    world, here, stand, owner_client
):
    plan = PlantingFactory(
        **here,
        field=stand.field,
        sown_on=None,
        planned_on=dt.date(2026, 5, 1),
        line__kind=world.ours.kind,
    )
    told = {"reason": "The ground stayed wet."}
    owner_client.post(address(world, "records:void", "plantings", plan.pk), told)
    answer = page(owner_client, world, "reports:turned", 2026)
    assert [row.why for row in answer.context["given_up"]] == [told["reason"]]
    assert told["reason"] in answer.content.decode()
    assert [part.came.value for part in answer.context["parts"]] == ["unplanned"]
