"""The demonstration farm with faults made on purpose: each is found, and no other."""

import datetime as dt

import pytest
from django.db import transaction
from django.test import override_settings

from farm.models import User
from records import catalogue
from records.management.commands.load_demo import FAULTS, FIXTURES, LAYERS
from records.nouns import BY_MODEL
from records.reading import demo
from reports.calc.shapes.rules import Matter
from reports.papers.findings import findings_paper
from reports.papers.packet import packet_paper

TODAY = dt.date(2019, 1, 15)
YEAR = 2018


@pytest.fixture(scope="module")
def faulty(django_db_setup, django_db_blocker, tmp_path_factory):
    """The farm, and what was planted: the rule and matter, the noun, the record."""
    media = override_settings(MEDIA_ROOT=tmp_path_factory.mktemp("media"))
    with media, django_db_blocker.unblock(), transaction.atomic():
        owner = User.objects.create_user("owner@example.org", name="Ada")
        if catalogue.is_stale(FIXTURES / "crops.json"):
            catalogue.load(FIXTURES / "crops.json")
        story = demo.layered(
            *(demo.read(FIXTURES / name) for name in (*LAYERS, FAULTS))
        )
        weather = FIXTURES / "weather" / story["station"]["file"]
        farm, lines = demo.load_lines(story, owner=owner, weather=weather)
        yield farm, {one for line in lines for one in planted(line)}
        transaction.set_rollback(True)


def planted(line):
    told = line.told.get("fault", [])
    for fault in [told] if isinstance(told, str) else told:
        yield fault, BY_MODEL[line.row._meta.model_name].slug, line.row.pk


def listed(paper):
    for group in paper["groups"]:
        for line in group.lines:
            found = line.finding.found
            yield f"{line.finding.rule.id}.{found.matter}", found.noun, found.record


@pytest.mark.django_db
def test_the_findings_are_exactly_the_faults_that_were_made(faulty):
    farm, faults = faulty
    told = list(listed(findings_paper(farm, YEAR, today=TODAY)))
    assert set(told) == faults
    assert len(told) == len(faults)


@pytest.mark.django_db
@pytest.mark.parametrize("year", [2016, 2017])
def test_the_seasons_before_ask_only_about_what_has_no_date(year, faulty):
    farm, faults = faulty
    paper = findings_paper(farm, year, today=TODAY)
    assert set(listed(paper)) < faults
    lines = [line for group in paper["groups"] for line in group.lines]
    assert all(line.finding.found.on is None for line in lines)


@pytest.mark.django_db
def test_the_packet_lists_exactly_the_faults_that_were_made(faulty):
    farm, faults = faulty
    told = list(listed(packet_paper(farm, YEAR, today=TODAY)))
    assert set(told) == faults
    assert len(told) == len(faults)


@pytest.mark.django_db
def test_nearly_everything_a_check_can_find_is_among_the_faults(faulty):
    _farm, faults = faulty
    made = {fault.split(".")[1] for fault, _noun, _record in faults}
    assert made <= set(Matter)
    assert len(made) >= 100
