"""What the books tell the checks of people, of kinds and of licences."""

import datetime as dt

import pytest
from django.urls import reverse

from records.models import FarmFigure
from reports.calc.shapes.basics import Span
from reports.ledger.dossier import dossier
from reports.ledger.orders import order_facts
from tests.factories import (
    DutyFactory,
    FarmFigureFactory,
    KindFactory,
    KindFigureFactory,
    SeedLotFactory,
)

SEASON = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
TODAY = dt.date(2026, 9, 30)


def books(farm):
    return dossier(farm, SEASON, today=TODAY)


@pytest.mark.django_db
def test_owner_operator_and_family_are_left_out_by_name(world):
    farm = world.farm
    farm.operator, farm.family = "The Alders", "Ada Alder\n\n Ben Alder "
    told = books(farm).exempt
    assert told == {"The Alders", "Ada Alder", "Ben Alder", world.owner.name}


@pytest.mark.django_db
def test_only_open_work_given_to_somebody_is_looked_at(world):
    here = {"farm": world.farm, "written_by": world.owner}
    duty = DutyFactory(**here, field=world.ours["fields"], who_for=world.crew)
    DutyFactory(**here, who_for=world.crew, done_on=dt.date(2026, 7, 9))
    DutyFactory(**here)
    (task,) = books(world.farm).tasks
    assert (task.id, task.who) == (duty.pk, world.crew.name)


@pytest.mark.django_db
def test_the_farms_own_word_on_a_kind_goes_before_the_catalogues(world):
    flag = {"attribute": "engineered_sold", "unit": "yes_no"}
    here = {"farm": world.farm, "written_by": world.owner}
    corn, beet = KindFactory(name="Corn"), KindFactory(name="Beet")
    for kind in (corn, beet):
        KindFigureFactory(kind=kind, low=1, high=1, **flag)
        SeedLotFactory(**here, kind=kind)
    FarmFigureFactory(**here, kind=beet, low=0, high=0, **flag)
    FarmFigureFactory(**here, kind=world.ours.kind, low=1, high=1, **flag)
    told = {lot.kind: lot.engineered for lot in books(world.farm).lots}
    assert told == {"Corn": ("Corn",), "Beet": (), "Buckwheat": ("Buckwheat",)}


@pytest.mark.django_db
@pytest.mark.parametrize(("answer", "kept"), [("1.0", 1.0), ("0.0", 0.0)])
def test_a_farm_says_yes_or_no_of_any_kind(answer, kept, world, owner_client):
    kind = world.ours.kind
    page = owner_client.get(reverse("records:kind", args=["alder-hill", kind.slug]))
    assert "Engineered varieties are sold" in page.content.decode()
    url = reverse("records:own-figure", args=["alder-hill", kind.slug])
    url += "?figure=engineered_sold"
    assert 'name="high"' not in owner_client.get(url).content.decode()
    sent = {"low": answer, "reason": "Asked the seller"}
    assert owner_client.post(url, sent).status_code == 302
    row = FarmFigure.objects.get(attribute="engineered_sold")
    assert (row.low, row.high, row.unit) == (kept, kept, "yes_no")


@pytest.mark.django_db
def test_a_lot_of_such_a_kind_is_asked_for_a_statement_when_it_comes(
    world, owner_client
):
    kind = world.ours.kind
    flag = {"attribute": "engineered_sold", "unit": "yes_no", "low": 1, "high": 1}
    KindFigureFactory(kind=kind, **flag)
    sent = {
        "kind": kind.pk,
        "lot_number": "C-1",
        "received_on": "2026-04-02",
        "received_kg": "50 lb",
        "tested_on": "2026-03-01",
        "status": "untreated",
    }
    url = reverse("records:new", args=["alder-hill", "seed-lots"])
    page = owner_client.post(url, sent, follow=True).content.decode()
    assert "Engineered varieties of Buckwheat are sold." in page
    more = {"lot_number": "C-2", "non_gmo": "written", "non_gmo_on": "2026-04-01"}
    page = owner_client.post(url, sent | more, follow=True).content.decode()
    assert "Engineered varieties of Buckwheat are sold." not in page


@pytest.mark.django_db
def test_the_receipt_of_an_order_asks_what_shows_such_seed(world):
    kind, order = world.ours.kind, world.ours["seed-orders"]
    flag = {"attribute": "engineered_sold", "unit": "yes_no", "low": 1, "high": 1}
    KindFigureFactory(kind=kind, **flag)
    here = {"farm": world.farm, "written_by": world.owner, "kind": kind}
    here |= {"order": order, "received_kg": 25.0}
    SeedLotFactory(**here, lot_number="A", status="untreated")
    SeedLotFactory(**here, lot_number="B", status="organic")
    SeedLotFactory(
        **here, lot_number="C", status="untreated", non_gmo="test", non_gmo_on=TODAY
    )
    lots = order_facts(world.farm, order.pk).lots
    assert {lot.label: lot.unshown for lot in lots} == {
        "A": True,
        "B": False,
        "C": False,
    }
