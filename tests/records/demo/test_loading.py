"""The demonstration farm, loaded."""

import datetime as dt

import pytest
from django.core.management import CommandError, call_command
from django.db import transaction
from django.test import override_settings

from farm.models import Change, Farm, Field, LandStatement, Membership, User
from records.models import (
    Application,
    Attachment,
    BiomassSample,
    Calibration,
    Equipment,
    FarmFigure,
    HarvestLot,
    InputLot,
    InputProduct,
    Observation,
    Planting,
    Sale,
    SeedLine,
    SeedLot,
    SeedOffer,
    SeedSearch,
    Storage,
    Supplier,
    Termination,
    WeatherDay,
)
from reports.calc.rules import tallies
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Tally
from reports.ledger.dossier import dossier
from reports.papers.findings import findings_paper
from tests.records.demo.story import (
    STORY,
    WEATHER,
)


def count(noun):
    return sum(len(row.get(noun, [])) for row in STORY["plantings"])


@pytest.fixture(scope="module")
def loaded(django_db_setup, django_db_blocker, tmp_path_factory):
    """The farm of the story, loaded once for the tests of this file."""
    media = override_settings(MEDIA_ROOT=tmp_path_factory.mktemp("media"))
    with media, django_db_blocker.unblock(), transaction.atomic():
        User.objects.create_user("owner@example.org", name="Ada")
        call_command("load_demo", owner="owner@example.org", verbosity=0)
        yield Farm.objects.get(slug=STORY["farm"]["slug"])
        transaction.set_rollback(True)


@pytest.mark.django_db
def test_the_whole_story_loads_once_and_is_refused_the_second_time(loaded):
    farm, owner = loaded, User.objects.get(email="owner@example.org")
    told = {
        Field: len(STORY["fields"]),
        LandStatement: len(STORY["land_statements"]),
        SeedLot: len(STORY["seed_lots"]),
        InputProduct: len(STORY["products"]),
        InputLot: len(STORY["input_lots"]),
        Application: len(STORY["applications"]),
        FarmFigure: len(STORY["own_figures"]),
        Planting: len(STORY["plantings"]),
        Supplier: len(STORY["suppliers"]),
        Equipment: len(STORY["machines"]),
        Calibration: len(STORY["calibrations"]),
        SeedOffer: len(STORY["offers"]),
        SeedSearch: len(STORY["searches"]),
        Attachment: len(STORY["papers"]),
        HarvestLot: len(STORY["harvests"]),
        Storage: len(STORY["storages"]),
        Sale: len(STORY["sales"]),
        Observation: count("seen"),
        Termination: count("ended"),
        BiomassSample: count("weighed"),
    }
    assert {noun: noun.objects.on(farm).count() for noun in told} == told
    assert SeedLine.objects.count() == count("seed")
    assert WeatherDay.objects.count() == len(WEATHER)
    assert Membership.objects.get(farm=farm, role="owner").user == owner
    people = User.objects.exclude(pk=owner.pk)
    assert not any(person.has_usable_password() for person in people)
    assert (
        SeedLot.objects.on(farm).live().with_balance().filter(left_kg__lt=-1e-9).count()
        == 0
    )
    log = Change.objects.filter(farm=farm).order_by("pk")
    assert list(log) == sorted(log, key=lambda change: (change.at, change.pk))
    told_verbs = {"wrote", "changed", "voided", "reviewed", "loaded"}
    assert told_verbs <= {one.verb for one in log}
    with pytest.raises(CommandError, match="is here already"):
        call_command("load_demo", owner="owner@example.org")
    assert Farm.objects.count() == 1


@pytest.mark.django_db
@pytest.mark.parametrize("year", [2016, 2017, 2018])
def test_a_clean_farm_lists_nothing_an_inspector_would_ask_about(year, loaded):
    paper = findings_paper(loaded, year, today=dt.date(2019, 1, 15))
    lines = [line.words for group in paper["groups"] for line in group.lines]
    assert lines == []
    assert all(one.have == one.of for one in tallies_of(loaded, year))


def tallies_of(farm, year):
    books = dossier(farm, Span(*farm.season(year)), today=dt.date(2019, 1, 15))
    asked = {Tally.HARVESTS_CHAIN, Tally.SALES_INVOICE, Tally.PLANTINGS_LOT}
    return [one for one in tallies(books) if one.tally in asked]


@pytest.mark.django_db
def test_a_stranger_does_not_get_the_demonstration_farm():
    before = Farm.objects.count()
    with pytest.raises(CommandError, match="Nobody here signs in"):
        call_command("load_demo", owner="stranger@example.org")
    assert Farm.objects.count() == before
