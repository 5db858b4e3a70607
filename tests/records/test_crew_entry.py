"""Entries of the crew on one page, and each taken once by its own key."""

import datetime as dt
import uuid

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB, M2_PER_ACRE
from farm.writing import void
from records.models import (
    Attachment,
    Observation,
    Planting,
    SeedLine,
    SentEntry,
    Termination,
)
from tests.factories import FieldFactory, PlantingFactory, SeedLotFactory
from tests.records.test_attachments import picture

pytestmark = pytest.mark.django_db
JSON = {"HTTP_ACCEPT": "application/json"}


@pytest.fixture
def fields(world):
    return [
        FieldFactory(farm=world.farm, name=f"Strip {n}", area_m2=n * M2_PER_ACRE)
        for n in (1, 2)
    ]


@pytest.fixture
def lot(world):
    received = timezone.localdate() - dt.timedelta(days=30)
    return SeedLotFactory(
        farm=world.farm, kind=world.ours.kind, received_kg=200, received_on=received
    )


@pytest.fixture
def stand(world, fields):
    sown = timezone.localdate() - dt.timedelta(days=40)
    return PlantingFactory(farm=world.farm, field=fields[0], sown_on=sown)


@pytest.fixture
def crew(world, as_person):
    return as_person(world.crew)


def at(world, act):
    return reverse("records:crew-act", args=[world.farm.slug, act])


def sowing(lot, fields, **more):
    return {
        "key": str(uuid.uuid4()),
        "sown_on": timezone.localdate().isoformat(),
        "method": "broadcast",
        "purpose": "cover",
        "lot0": lot.pk,
        "rate0": "50 lb/ac",
        "place": [field.pk for field in fields],
        **more,
    }


def seeing(stand, **more):
    return {
        "key": str(uuid.uuid4()),
        "seen_on": timezone.localdate().isoformat(),
        "seen": "bloom",
        "place": stand.pk,
        f"at{stand.pk}-bloom_share": "30",
        **more,
    }


def test_one_page_holds_the_places_and_their_boxes(world, crew, fields, stand):
    page = crew.get(at(world, "see"), {"place": stand.pk}).content.decode()
    assert f'name="at{stand.pk}-bloom_share"' in page
    assert f'value="{stand.pk}" checked' in page


def test_seed_by_rate_is_weighed_out_for_each_field(world, crew, fields, lot):
    crew.post(at(world, "sow"), sowing(lot, fields))
    sown = SeedLine.objects.filter(lot=lot).values_list("seed_kg", flat=True)
    assert sorted(sown) == pytest.approx([50 * KG_PER_LB, 100 * KG_PER_LB], rel=1e-5)


def test_a_weight_typed_for_a_field_goes_before_the_rate(world, crew, fields, lot):
    weight = {f"at{fields[0].pk}-seed_kg": "20 lb"}
    crew.post(at(world, "sow"), sowing(lot, fields[:1], **weight))
    (line,) = SeedLine.objects.filter(lot=lot)
    assert line.seed_kg == pytest.approx(20 * KG_PER_LB)


def test_the_same_entry_sent_twice_is_answered_alike_and_stands_once(
    world, crew, fields, lot
):
    typed = sowing(lot, fields)
    before = Planting.objects.count()
    answers = [crew.post(at(world, "sow"), typed, **JSON) for _ in range(2)]
    assert [one.status_code for one in answers] == [200, 200]
    assert answers[0].json() == answers[1].json()
    assert answers[0].json()["words"].startswith("2 records written down.")
    assert Planting.objects.count() == before + 2


def test_a_refused_entry_keeps_its_key_for_when_it_is_mended(world, crew, fields, lot):
    ahead = (timezone.localdate() + dt.timedelta(days=2)).isoformat()
    typed = sowing(lot, fields, sown_on=ahead)
    refused = crew.post(at(world, "sow"), typed, **JSON)
    assert refused.status_code == 422
    assert "This day is still to come." in " ".join(refused.json()["errors"])
    assert not SentEntry.objects.exists()
    typed["sown_on"] = timezone.localdate().isoformat()
    assert crew.post(at(world, "sow"), typed, **JSON).status_code == 200


def test_a_lot_that_ran_out_meanwhile_is_told_and_nothing_is_written(
    world, crew, fields, lot
):
    crew.post(at(world, "sow"), sowing(lot, fields, rate0="100 lb/ac"))
    before = Planting.objects.count()
    answer = crew.post(at(world, "sow"), sowing(lot, fields, rate0="100 lb/ac"), **JSON)
    assert "The lot does not hold this much" in " ".join(answer.json()["errors"])
    assert Planting.objects.count() == before


def test_a_field_voided_meanwhile_is_told_and_nothing_is_written(
    world, crew, fields, lot
):
    void(fields[1], by=world.owner, now=timezone.now(), reason="Sold.")
    before = Planting.objects.count()
    answer = crew.post(at(world, "sow"), sowing(lot, fields), **JSON)
    assert answer.status_code == 422
    assert "no longer there" in answer.json()["errors"][0]
    assert Planting.objects.count() == before


def test_a_picture_of_a_cut_is_kept_with_it_once(world, crew, stand):
    typed = {
        "key": str(uuid.uuid4()),
        "ended_on": timezone.localdate().isoformat(),
        "method": "mown",
        "outcome": "ended",
        "residue": "on_top",
        "place": stand.pk,
    }
    for _ in range(2):
        photo = SimpleUploadedFile("cut.jpg", picture(), "image/jpeg")
        sent = {**typed, f"photo{stand.pk}": photo}
        assert crew.post(at(world, "end"), sent, **JSON).status_code == 200
    (cut,) = Termination.objects.filter(planting=stand)
    (kept,) = Attachment.objects.on(world.farm).filter(noun="termination")
    assert kept.object_id == cut.pk


