"""Lists: narrowed by field, kind, days, season and words, and never slower for size."""

import datetime as dt

import pytest
from django import forms
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from pytest_django.asserts import assertHTMLEqual

from farm.forms.long import LongSelect
from records.nouns import NOUNS
from tests import factories
from tests.factories import (
    FieldFactory,
    KindFactory,
    PlantingFactory,
    TerminationFactory,
)

OURS = {"stations": {"is_main": False}}


@pytest.fixture
def listed(world, owner_client):
    """The rows a list shows when it is asked for with these words in its address."""

    def rows(noun, **asked):
        url = reverse("records:list", args=[world.farm.slug, noun])
        answer = owner_client.get(url, asked)
        assert answer.context["filter"].form.errors == {}
        return set(answer.context["page_obj"])

    return rows


@pytest.fixture
def here(world):
    return {"farm": world.farm, "written_by": world.owner}


@pytest.fixture
def creek(here):
    return FieldFactory(**here, name="Creek", notes="Floods in May.")


@pytest.fixture
def later(here, creek):
    """A planting of another kind, on another field, in the next year."""
    return PlantingFactory(
        **here,
        field=creek,
        sown_on=dt.date(2027, 5, 1),
        planned_on=dt.date(2027, 4, 1),
        line__kind=KindFactory(name="Field pea"),
        notes="After the flood.",
    )


def test_plantings_are_narrowed_by_field(listed, world, later, creek):
    assert listed("plantings", field=creek.pk) == {later}


def test_plantings_are_narrowed_by_kind(listed, world, later):
    assert listed("plantings", kind=world.ours.kind.pk) == {world.ours["plantings"]}
    assert listed("plantings", kind=later.lines.get().kind_id) == {later}


def test_a_mix_is_found_once_by_each_of_its_kinds(listed, world, later):
    factories.SeedLineFactory(
        planting=later, kind=world.ours.kind, lot=world.ours["seed-lots"]
    )
    assert later in listed("plantings", kind=world.ours.kind.pk)
    assert later in listed("plantings", kind=later.lines.first().kind_id)


def test_plantings_are_narrowed_by_days(listed, world, later):
    early = world.ours["plantings"]
    assert listed("plantings", first="2026-06-02") == {later}
    assert listed("plantings", first="2026-06-01") == {early, later}
    assert listed("plantings", last="2026-06-01") == {early}
    assert listed("plantings", first="2026-06-02", last="2027-04-30") == set()


def test_what_is_only_planned_is_found_by_the_day_it_is_planned_for(
    listed, here, creek, world
):
    planned = PlantingFactory(
        **here, field=creek, sown_on=None, planned_on=dt.date(2027, 3, 1)
    )
    assert listed("plantings", first="2027-03-01", last="2027-03-01") == {planned}


def test_a_season_shows_what_stood_in_it(listed, here, world, later):
    assert listed("plantings", season="2026") == {world.ours["plantings"]}
    assert listed("plantings", season="2027") == {later}
    TerminationFactory(**here, planting=later, ended_on=dt.date(2028, 3, 1))
    assert listed("plantings", season="2028") == {later}
    assert listed("plantings", season="2029") == set()


def test_a_season_that_starts_in_autumn_runs_over_the_new_year(listed, world, here):
    world.farm.season_first_month = 9
    world.farm.save()
    assert listed("irrigations", season="2026") == set()
    assert listed("irrigations", season="2025") == {world.ours["irrigations"]}


def test_lists_are_narrowed_by_words_whatever_their_case(listed, world, later, creek):
    assert listed("plantings", words="FLOOD") == {later}
    assert listed("fields", words="creek") == {creek}
    assert listed("fields", words="may.") == {creek}
    assert listed("seed-lots", words="bw-2") == {world.ours["seed-lots"]}
    assert listed("seed-lots", words="nothing like it") == set()


def test_words_that_mean_something_to_a_database_are_only_words(listed, world):
    for words in ("%", "_", "'; --", "\\", "“"):
        assert listed("fields", words=words) == set()


def test_observations_are_found_by_the_field_and_kind_of_their_planting(
    listed, world, creek, later
):
    row = world.ours["observations"]
    field, kind = world.ours["fields"], world.ours.kind
    assert listed("observations", field=field.pk, kind=kind.pk) == {row}
    assert listed("observations", field=creek.pk) == set()


def test_voided_records_are_shown_only_when_asked_for(listed, world):
    row = world.ours["irrigations"]
    type(row).objects.filter(pk=row.pk).update(
        voided_at=row.written_at, voided_by=world.owner, void_reason="Twice"
    )
    assert listed("irrigations") == set()
    assert listed("irrigations", struck="on") == {row}


def test_another_farms_field_narrows_to_nothing_and_says_so(world, owner_client):
    url = reverse("records:list", args=[world.farm.slug, "plantings"])
    answer = owner_client.get(url, {"field": world.theirs["fields"].pk})
    assert answer.context["filter"].form.errors["field"]
    assert world.theirs["plantings"] not in answer.context["page_obj"]


