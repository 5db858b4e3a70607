"""One act in several places, written down with one save."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB, M2_PER_ACRE
from records.forms.seeds_once import PARTS, SeedsOnceForm
from records.models import Irrigation, Observation, Planting, SeedLine, Termination
from tests.factories import FieldFactory, KindFactory, PlantingFactory, SeedLotFactory

pytestmark = pytest.mark.django_db


@pytest.fixture
def fields(world):
    return [
        FieldFactory(farm=world.farm, name=f"Strip {n}", area_m2=n * M2_PER_ACRE)
        for n in (1, 2)
    ]


@pytest.fixture
def lot(world):
    kind = world.ours.kind
    received = timezone.localdate() - dt.timedelta(days=30)
    return SeedLotFactory(
        farm=world.farm, kind=kind, received_kg=200, received_on=received
    )


def act_url(world, act):
    return reverse("records:write-act", args=[world.farm.slug, act])


def typed_sowing(lot, weights, **once):
    typed = {
        "sown_on": timezone.localdate().isoformat(),
        "method": "broadcast",
        "purpose": "cover",
        "place": [str(field.pk) for field in weights],
        **once,
    }
    for field, weight in weights.items():
        line = f"at{field.pk}-lines-0"
        typed |= {f"{line}-lot": lot.pk, f"{line}-seed_kg": weight}
        typed |= {f"{line}-share": "100"}
    return typed


def test_the_weight_of_each_field_is_worked_out_from_the_rate(
    world, as_person, fields, lot
):
    asked = {"go": 1, "lot0": lot.pk, "rate0": "50 lb/ac"}
    asked |= {"place": [field.pk for field in fields]}
    page = as_person(world.crew).get(act_url(world, "sow"), asked)
    assert b'value="50 lb"' in page.content
    assert b'value="100 lb"' in page.content


def test_each_seed_of_a_mix_stands_by_name_beside_its_weight_and_share(
    world, as_person, fields, lot
):
    oats = KindFactory(name="Oats")
    asked = {"go": 1, "lot0": lot.pk, "share0": "60", "kind1": oats.pk, "share1": "40"}
    asked |= {"place": [field.pk for field in fields]}
    page = as_person(world.crew).get(act_url(world, "sow"), asked).content.decode()
    assert page.count(f"<strong>{lot}</strong>") == 2
    assert page.count("<strong>Oats</strong>") == 2
    assert page.count('value="60"') == page.count('value="40"') == 2


def test_a_sowing_on_two_fields_is_saved_at_once_and_its_rates_are_told(
    world, as_person, fields, lot
):
    before = Planting.objects.count()
    weights = {fields[0]: "50 lb", fields[1]: "90 lb"}
    answer = as_person(world.crew).post(
        act_url(world, "sow"), typed_sowing(lot, weights), follow=True
    )
    assert Planting.objects.count() == before + 2
    assert "Strip 2: Buckwheat 45 lb/ac" in answer.content.decode()
    sown = SeedLine.objects.filter(lot=lot).values_list("seed_kg", flat=True)
    assert sorted(sown) == pytest.approx([50 * KG_PER_LB, 90 * KG_PER_LB])


def test_nothing_is_saved_when_the_lot_holds_enough_for_one_field_only(
    world, as_person, fields, lot
):
    before = Planting.objects.count()
    weights = {fields[0]: "150 kg", fields[1]: "150 kg"}
    answer = as_person(world.crew).post(
        act_url(world, "sow"), typed_sowing(lot, weights)
    )
    assert Planting.objects.count() == before
    page = answer.content.decode()
    assert "The lot does not hold this much." in page
    assert 'value="150 kg"' in page


def test_a_day_ahead_is_refused_for_all_and_the_typed_values_stay(
    world, as_person, fields, lot
):
    before = Planting.objects.count()
    ahead = (timezone.localdate() + dt.timedelta(days=3)).isoformat()
    typed = typed_sowing(lot, {fields[0]: "50 lb"}, sown_on=ahead)
    answer = as_person(world.crew).post(act_url(world, "sow"), typed)
    assert Planting.objects.count() == before
    assert "This day is still to come." in answer.content.decode()
    assert f'value="{ahead}"' in answer.content.decode()


def test_no_place_picked_is_said(world, as_person, lot):
    page = as_person(world.crew).get(
        act_url(world, "sow"), {"go": 1, "lot0": lot.pk, "rate0": "50 lb/ac"}
    )
    assert "Pick at least one place." in page.content.decode()


def test_a_rate_that_cannot_be_read_is_said_beside_its_box(
    world, as_person, fields, lot
):
    asked = {"go": 1, "lot0": lot.pk, "rate0": "fifty", "place": fields[0].pk}
    page = as_person(world.crew).get(act_url(world, "sow"), asked).content.decode()
    assert "Write it like 50 lb/ac." in page
    assert 'value="fifty"' in page


def test_the_last_sowing_can_be_done_again(world, as_person, fields, lot):
    client = as_person(world.crew)
    client.post(act_url(world, "sow"), typed_sowing(lot, {fields[0]: "50 lb"}))
    page = client.get(reverse("records:write", args=[world.farm.slug]))
    again = next(one for one in page.context["again"] if one.act.slug == "sow")
    repeated = client.get(act_url(world, "sow") + "?" + again.query)
    assert 'value="50 lb"' in repeated.content.decode()


@pytest.mark.parametrize(
    ("act", "once", "each", "model"),
    [
        (
            "see",
            {"seen": "bloom"},
            {"bloom_share": "30"},
            Observation,
        ),
        (
            "end",
            {"method": "mown", "outcome": "ended", "residue": "on_top"},
            {},
            Termination,
        ),
    ],
)
def test_what_stands_is_seen_or_ended_in_several_places_at_once(
    world, as_person, act, once, each, model, fields
):
    sown = timezone.localdate() - dt.timedelta(days=40)
    stands = [
        PlantingFactory(farm=world.farm, field=field, sown_on=sown) for field in fields
    ]
    day = {"see": "seen_on", "end": "ended_on"}[act]
    typed = {day: timezone.localdate().isoformat(), **once}
    typed["place"] = [stand.pk for stand in stands]
    for stand in stands:
        typed |= {f"at{stand.pk}-{name}": value for name, value in each.items()}
    before = model.objects.count()
    as_person(world.crew).post(act_url(world, act), typed)
    assert model.objects.count() == before + 2


def test_water_is_written_down_for_two_fields_in_inches(world, as_person, fields):
    typed = {"watered_on": timezone.localdate().isoformat()}
    typed["place"] = [field.pk for field in fields]
    typed |= {f"at{field.pk}-water_mm": "1 in" for field in fields}
    as_person(world.crew).post(act_url(world, "water"), typed)
    found = Irrigation.objects.filter(field__in=fields)
    assert {row.water_mm for row in found} == {25.4}


def test_a_field_of_another_farm_is_not_written_to(world, as_person, lot):
    theirs = world.theirs["fields"]
    before = Planting.objects.count()
    as_person(world.crew).post(
        act_url(world, "sow"), typed_sowing(lot, {theirs: "5 lb"})
    )
    assert Planting.objects.count() == before


def test_a_mix_of_two_shows_two_kinds_and_folds_the_others(world, seed_of):
    shown = seed_of(kind0="", kind1="1")
    assert [box.name for box in shown.more] == [
        "share0",
        *(f"{part}1" for part in PARTS),
    ]
    assert len(shown.yet_more) == 3 * len(PARTS)
    assert len(seed_of(rate3="much").more) == 1 + 3 * len(PARTS)
    assert seed_of(lot4="2").yet_more == []


@pytest.fixture
def seed_of(world):
    return lambda **typed: SeedsOnceForm(typed, farm=world.farm)
