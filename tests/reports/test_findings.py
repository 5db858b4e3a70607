"""The findings page: what it says, where it leads, and what it never says."""

import dataclasses
import datetime as dt

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from farm.writing import void
from records.models import CertifierNumber, InputProduct, KeptFindings, RulesFollowed
from records.rules_called import SETS, TYPED, called
from reports.calc.rules import RULES, findings
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter, RuleId, RuleSet
from reports.labels.rules import sentence
from reports.ledger.dossier import dossier
from reports.ledger.ruling import rules_of
from reports.papers.findings import findings_paper
from tests.calc.rules import test_cases
from tests.factories import (
    ApplicationFactory,
    CertifierNumberFactory,
    ChangeToldFactory,
    FieldFactory,
    HarvestLotFactory,
    InputProductFactory,
    LandStatementFactory,
    PlantingFactory,
    RulesFollowedFactory,
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
    ("matter", "books"), test_cases.CASES, ids=[one[0] for one in test_cases.CASES]
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


@pytest.mark.django_db
def test_a_reply_is_written_once_and_stands_beside_its_finding(world, owner_client):
    paper = findings_paper(world.farm, YEAR, today=TODAY)
    line = paper["groups"][0].lines[0]
    new = reverse("records:new", args=["alder-hill", "finding-replies"])
    told = {"key": line.finding.key, "finding": line.words}
    form = owner_client.get(new, told).content.decode()
    assert line.finding.key in form
    sent = {**told, "reply": "The letter lies in the blue folder.", "replied_on": TODAY}
    sent["replied_on"] = "2026-09-01"
    assert owner_client.post(f"{new}?key=x", sent).status_code == 302
    page = owner_client.get(reverse("reports:findings", args=["alder-hill", YEAR]))
    assert "The letter lies in the blue folder." in page.content.decode()
    assert owner_client.post(f"{new}?key=x", sent).status_code == 200


@pytest.mark.django_db
def test_the_certifiers_number_is_used_and_shown_as_theirs(world, owner_client):
    key = f"{RuleSet.ORGANIC_US}.{RuleId.MANURE}.contact_days"
    world.farm.standard = "us"
    world.farm.save()
    CertifierNumberFactory(farm=world.farm, key=key, value=150, low=60, high=400)
    found = {one.id: one for one in rules_of(world.farm, SEASON)}
    assert found[RuleId.MANURE]["contact_days"] == 150
    page = owner_client.get(reverse("reports:rules", args=["alder-hill"]))
    assert "the certifier’s own" in page.content.decode()


@pytest.mark.django_db
def test_a_number_a_rule_does_not_allow_is_told_and_not_used(world, owner_client):
    key = f"{RuleSet.ORGANIC_US}.{RuleId.MANURE}.contact_days"
    world.farm.standard = "us"
    world.farm.save()
    CertifierNumberFactory(farm=world.farm, key=key, value=20, low=10, high=400)
    page = owner_client.get(reverse("reports:rules", args=["alder-hill"]))
    assert "20 is written down, but it lies outside 60 to 400" in page.content.decode()
    found = {one.id: one for one in rules_of(world.farm, SEASON)}
    assert found[RuleId.MANURE]["contact_days"] == 120


@pytest.mark.django_db
def test_sets_of_rules_are_followed_in_their_own_years(world):
    RulesFollowedFactory(
        farm=world.farm,
        which="food",
        since=dt.date(2020, 1, 1),
        until=dt.date(2024, 12, 31),
    )
    then = Span(dt.date(2022, 1, 1), dt.date(2022, 12, 31))
    sets = [
        {one.set for one in rules_of(world.farm, season)} for season in (then, SEASON)
    ]
    assert RuleSet.FOOD in sets[0]
    assert RuleSet.FOOD not in sets[1]


def test_the_records_spell_the_sets_as_the_rules_do():
    assert set(RulesFollowed.Which.values) <= {one.value for one in RuleSet}


def test_every_number_of_a_rule_has_a_name_and_a_unit_in_the_records_too():
    keys = [f"{rule.set}.{rule.id}.{one.key}" for rule in RULES for one in rule.params]
    assert all(called(key).startswith(str(SETS[key.split(".")[0]])) for key in keys)
    assert called("no.such.<i>") == "no.such.<i>"
    bare = {"days", "months", "years", "hours", "times", "ratio", "zone"}
    units = {one.key: one.unit for rule in RULES for one in rule.params}
    assert set(TYPED) == {key for key, unit in units.items() if unit not in bare}


@pytest.mark.django_db
def test_numbers_of_rules_are_told_as_the_farm_measures(world, owner_client):
    world.farm.standard = "us"
    world.farm.save()
    url = reverse("reports:rules", args=["alder-hill"])
    page = owner_client.get(url).content.decode().replace("\xa0", " ")
    assert "tolerance for seed and packed inputs: 5 %" in page
    assert "tolerance for harvests in bulk: 10 %" in page
    assert "heat, from: 131 °F" in page and "heat, to: 170 °F" in page
    own = world.ours["certifier-numbers"]
    shown = own.called
    listed = reverse("records:list", args=["alder-hill", "certifier-numbers"])
    assert shown in owner_client.get(listed).content.decode()


@pytest.mark.django_db
def test_from_a_reply_one_goes_back_to_the_findings_it_is_one_of(world, owner_client):
    at = reverse("records:new", args=["alder-hill", "finding-replies"])
    sent = {"key": "land.x", "finding": "No outline.", "reply": "Drawn in March."}
    sent |= {"replied_on": "2026-04-01", "done_by": "Ana"}
    for season, is_back in (("2025", True), ("20x5", False), ("", False)):
        sent["key"] += "1"
        answer = owner_client.post(f"{at}?key=1&season={season}", sent, follow=True)
        back = reverse("reports:findings", args=["alder-hill", 2025])
        assert (back in answer.content.decode()) is is_back


REFUSED = [
    ("manure.contact_days", "60", "400", "4000", "outside the range"),
    ("tarp.late_days", "0", "240", "241", "outside the range"),
    ("tarp.late_days", "0", "240", "four months", "Enter a number"),
]
MEANT = {
    "manure.contact_days": "days where the part eaten touches the soil",
    "tarp.late_days": "days before the season’s end that count as late",
}


@pytest.mark.django_db
@pytest.mark.parametrize(("number", "low", "high", "typed", "told"), REFUSED)
def test_a_certifiers_number_out_of_its_range_is_refused_beside_the_box(
    number, low, high, typed, told, world, owner_client
):
    new = reverse("records:new", args=["alder-hill", "certifier-numbers"])
    key = f"{RuleSet.ORGANIC_US}.{number}"
    sent = {"key": key, "low": low, "high": high, "value": typed}
    sent |= {"note": "Told by telephone", "document": "Blue folder"}
    before = CertifierNumber.objects.count()
    page = owner_client.post(f"{new}?key={key}", sent).content.decode()
    assert told in page
    assert f"{MEANT[number]}. From {low} to {high}." in page
    assert f'value="{typed}' in page
    assert CertifierNumber.objects.count() == before


@pytest.mark.django_db
@pytest.mark.parametrize("typed", ["twelve", "12 hours", "-4", "NaN", "1e9"])
def test_an_interval_that_is_none_is_refused_and_what_was_typed_stays(
    typed, world, owner_client
):
    new = reverse("records:new", args=["alder-hill", "input-products"])
    sent = {"name": "Soap", "type": "pest", "reentry_hours": typed}
    before = InputProduct.objects.count()
    page = owner_client.post(new, sent).content.decode()
    assert f'value="{typed}"' in page
    assert 'id="id_reentry_hours_error"' in page
    assert InputProduct.objects.count() == before


@pytest.mark.django_db
def test_a_day_meant_as_never_is_refused_beside_its_box(world, owner_client):
    new = reverse("records:new", args=["alder-hill", "input-products"])
    sent = {"name": "Soap", "type": "pest", "approved_until": "9999-12-31"}
    page = owner_client.post(new, sent).content.decode()
    assert "This day lies too far ahead." in page


@pytest.mark.django_db
def test_a_kept_list_tells_what_came_and_what_went_since(world, owner_client):
    keep = reverse("reports:findings-keep", args=["alder-hill", YEAR])
    at = reverse("reports:findings", args=["alder-hill", YEAR])
    assert owner_client.post(keep).status_code == 302
    assert owner_client.post(keep).status_code == 302
    assert KeptFindings.objects.filter(farm=world.farm).count() == 1
    put = ApplicationFactory(
        farm=world.farm, field=world.ours["fields"], applied_on=dt.date(YEAR, 5, 2)
    )
    now, first = owner_client.get(at).context["steps"]
    assert (now.kept, first.is_first) == (None, True)
    assert now.came and not now.went
    void(put, by=world.owner, now=timezone.now(), reason="Never done")
    owner_client.post(keep)
    now, _first = owner_client.get(at).context["steps"]
    assert not now.came and not now.went


@pytest.mark.django_db
def test_what_the_certifier_was_told_of_stands_beside_the_change(world, owner_client):
    at = reverse("reports:changes-since", args=["alder-hill", YEAR])
    parts = owner_client.get(at).context["changes"]
    line = parts[0].lines[0]
    ChangeToldFactory(farm=world.farm, key=line.key, how="By letter of spring")
    page = owner_client.get(at)
    assert page.context["changes"][0].lines[0].told is not None
    assert "By letter of spring" in page.content.decode()


@pytest.mark.django_db
def test_each_change_says_how_much_it_was_and_opens_its_record(world, owner_client):
    page = owner_client.get(reverse("reports:changes-since", args=["alder-hill", YEAR]))
    lines = [line for one in page.context["changes"] for line in one.lines]
    told = page.content.decode()
    for line in lines:
        opens = (line.use.noun, line.use.record)
        assert reverse("records:page", args=["alder-hill", *opens]) in told
        assert str(line.use.first.year) in line.said
    assert any("\xa0ac" in line.said for line in lines)


@pytest.mark.django_db
def test_fields_of_findings_stand_in_the_order_one_counts(world, owner_client):
    for number in (10, 2):
        bed = FieldFactory(farm=world.farm, name=f"Bed {number}")
        day = dt.date(YEAR, 5, 2)
        ApplicationFactory(farm=world.farm, field=bed, applied_on=day, done_by="")
    at = reverse("reports:findings", args=["alder-hill", YEAR])
    titles = [
        one.title for one in owner_client.get(at, {"by": "field"}).context["groups"]
    ]
    assert titles.index("Bed 2") < titles.index("Bed 10")
