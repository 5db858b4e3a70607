"""One field's page: its seasons, its rotation, everything that happened."""

import datetime as dt

import pytest

from records.nouns import NOUNS
from reports.papers.field import MOST_STRIPS, field_paper
from tests.factories import (
    FieldFactory,
    KindFactory,
    ObservationFactory,
    PlantingFactory,
    TerminationFactory,
)

TODAY = dt.date(2026, 11, 12)
NOW = dt.datetime(2026, 11, 12, 8, tzinfo=dt.UTC)
QUERIES = 31
# What a field can be told of; the rest of the nouns are about other things.
TOLD = {
    "plantings",
    "observations",
    "biomass-samples",
    "terminations",
    "applications",
    "harvest-lots",
    "grazings",
    "irrigations",
    "mulch-films-and-tarps",
    "soil-tests",
    "incidents",
    "land-statements",
}


@pytest.fixture
def north(world):
    return world.ours["fields"]


@pytest.fixture
def sow(world, north):
    """Sow a kind on the field; end it on a day, where one is given."""

    def sown(name, sown_on, ended_on=None, *, family="Poaceae", **more):
        here = {"farm": world.farm, "written_by": world.owner}
        kind = KindFactory(farm=world.farm, name=name, family=family)
        planting = PlantingFactory(
            **here, field=north, line__kind=kind, sown_on=sown_on, **more
        )
        if ended_on:
            TerminationFactory(**here, planting=planting, ended_on=ended_on)
        return planting

    return sown


def paper(world, north, asked=""):
    return field_paper(world.farm, north.pk, asked=asked, today=TODAY)


def page(client, north, asked=""):
    address = f"/farms/alder-hill/reports/fields/{north.pk}/{asked}"
    return client.get(address)


def voided(row, by, reason="Written down for the wrong field."):
    type(row).objects.filter(pk=row.pk).update(
        voided_at=NOW, voided_by=by, void_reason=reason
    )


def test_every_noun_that_tells_of_a_field_stands_on_its_page(world, north):
    told = {one.noun for one in paper(world, north)["happenings"]}
    assert told == TOLD
    assert told <= {noun.slug for noun in NOUNS}


def test_each_record_is_linked(world, north, owner_client):
    text = page(owner_client, north).content.decode()
    for noun in TOLD:
        row = world.ours[noun]
        assert f'href="/farms/alder-hill/records/{noun}/{row.pk}/"' in text


def test_records_stand_in_the_order_of_their_days(world, north, sow):
    sow("Rye", dt.date(2019, 9, 1), dt.date(2020, 5, 1))
    days = [one.on for one in paper(world, north)["happenings"]]
    assert days == sorted(days)
    assert days[0] == dt.date(2019, 9, 1)


def test_a_voided_record_stays_and_is_struck_out(world, north, owner_client):
    seen = world.ours["observations"]
    voided(seen, world.owner)
    text = page(owner_client, north).content.decode()
    assert "<s>Buckwheat, first flower</s>" in text
    assert "Written down for the wrong field." in text


def test_a_voided_planting_is_struck_out_and_leaves_the_rotation(world, north):
    voided(world.ours["plantings"], world.owner)
    told = paper(world, north)
    assert told["rotation"] == []
    assert any(one.void_reason for one in told["happenings"])


def test_the_rotation_tells_kind_family_days_and_residue(world, north, sow):
    sow("Rye", dt.date(2024, 9, 10), dt.date(2025, 5, 20), family="Poaceae")
    rows = paper(world, north)["rotation"]
    rye = rows[0]
    assert (rye.year, rye.kinds, rye.families) == (2024, ("Rye",), ("Poaceae",))
    assert (rye.start, rye.ended) == (dt.date(2024, 9, 10), dt.date(2025, 5, 20))
    assert [residue.value for residue in rye.residues] == ["on_top"]
    assert rows[-1].kinds == ("Buckwheat",)


def test_a_stand_ended_in_part_says_so(world, north, sow):
    planting = sow("Rye", dt.date(2026, 4, 1))
    TerminationFactory(
        farm=world.farm,
        written_by=world.owner,
        planting=planting,
        ended_on=dt.date(2026, 5, 1),
        area_m2=planting.area_m2 / 2,
    )
    row = paper(world, north)["rotation"][0]
    assert row.ended_in_part and row.ended == dt.date(2026, 5, 1)


def test_each_season_in_which_something_stood_has_its_strip(world, north, sow):
    sow("Rye", dt.date(2022, 9, 1), dt.date(2023, 5, 1))
    told = paper(world, north)
    assert [part.year for part in told["strips"]] == [2026, 2023, 2022]
    idents = [part.drawing.split('aria-labelledby="')[1] for part in told["strips"]]
    assert len({ident.split()[0] for ident in idents}) == 3