def test_every_list_is_narrowed_by_person(listed, world, here):
    mine = FieldFactory(**here, name="By the owner")
    theirs = FieldFactory(**{**here, "written_by": world.crew}, name="By the crew")
    told = FieldFactory(**here, name="Told", done_by=world.crew.name.upper())
    assert {theirs, told} <= listed("fields", person=world.crew.pk)
    assert mine not in listed("fields", person=world.crew.pk)
    assert {mine, told} <= listed("fields", person=world.owner.pk)


def test_whoever_did_the_work_is_found_by_words_too(listed, here):
    row = FieldFactory(**here, done_by="Hired hand")
    assert listed("fields", words="hired") == {row}


def test_nobody_of_another_farm_stands_in_the_choice_of_people(world, owner_client):
    url = reverse("records:list", args=[world.farm.slug, "fields"])
    people = owner_client.get(url).context["filter"].form.fields["person"].queryset
    assert world.owner in people
    assert world.stranger not in people
    answer = owner_client.get(url, {"person": world.stranger.pk})
    assert answer.context["filter"].form.errors["person"]


def in_order(client, world, noun, **asked):
    url = reverse("records:list", args=[world.farm.slug, noun])
    return client.get(url, asked)


def test_a_list_is_put_in_order_both_ways_and_what_is_not_known_comes_last(
    world, owner_client, here
):
    for name, width in (("Wide", 9.0), ("Narrow", 1.0), ("Unknown", None)):
        factories.EquipmentFactory(**here, name=name, width_m=width, notes="sorted")
    for sort, names in (
        ("width_m", ["Narrow", "Wide", "Unknown"]),
        ("-width_m", ["Wide", "Narrow", "Unknown"]),
        ("name", ["Narrow", "Unknown", "Wide"]),
    ):
        page = in_order(owner_client, world, "equipment", sort=sort, words="sorted")
        assert [row.name for row in page.context["page_obj"]] == names


def test_the_address_keeps_the_filter_when_a_heading_or_a_page_is_pressed(
    world, owner_client, here
):
    FieldFactory.create_batch(60, **here, notes="long list")
    asked = {"words": "long list", "sort": "-name", "page": "2"}
    text = in_order(owner_client, world, "fields", **asked).content.decode()
    assert 'aria-sort="descending"' in text
    assert 'href="?words=long+list&amp;sort=name"' in text
    assert 'href="?words=long+list&amp;sort=-name&amp;page=1"' in text


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.slug)
def test_every_column_that_offers_to_sort_can_be_sorted_by(noun, world, owner_client):
    assert noun.paths
    for path in noun.paths:
        page = in_order(owner_client, world, noun.slug, sort=path, struck="on")
        assert page.context["filter"].form.errors == {}
        assert len(page.context["page_obj"]) >= 1


@pytest.mark.parametrize(
    "asked",
    [
        {"sort": "written_by__password"},
        {"person": "x"},
        {"first": "yesterday"},
        {"season": "next"},
        {"season": "99999"},
        {"field": "x"},
        {"page": "x"},
        {"page": "999"},
        {"words": "x\0y"},
    ],
)
def test_nonsense_in_the_address_of_a_list_is_no_fault_of_the_page(
    asked, world, owner_client
):
    url = reverse("records:list", args=[world.farm.slug, "plantings"])
    assert owner_client.get(url, asked).status_code == 200


def test_a_long_list_is_cut_into_pages_that_keep_what_was_asked(
    world, owner_client, here
):
    FieldFactory.create_batch(60, **here, notes="long list")
    url = reverse("records:list", args=[world.farm.slug, "fields"])
    page = owner_client.get(url, {"words": "long list"})
    assert len(page.context["page_obj"]) == 50
    assert "Page 1 of 2" in page.content.decode()
    assert "words=long+list&amp;page=2" in page.content.decode()


def test_a_choice_among_thousands_reads_as_any_other():
    ways = {"choices": [("", "any"), (3, "North & <South>"), ("a'b", "East")]}
    attrs = {"id": "id_field", "required": True, "aria-describedby": "x"}
    for value in (None, 3, "a'b", "nothing"):
        quick, own = (
            widget(**ways).render("field", value, attrs)
            for widget in (LongSelect, forms.Select)
        )
        assertHTMLEqual(quick, own)


@pytest.mark.parametrize("noun", NOUNS, ids=lambda noun: noun.slug)
def test_a_list_asks_no_more_questions_for_thirty_rows_than_for_three(
    noun, world, owner_client, here
):
    maker = maker_of(noun.model)
    url = reverse("records:list", args=[world.farm.slug, noun.slug])

    def questions(rows):
        maker.create_batch(rows, **here, **OURS.get(noun.slug, {}))
        with CaptureQueriesContext(
            connection,
        ) as asked:
            owner_client.get(url)
        return len(asked)

    few = questions(3)
    assert questions(27) <= few
    assert few < 20


def maker_of(model):
    """The factory that makes rows of a model."""
    found = [
        maker
        for maker in vars(factories).values()
        if isinstance(maker, type)
        and getattr(maker, "_meta", None)
        and maker._meta.model is model
    ]
    return found[0]


def test_a_list_narrowed_by_kind_is_put_in_order_by_a_field(world, owner_client, later):
    kind = later.lines.get().kind_id
    for sort in ("field__name", "-begins_on", "area_m2"):
        page = in_order(owner_client, world, "plantings", kind=kind, sort=sort)
        assert list(page.context["page_obj"]) == [later]
