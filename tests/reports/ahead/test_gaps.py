"""Gaps, what fits them, and a plan at one press."""

import datetime as dt

import pytest

from records.models import Duty, Planting
from reports.ledger.ahead import seed_left
from reports.papers.gaps import gaps_paper
from tests.factories import (
    FieldFactory,
    KindFactory,
    KindFigureFactory,
    PlantingFactory,
    SeedLotFactory,
)
from tests.reports.ahead.places import (
    TODAY,
    address,
    page,
)


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


def test_a_gap_too_short_for_any_kind_says_so_before_it_is_opened(
    world, here, stand, owner_client
):
    field, after = FieldFactory(**here, name="Bare"), TODAY + dt.timedelta(days=16)
    PlantingFactory(
        **here,
        field=field,
        sown_on=None,
        planned_on=after,
        line__kind=world.ours.kind,
    )
    (part, *_) = gaps(world, field=str(field.pk))["parts"]
    assert part.best[0].fit.sow_from is None
    text = page(owner_client, world, "reports:gaps").content.decode()
    assert "None has time enough; the nearest:" in text


def test_the_warmth_of_soil_a_kind_waits_for_is_told(world, here, stand, owner_client):
    KindFigureFactory(
        kind=world.ours.kind,
        attribute="sow_soil_temp",
        low=65,
        high=65,
        unit="F",
        source="CORN-BW24",
    )
    slug = world.ours.kind.slug
    text = page(owner_client, world, "reports:sowing", slug).content.decode()
    assert "Soil warm enough: 65\u00a0°F or more, guessed from the mean" in text