def test_a_strip_adds_up_to_its_season(world, north, sow):
    sow("Rye", dt.date(2022, 9, 1), dt.date(2023, 5, 1))
    for part in paper(world, north)["strips"]:
        season = world.farm.season(part.year)
        days = sum(row.days * row.share for row in part.stretches)
        assert days == pytest.approx((season[1] - season[0]).days + 1)


def test_a_planting_that_was_never_sown_does_not_stand_for_years(world, north, sow):
    sow("Rye", None, planned_on=dt.date(2018, 9, 1))
    years = [part.year for part in paper(world, north)["strips"]]
    assert years == [2026, 2018]


def test_only_the_latest_seasons_are_drawn_until_one_is_asked_for(world, north, sow):
    for year in range(2008, 2026):
        sow("Oats", dt.date(year, 4, 1), dt.date(year, 6, 1))
    told = paper(world, north)
    assert len(told["strips"]) == MOST_STRIPS
    assert told["not_drawn"] == 19 - MOST_STRIPS
    assert [part.year for part in paper(world, north, "2009")["strips"]] == [2009]


def test_a_year_narrows_the_whole_page(world, north, sow, owner_client):
    sow("Rye", dt.date(2022, 9, 1), dt.date(2023, 5, 1))
    told = paper(world, north, "2022")
    assert {row.year for row in told["rotation"]} == {2022}
    assert {one.on.year for one in told["happenings"]} == {2022}
    text = page(owner_client, north, "?year=2022").content.decode()
    assert 'href="?year=2022" aria-current="page"' in text


@pytest.mark.parametrize("asked", ["", "1999", "x", "-1", "20220", "²", "9" * 5000])
def test_a_year_that_is_none_of_the_fields_shows_all(asked, world, north, owner_client):
    answer = page(owner_client, north, f"?year={asked}")
    assert answer.status_code == 200
    assert answer.context["year"] is None


def test_a_season_that_starts_in_autumn_holds_its_spring(world, north, sow):
    world.farm.season_first_month = 9
    sow("Rye", dt.date(2024, 10, 1), dt.date(2025, 5, 1))
    told = paper(world, north, "2024")
    assert [one.on for one in told["happenings"]] == [
        dt.date(2024, 10, 1),
        dt.date(2025, 5, 1),
    ]


def test_parts_and_the_whole_lead_to_each_other(world, north, owner_client):
    bed = FieldFactory(
        farm=world.farm, written_by=world.owner, name="Bed 1", parent=north
    )
    assert f"/reports/fields/{bed.pk}/" in page(owner_client, north).content.decode()
    assert f"/reports/fields/{north.pk}/" in page(owner_client, bed).content.decode()


def test_a_field_with_nothing_written_down_has_a_page(world, owner_client):
    bare = FieldFactory(farm=world.farm, written_by=world.owner, name="Bare")
    text = page(owner_client, bare).content.decode()
    assert "Nothing is written down here." in text


def test_a_voided_field_keeps_its_page(world, north, owner_client):
    voided(north, world.owner, reason="Sold.")
    text = page(owner_client, north).content.decode()
    assert 'class="voided"' in text and "Sold." in text


def test_the_record_the_list_and_the_map_lead_to_the_page(world, north, owner_client):
    address = f'href="/farms/alder-hill/reports/fields/{north.pk}/"'
    for place in (f"records/fields/{north.pk}/", "records/fields/", "reports/map/"):
        text = owner_client.get(f"/farms/alder-hill/{place}").content.decode()
        assert address in text, place


def test_another_farms_field_is_not_found(world, owner_client, as_person, north):
    assert page(owner_client, world.theirs["fields"]).status_code == 404
    assert page(as_person(world.stranger), north).status_code == 404
    assert page(as_person(world.crew), north).status_code == 200
    # An inspector reads the field's record, and the papers of their own seasons.
    assert page(as_person(world.inspector), north).status_code == 302


def test_tables_can_be_heard_and_nothing_is_styled_in_place(world, north, owner_client):
    text = page(owner_client, north).content.decode()
    assert text.count("<table") == text.count("<caption")
    assert text.count("<th ") == text.count("<th scope=")
    assert " style=" not in text and text.count("<h1") == 1


@pytest.mark.parametrize("seasons", [0, 12])
def test_a_field_takes_the_same_queries_for_one_season_or_many(
    seasons, world, north, sow, django_assert_num_queries
):
    for year in range(2026 - seasons, 2026):
        planting = sow("Oats", dt.date(year, 4, 1), dt.date(year, 6, 1))
        ObservationFactory(
            farm=world.farm,
            written_by=world.owner,
            planting=planting,
            seen_on=dt.date(year, 5, 1),
        )
    with django_assert_num_queries(QUERIES):
        paper(world, north)
