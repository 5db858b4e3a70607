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
        "rows-0-kind": told["kind"],
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


def test_a_mix_is_not_copied_as_one_of_its_kinds(world, mix):
    kinds = {line.kind_id for line in mix.lines.all()}
    copied = {row["kind"] for row in copied_rows(world.farm, 2027)}
    assert not kinds & copied
