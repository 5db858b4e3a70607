"""The season plan as a sheet keeps what its rows do not show."""

import datetime as dt

import pytest
from django.utils import timezone

from records.forms.plan_sheet import copied_rows, planned_rows, save, sheet
from records.models import Planting
from tests.factories import KindFactory, PlantingFactory, SeedLineFactory

pytestmark = pytest.mark.django_db
DAY = dt.date(2026, 8, 3)


@pytest.fixture
def mix(world):
    planting = PlantingFactory(
        farm=world.farm,
        field=world.ours["fields"],
        sown_on=None,
        planned_on=DAY,
    )
    planting.lines.all().delete()
    for n in (1, 2):
        kind = KindFactory(farm=world.farm, slug=f"mix-{n}", name=f"Mix {n}")
        SeedLineFactory(planting=planting, kind=kind, share=0.5)
    return planting


def test_moving_a_planned_mix_by_a_week_keeps_every_kind_of_it(world, mix):
    told = next(
        row for row in planned_rows(world.farm, 2026) if row["planting"] == mix.pk
    )
    typed = {"rows-TOTAL_FORMS": "1", "rows-INITIAL_FORMS": "0"}
    typed |= {
        "rows-0-planting": mix.pk,
        "rows-0-field": told["field"],
        "rows-0-mix": told["mix"],
        "rows-0-area_m2": "1 ac",
        "rows-0-method": told["method"],
        "rows-0-planned_on": "2026-08-10",
    }
    rows = sheet(world.farm, today=DAY, data=typed)
    assert rows.is_valid(), rows.errors
    save(rows, by=world.owner, now=timezone.now())
    kept = Planting.objects.get(pk=mix.pk)
    assert kept.planned_on == dt.date(2026, 8, 10)
    names = kept.lines.values_list("kind__name", flat=True)
    assert sorted(names) == ["Mix 1", "Mix 2"]


def test_a_mix_is_copied_with_its_shares(world, mix):
    told = [row["mix"] for row in copied_rows(world.farm, 2027)]
    assert "Mix 1 50 + Mix 2 50" in told


def test_a_mix_is_edited_on_the_sheet(world, mix):
    mix.lines.filter(kind__name="Mix 1").update(seed_kg=2.5)
    typed = row_of(mix, mix="mix 2 30 + 70 % Mix 1")
    rows = sheet(world.farm, today=DAY, data=typed)
    assert rows.is_valid(), rows.errors
    save(rows, by=world.owner, now=timezone.now())
    shares = dict(mix.lines.values_list("kind__name", "share"))
    assert shares == pytest.approx({"Mix 1": 0.7, "Mix 2": 0.3})
    assert mix.lines.get(kind__name="Mix 1").seed_kg == 2.5


def test_a_mix_is_added_on_the_sheet_with_its_duty(world, mix):
    typed = row_of(mix, mix="Mix 1 + Mix 2", planting="", planned_on="2027-08-09")
    rows = sheet(world.farm, today=DAY, data=typed)
    assert rows.is_valid(), rows.errors
    save(rows, by=world.owner, now=timezone.now())
    made = Planting.objects.get(planned_on=dt.date(2027, 8, 9))
    assert [line.share for line in made.lines.all()] == [0.5, 0.5]
    assert made.duties.filter(what="sow").exists()


@pytest.mark.parametrize(
    ("typed", "word"),
    [
        ("Mix 1 50 + Moon grass 50", "No kind is called"),
        ("Mix 1 50 + Mix 2 40", "add up to 90"),
        ("Mix 1 50 + Mix 2", "its share"),
        ("Mix 1 50 + mix 1 50", "twice"),
        ("+ 50", "is no kind"),
    ],
)
def test_a_mix_that_cannot_be_read_is_said_so_and_nothing_is_written(
    world, mix, typed, word
):
    rows = sheet(world.farm, today=DAY, data=row_of(mix, mix=typed))
    assert not rows.is_valid()
    assert word in str(rows.forms[0].errors["mix"])


def test_a_row_is_one_kind_or_a_mix(world, mix):
    both = row_of(mix, mix="Mix 1 + Mix 2", kind=world.ours.kind.pk)
    none = row_of(mix, mix="")
    errors = [
        sheet(world.farm, today=DAY, data=typed).forms[0] for typed in (both, none)
    ]
    assert errors[0].errors["mix"] and errors[1].errors["kind"]


def row_of(plan, **typed):
    told = {
        "planting": plan.pk,
        "field": plan.field_id,
        "area_m2": "1 ac",
        "method": "broadcast",
        "planned_on": str(DAY),
        **typed,
    }
    sent = {f"rows-0-{name}": value for name, value in told.items()}
    return {"rows-TOTAL_FORMS": "1", "rows-INITIAL_FORMS": "0", **sent}
