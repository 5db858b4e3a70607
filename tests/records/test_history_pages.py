"""What was changed, by whom, and who looked it over, as a reader sees it."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from farm.models import Change, Farm
from farm.writing import review, void, write
from records import history
from records.lookovers import reviews
from records.models import SeedLine

pytestmark = pytest.mark.django_db

NOON = dt.datetime(2026, 6, 10, 17, tzinfo=dt.UTC)


def mended(world, noun, **values):
    """Write other values into a record of ours, as the owner."""
    row = world.ours[noun]
    for name, value in values.items():
        setattr(row, name, value)
    write(row, by=world.owner, now=NOON)
    return Change.objects.order_by("number").filter(farm=world.farm).last()


def lines(change, farm):
    told = history.lines(change, farm)
    return {
        str(one.label): (
            str(one.before).replace("\xa0", " "),
            str(one.after).replace("\xa0", " "),
        )
        for one in told
    }


def page(client, world, name="changes", *args, **asked):
    url = reverse(f"records:{name}", args=[world.farm.slug, *args])
    return client.get(url, asked)


def test_a_measure_is_told_in_the_farms_units_by_its_label(world):
    change = mended(world, "plantings", area_m2=8093.7128448, depth_m=0.0254)
    told = lines(change, world.farm)
    # Two international acres of 4046.8564224 m² (85 FR 62698).
    assert told["area"] == ("1 ac", "2 ac")
    assert told["depth"][1] == "1 in"
    metric = Farm(units="metric", time_zone="UTC")
    assert lines(change, metric)["area"] == ("0.405 ha", "0.809 ha")


def test_choices_days_shares_and_ticks_are_told_as_a_page_has_them(world):
    change = mended(
        world,
        "plantings",
        method="frost_seeded",
        sown_on=dt.date(2026, 5, 2),
        firmed=True,
    )
    assert lines(change, world.farm) == {
        "how": ("broadcast", "frost-seeded"),
        "sown or set out on": ("1 Jun 2026", "2 May 2026"),
        "firmed in": ("no", "yes"),
    }
    change = mended(world, "observations", bloom_share=0.25, weeds=3)
    assert lines(change, world.farm)["plants in bloom"] == ("", "25 %")


def test_a_row_under_a_record_is_told_by_its_place_and_its_own_label(world):
    planting = world.ours["plantings"]
    line = planting.lines.get()
    other = SeedLine(kind=line.kind, lot=line.lot, seed_kg=45.359237)
    write(planting, by=world.owner, now=NOON, parts={"lines": [other]})
    change = Change.objects.filter(farm=world.farm).order_by("number").last()
    # 100 lb of 0.45359237 kg each (NIST SP 811, appendix B).
    assert lines(change, world.farm) == {
        "seed line 1: weight sown": ("44.1 lb", "100 lb")
    }


def test_an_amount_is_told_by_weight_or_volume_as_it_was_measured(world):
    change = mended(world, "applications", amount_si=1000.0)
    assert set(change.after) == {"amount_si", "measure"}
    assert "lb" in lines(change, world.farm)["amount"][1]
    change = mended(world, "applications", amount_si=0.003785411784, measure="volume")
    # One US gallon of 3.785411784 L (NIST SP 811, appendix B).
    assert "gal" in lines(change, world.farm)["amount"][1]


def test_a_plant_count_is_not_told_as_an_area(world):
    change = mended(world, "observations", stand_per_m2=120.0)
    assert lines(change, world.farm)["plants counted"] == ("", "120")


def test_an_outline_is_said_to_be_drawn_and_not_spelled_out(world):
    change = mended(world, "fields", outline={"type": "Polygon", "coordinates": []})
    assert lines(change, world.farm)["outline"] == ("", "drawn")


def test_what_cannot_be_read_any_more_is_told_as_it_was_kept(world):
    row = world.ours["fields"]
    change = Change(
        farm=world.farm,
        by=world.owner,
        at=NOON,
        verb="changed",
        noun=row._meta.model_name,
        object_id=row.pk,
        before={"old_name": "a", "area_m2": "wide", "status_since": "some day"},
        after={"old_name": "b", "area_m2": "wider", "status_since": "another"},
    )
    told = lines(change, world.farm)
    assert told["old name"] == ("a", "b")
    assert told["area"] == ("wide", "wider")
    change.noun = "forgotten"
    assert lines(change, world.farm)["area m2"] == ("wide", "wider")
    assert history.told([change], world.farm)[0].address == ""


def test_the_page_of_changes_links_each_record_and_tells_the_lines(world, owner_client):
    field = world.ours["fields"]
    mended(world, "fields", name="North Meadow", area_m2=8093.7128448)
    answer = page(owner_client, world)
    text = answer.content.decode()
    assert "1\xa0ac → 2\xa0ac" in text
    assert reverse("records:page", args=[world.farm.slug, "fields", field.pk]) in text


def test_a_page_of_a_record_tells_its_own_history_only(world, owner_client):
    mended(world, "fields", name="North Meadow")
    field, planting = world.ours["fields"], world.ours["plantings"]
    assert (
        "North → North Meadow"
        in page(owner_client, world, "page", "fields", field.pk).content.decode()
    )
    assert (
        "North → North Meadow"
        not in page(
            owner_client, world, "page", "plantings", planting.pk
        ).content.decode()
    )


@pytest.fixture
def storied(world):
    """Three people, three nouns, three days."""
    field, lot, planting = (
        world.ours[noun] for noun in ("fields", "seed-lots", "plantings")
    )
    field.notes = "Stony at the créek"
    write(field, by=world.owner, now=dt.datetime(2026, 6, 1, 12, tzinfo=dt.UTC))
    lot.supplier = "Seed Barn 100%"
    write(lot, by=world.crew, now=dt.datetime(2026, 6, 2, 12, tzinfo=dt.UTC))
    void(
        planting,
        by=world.manager,
        now=dt.datetime(2026, 6, 3, 3, tzinfo=dt.UTC),
        reason="written twice",
    )
    Farm.objects.filter(pk=world.farm.pk).update(time_zone="America/Chicago")
    return world


@pytest.mark.parametrize(
    ("asked", "nouns"),
    [
        ({}, ["planting", "seedlot", "field"]),
        ({"noun": "field"}, ["field"]),
        ({"verb": "voided"}, ["planting"]),
        ({"words": "twice"}, ["planting"]),
        ({"words": "seed barn"}, ["seedlot"]),
        ({"words": "créek"}, ["field"]),
        ({"words": "100%"}, ["seedlot"]),
        ({"words": "50%"}, []),
        ({"first": "2026-06-02"}, ["planting", "seedlot"]),
        # At 22 o'clock of 2 June in Chicago it is 3 June in Greenwich.
        ({"last": "2026-06-02"}, ["planting", "seedlot", "field"]),
        ({"last": "2026-06-01"}, ["field"]),
        (
            {"first": "0001-01-01", "last": "9999-12-31"},
            ["planting", "seedlot", "field"],
        ),
    ],
)
def test_the_changes_can_be_narrowed(storied, owner_client, asked, nouns):
    answer = page(owner_client, storied, **asked)
    assert [row.noun for row in answer.context["page_obj"]] == nouns
    count = answer.context["page_obj"].paginator.count
    assert count == len(nouns)


def test_the_changes_can_be_narrowed_to_one_hand(storied, owner_client):
    answer = page(owner_client, storied, by=storied.crew.pk)
    assert [row.noun for row in answer.context["page_obj"]] == ["seedlot"]
    offered = answer.context["filter"].form.fields["by"].queryset
    assert set(offered) == {storied.owner, storied.crew, storied.manager}
    answer = page(owner_client, storied, by=storied.stranger.pk)
    assert answer.context["filter"].form.errors


def test_many_changes_are_shown_by_pages_in_few_queries(
    world, owner_client, django_assert_max_num_queries
):
    field = world.ours["fields"]
    for number in range(60):
        field.notes = f"Note {number}"
        write(field, by=world.owner, now=NOON)
    with django_assert_max_num_queries(12):
        answer = page(owner_client, world, page=2)
    assert "60 changes" in answer.content.decode()
    assert len(answer.context["page_obj"]) == 10


def test_a_record_first_written_long_after_its_day_is_marked_in_the_history(world):
    planting = world.ours["plantings"]
    planting.pk = planting.client_key = None
    planting.client_key = "11111111-1111-4111-8111-111111111111"
    write(planting, by=world.crew, now=NOON)
    change = Change.objects.filter(farm=world.farm).order_by("number").last()
    (told,) = history.told([change], world.farm)
    assert told.is_late
    planting.notes = "later"
    write(planting, by=world.crew, now=NOON)
    change = Change.objects.filter(farm=world.farm).order_by("number").last()
    assert not history.told([change], world.farm)[0].is_late


def test_a_manager_notes_a_review_and_the_page_and_the_list_show_it(world, as_person):
    client, field = as_person(world.manager), world.ours["fields"]
    url = reverse("records:review", args=[world.farm.slug, "fields", field.pk])
    assert (
        "I have reviewed"
        in page(client, world, "page", "fields", field.pk).content.decode()
    )
    for _ in range(2):
        assert client.post(url).status_code == 302
    assert Change.objects.filter(verb="reviewed").count() == 1
    shown = page(client, world, "page", "fields", field.pk).content.decode()
    assert "by Manager on" in shown
    assert "I have reviewed" not in shown
    listed = page(client, world, "list", "fields").content.decode()
    assert listed.count(">reviewed<") == 1


def test_a_change_after_the_review_outdates_it(world, owner_client):
    field = world.ours["fields"]
    review(field, by=world.manager, now=timezone.now())
    mended(world, "fields", notes="stony")
    assert not reviews(world.farm, [field])[field.pk].stands
    shown = page(owner_client, world, "page", "fields", field.pk).content.decode()
    assert "changed since" in shown
    assert "I have reviewed" in shown
    assert (
        ">reviewed<" not in page(owner_client, world, "list", "fields").content.decode()
    )


def test_a_voided_record_is_not_reviewed(world, owner_client):
    field = world.ours["fields"]
    void(field, by=world.owner, now=NOON, reason="sold")
    url = reverse("records:review", args=[world.farm.slug, "fields", field.pk])
    owner_client.post(url)
    assert not Change.objects.filter(verb="reviewed").exists()


def test_the_crew_sees_a_review_and_adds_none(world, as_person):
    client, field = as_person(world.crew), world.ours["fields"]
    review(field, by=world.manager, now=NOON)
    shown = page(client, world, "page", "fields", field.pk).content.decode()
    assert ">reviewed<" in shown
    assert "I have reviewed" not in shown
    url = reverse("records:review", args=[world.farm.slug, "fields", field.pk])
    assert client.post(url).status_code == 403
