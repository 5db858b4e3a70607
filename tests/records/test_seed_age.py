"""The age of a germination test: warned about, and which lot goes first."""

import datetime as dt

import pytest
from django.urls import reverse

from records.freshness import MONTHS_AT_SOWING, OWN_KEY, months_between
from records.models import SeedLot
from reports.calc.assumptions import BY_KEY
from tests.factories import OwnAssumptionFactory, SeedLotFactory
from tests.records.typed import rows, typed

pytestmark = pytest.mark.django_db


@pytest.fixture
def post(world, owner_client):
    def post(noun, sent):
        url = reverse("records:new", args=[world.farm.slug, noun])
        return owner_client.post(url, sent, follow=True).content.decode()

    return post


@pytest.mark.parametrize(
    ("tested", "on", "months"),
    [("2026-01-01", "2026-06-30", 5), ("2025-12-31", "2026-06-01", 6)],
)
def test_months_are_counted_from_the_end_of_the_test_month(tested, on, months):
    # 7 CFR 201.30a: five calendar months after the last day of the month of the test.
    days = map(dt.date.fromisoformat, (tested, on))
    assert months_between(*days) == months


def test_the_allowance_at_sowing_is_one_number_in_both_storeys():
    assert BY_KEY[OWN_KEY].value == MONTHS_AT_SOWING


@pytest.mark.parametrize(("tested", "warned"), [("2025-10-01", 1), ("2025-11-01", 0)])
def test_an_old_test_is_warned_about_when_seed_comes(tested, warned, world, post):
    page = post("seed-lots", typed("seed-lots", world.ours, tested_on=tested))
    assert ("The germination test was 6 months old" in page) == bool(warned)


def test_an_old_test_is_warned_about_when_it_is_sown_by_the_farms_own_months(
    world, post
):
    lot = world.ours["seed-lots"]
    day = dt.date(2025, 9, 1)
    past = dt.date(2026, 4, 1)
    SeedLot.objects.filter(pk=lot.pk).update(tested_on=day, inoculant_until=past)
    sent = typed("plantings", world.ours, sown_on="2026-06-10", planned_on="")
    sent |= rows("lines", {"lot": lot.pk, "seed_kg": "1 lb"})
    page = post("plantings", sent)
    assert "beyond the farm" not in page
    assert "the inoculant on it was good until Apr 2026" in page
    told = {"farm": world.farm, "written_by": world.owner}
    OwnAssumptionFactory(**told, key=OWN_KEY, value=6, unit="months", low=1, high=60)
    assert "age of its germination test 9 months, beyond the farm" in post(
        "plantings", sent
    )


def test_lots_are_offered_tested_first_with_the_word_why(world, owner_client):
    told = {"farm": world.farm, "written_by": world.owner, "kind": world.ours.kind}
    made = SeedLotFactory
    made(**told, lot_number="LATER", tested_on=dt.date(2026, 1, 1))
    made(**told, lot_number="FIRST", tested_on=dt.date(2025, 1, 1))
    spent = made(**told, lot_number="SPENT", received_kg=0.001)
    SeedLot.objects.filter(lot_number="SPENT").update(tested_on=dt.date(2024, 1, 1))
    url = reverse("records:new", args=[world.farm.slug, "plantings"])
    form = owner_client.get(url).context["form"]
    labels = [str(label) for _, label in form.rows.forms[0].fields["lot"].choices]
    first, later = (
        next(one for one in labels if name in one) for name in ("FIRST", "LATER")
    )
    assert labels.index(first) < labels.index(later)
    assert "tested Jan 2025, goes first: the oldest test" in first
    assert "left" in later
    assert "goes first" not in later
    assert not any(spent.lot_number in one for one in labels)