def test_a_picture_that_cannot_be_read_keeps_the_whole_entry_back(world, crew, stand):
    photo = SimpleUploadedFile("cut.jpg", b"no picture", "image/jpeg")
    typed = seeing(stand, **{f"photo{stand.pk}": photo})
    before = Observation.objects.count()
    answer = crew.post(at(world, "see"), typed, **JSON)
    assert answer.status_code == 422
    assert Observation.objects.count() == before


def test_what_has_ended_since_can_still_have_been_seen_before(world, crew, stand):
    ended = crew.post(
        at(world, "end"),
        {
            "ended_on": timezone.localdate().isoformat(),
            "method": "mown",
            "outcome": "ended",
            "residue": "on_top",
            "place": stand.pk,
        },
    )
    assert ended.status_code == 302
    assert crew.post(at(world, "see"), seeing(stand), **JSON).status_code == 200


def test_a_note_too_long_is_refused_in_words_and_a_huge_one_at_the_door(
    world, crew, stand
):
    long = seeing(stand, **{f"at{stand.pk}-notes": "a" * 5000})
    answer = crew.post(at(world, "see"), long, **JSON)
    assert "4000" in answer.json()["errors"][0]
    huge = seeing(stand, **{f"at{stand.pk}-notes": "a" * 10_000_000})
    assert crew.post(at(world, "see"), huge, **JSON).status_code == 413


def test_without_script_the_page_comes_back_with_what_was_typed(world, crew, stand):
    typed = seeing(stand, **{f"at{stand.pk}-bloom_share": "many"})
    page = crew.post(at(world, "see"), typed).content.decode()
    assert 'value="many"' in page
    assert "Nothing was saved yet" in page
    assert f'value="{typed["key"]}"' in page


def test_no_place_picked_is_said(world, crew, fields, lot):
    answer = crew.post(at(world, "sow"), sowing(lot, []), **JSON)
    assert answer.json()["errors"] == ["Pick at least one place."]


def test_one_key_of_two_people_makes_two_entries(world, as_person, stand):
    typed = seeing(stand)
    before = Observation.objects.count()
    as_person(world.crew).post(at(world, "see"), typed, **JSON)
    typed["seen"] = "canopy"
    typed[f"at{stand.pk}-canopy_share"] = "80"
    as_person(world.owner).post(at(world, "see"), typed, **JSON)
    assert Observation.objects.count() == before + 2


def test_a_neighbours_field_is_no_place_of_ours(world, crew, lot):
    theirs = world.theirs["fields"]
    answer = crew.post(at(world, "sow"), sowing(lot, [theirs]), **JSON)
    assert answer.status_code == 422


@pytest.fixture
def rye(world):
    received = timezone.localdate() - dt.timedelta(days=30)
    return SeedLotFactory(
        farm=world.farm, kind__name="Rye", received_kg=200, received_on=received
    )


def lines_of(field):
    lines = SeedLine.objects.filter(planting__field=field).order_by("pk")
    return [(one.lot_id, one.share, one.seed_kg / KG_PER_LB) for one in lines]


def test_a_mix_goes_to_each_field_by_its_rates_and_shares(
    world, crew, fields, lot, rye
):
    mix = {"share0": "40", "lot1": rye.pk, "rate1": "30 lb/ac", "share1": "60"}
    answer = crew.post(at(world, "sow"), sowing(lot, fields, **mix), **JSON)
    assert answer.status_code == 200, answer.json()
    assert lines_of(fields[1]) == [
        (lot.pk, pytest.approx(0.4), pytest.approx(100, rel=1e-4)),
        (rye.pk, pytest.approx(0.6), pytest.approx(60, rel=1e-4)),
    ]


def test_one_weight_of_a_mix_is_divided_by_its_rates(world, crew, fields, lot, rye):
    weight = {f"at{fields[0].pk}-seed_kg": "40 lb", "lot1": rye.pk}
    typed = sowing(lot, fields[:1], **weight)
    refused = crew.post(at(world, "sow"), typed, **JSON)
    assert "divided by the rates" in refused.json()["errors"][0]
    crew.post(at(world, "sow"), typed | {"rate1": "30 lb/ac"})
    assert [kg for *_, kg in lines_of(fields[0])] == pytest.approx([25, 15], rel=1e-4)
    assert [share for _, share, _ in lines_of(fields[0])] == [0.5, 0.5]


def test_a_share_left_out_of_a_mix_is_asked_for(world, crew, fields, lot, rye):
    mix = {"share0": "40", "lot1": rye.pk, "rate1": "30 lb/ac"}
    answer = crew.post(at(world, "sow"), sowing(lot, fields, **mix), **JSON)
    assert "Give each kind of a mix its share." in " ".join(answer.json()["errors"])
    assert lines_of(fields[0]) == []


def test_a_lot_of_another_farm_cannot_be_sown_from_a_telephone(world, crew, fields):
    theirs = SeedLotFactory(farm=world.theirs.farm)
    typed = sowing(theirs, fields[:1], lot1=theirs.pk, kind0=world.ours.kind.pk)
    answer = crew.post(at(world, "sow"), typed, **JSON)
    assert answer.status_code == 422
    assert lines_of(fields[0]) == []
