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
