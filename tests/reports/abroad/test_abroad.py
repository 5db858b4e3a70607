"""Small holdings under the rules of other countries, from records to page."""

import datetime as dt
import html
import json
import re
from pathlib import Path

import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse

from farm.models import User
from records import catalogue
from records.management.commands.load_demo import FIXTURES
from records.reading import demo
from reports.calc.rules import RULES
from reports.calc.shapes.rules import RuleId, RuleSet
from reports.labels.rules import place_said
from reports.papers.findings import findings_paper, is_doubtful
from tests.reports.test_demo_faults import planted

YEAR, TODAY = 2025, dt.date(2026, 1, 15)
STORIES = {
    RuleSet.ORGANIC_EU: "alder_bottom.json",
    RuleSet.ORGANIC_CA: "tamarack_row.json",
}
ASKED = [one for one in RULES if one.set in STORIES]


@pytest.fixture(scope="module", params=STORIES)
def holding(request, django_db_setup, django_db_blocker, tmp_path_factory):
    """What was planted, what the paper lists, and the page row by row."""
    path = Path(__file__).with_name(STORIES[request.param])
    story = json.loads(path.read_text(encoding="utf-8"))
    weather = tmp_path_factory.mktemp("weather") / "none.csv"
    weather.write_text("date,tmin_c,tmax_c,rain_mm\n2025-01-01,1,5,0\n")
    with django_db_blocker.unblock(), transaction.atomic():
        owner = User.objects.create_user("owner@example.org", name="Ada")
        if catalogue.is_stale(FIXTURES / "crops.json"):
            catalogue.load(FIXTURES / "crops.json")
        farm, lines = demo.load_lines(story, owner=owner, weather=weather)
        groups = findings_paper(farm, YEAR, today=TODAY)["groups"]
        client = Client()
        client.force_login(owner)
        page = client.get(reverse("reports:findings", args=[farm.slug, YEAR]))
        yield (
            request.param,
            {one for line in lines for one in planted(line)},
            [line for group in groups for line in group.lines],
            rows_of(page.content.decode()),
        )
        transaction.set_rollback(True)


def rows_of(page):
    plain = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", re.sub("</?tr", "\0", page)))
    return html.unescape(plain).split("\0")


def told(lines, set_):
    for line in lines:
        rule, found = line.finding.rule, line.finding.found
        if rule.set is set_:
            yield f"{rule.id}.{found.matter}", found.noun, found.record


@pytest.mark.django_db
def test_what_the_rules_find_is_exactly_what_was_made(holding):
    set_, faults, lines, _rows = holding
    assert sorted(told(lines, set_)) == sorted(faults)


@pytest.mark.django_db
def test_a_fault_against_each_rule_is_told_on_the_page(holding):
    """What is cited from memory says to check the current text."""
    set_, _faults, lines, rows = holding
    for rule in (one for one in ASKED if one.set is set_):
        mine = [line for line in lines if line.finding.rule == rule]
        assert mine, rule.id
        for line in mine:
            (row,) = [row for row in rows if re.sub(r"\s+", " ", line.words) in row]
            assert place_said(rule.citation) in row
            assert ("check the current text" in row) is is_doubtful(rule)


def test_nearly_all_that_is_asked_abroad_is_cited_from_memory():
    read = {one.id for one in ASKED if not is_doubtful(one)}
    assert read <= {RuleId.EDGES}
