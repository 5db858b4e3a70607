"""The findings page: what it says, where it leads, and what it never says."""

import dataclasses
import datetime as dt

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from reports.calc.rules import RULES, findings
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter
from reports.labels.rules import sentence
from reports.ledger.dossier import dossier
from reports.papers.findings import findings_paper
from tests.calc import test_rules
from tests.factories import (
    ApplicationFactory,
    FieldFactory,
    HarvestLotFactory,
    InputProductFactory,
    LandStatementFactory,
    PlantingFactory,
)

YEAR = 2026
SEASON = Span(dt.date(YEAR, 1, 1), dt.date(YEAR, 12, 31))
TODAY = dt.date(2027, 1, 15)
SYSTEMS = ("us", "metric")


def matters(farm, today=TODAY):
    books = dossier(farm, SEASON, today=today)
    return {one.found.matter for one in findings(books, RULES)}


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize(
    ("matter", "books"), test_rules.CASES, ids=[one[0] for one in test_rules.CASES]
)
def test_every_finding_is_a_whole_sentence_without_a_verdict(matter, books, system):
    for one in findings(books, RULES):
        words = sentence(one, system)
        assert words.endswith((".", "”."))
        assert "%(" not in words
        assert "None" not in words
        assert "complian" not in words.lower()


@pytest.mark.django_db
def test_the_page_leads_to_each_record_that_mends_a_finding(world, owner_client):
    page = owner_client.get(reverse("reports:findings", args=["alder-hill", YEAR]))
    lines = [line for group in page.context["groups"] for line in group.lines]
    assert lines
    for line in lines:
        at = reverse("records:page", args=["alder-hill", line.noun, line.record])
        assert at in page.content.decode()
        assert owner_client.get(at).status_code == 200


@pytest.mark.django_db
@pytest.mark.parametrize("way", ["severity", "field", "rule", "nonsense"])
def test_findings_are_the_same_however_they_are_grouped(way, world):
    paper = findings_paper(world.farm, YEAR, today=TODAY, by=way)
    told = sum(len(group.lines) for group in paper["groups"])
    assert told == paper["count"] > 0
    titles = [group.title for group in paper["groups"]]
    assert len(titles) == len(set(titles))


@pytest.mark.django_db
def test_counts_are_told_in_words_and_never_as_a_grade(world):
    counts = findings_paper(world.farm, YEAR, today=TODAY)["counts"]
    assert "1 of 1 plantings name a lot for every kind" in counts
    assert not [words for words in counts if "%" in words or "score" in words]


@pytest.mark.django_db
def test_a_season_without_any_record_says_so(world, owner_client):
    page = owner_client.get(reverse("reports:findings", args=["alder-hill", 1999]))
    assert page.status_code == 200
    assert "Nothing is written down from" in page.content.decode()


@pytest.mark.django_db
def test_land_with_two_statements_that_disagree_is_found(world):
    field = world.ours["fields"]
    LandStatementFactory(
        farm=world.farm,
        field=field,
        substance="2,4-D",
        last_used_on=dt.date(2024, 5, 1),
    )
    told = matters(world.farm)
    assert {Matter.STATEMENTS_DISAGREE, Matter.LAND_NOT_YET} <= told


@pytest.mark.django_db
def test_manure_left_on_top_holds_every_food_lot_of_its_ground(world):
    manure = InputProductFactory(farm=world.farm, type="manure", approval="A 1")
    ApplicationFactory(farm=world.farm, product=manure, field=world.ours["fields"])
    assert Matter.MANURE_ON_TOP in matters(world.farm)


@pytest.mark.django_db
def test_the_books_are_read_in_the_same_queries_for_one_field_or_many(world):
    def queries():
        with CaptureQueriesContext(
            connection,
        ) as asked:
            dossier(world.farm, SEASON, today=TODAY)
        return len(asked)

    before = queries()
    for _ in range(4):
        field = FieldFactory(farm=world.farm, written_by=world.owner)
        planting = PlantingFactory(farm=world.farm, field=field)
        HarvestLotFactory(farm=world.farm, field=field, planting=planting)
        ApplicationFactory(farm=world.farm, field=field)
    assert queries() == before


@pytest.mark.django_db
def test_the_neighbours_books_are_not_read(world):
    ours = dossier(world.farm, SEASON, today=TODAY)
    theirs = dossier(world.theirs.farm, SEASON, today=TODAY)
    for part in dataclasses.fields(ours):
        rows = getattr(ours, part.name)
        if part.name in {"fields", "stands", "lots", "puts", "crops", "entries"}:
            assert rows
            assert not {row.id for row in rows if part.name != "entries"} & {
                row.id for row in getattr(theirs, part.name)
            }
