"""What the page of a licence and of a lot says beyond what was typed."""

import datetime as dt

import pytest
from django.urls import reverse

from records.lot_standing import licence_standing, lot_standing
from tests.factories import (
    ApplicatorLicenceFactory,
    KindFigureFactory,
    SeedLotFactory,
)

TODAY = dt.date(2026, 9, 30)


@pytest.mark.parametrize(
    ("since", "until", "begun", "left"),
    [
        (None, dt.date(2026, 9, 30), True, 0),
        (dt.date(2026, 9, 30), dt.date(2026, 10, 30), True, 30),
        (dt.date(2026, 10, 1), dt.date(2027, 9, 30), False, 365),
        (None, dt.date(2026, 9, 29), True, -1),
    ],
)
def test_a_licence_holds_through_its_last_day(since, until, begun, left):
    row = ApplicatorLicenceFactory.build(since=since, until=until)
    told = licence_standing(row, today=TODAY)
    assert (told.has_begun, told.days_left, told.days_over) == (begun, left, -left)


@pytest.mark.django_db
def test_the_page_of_a_licence_that_ran_out_says_so(world, owner_client):
    here = {"farm": world.farm, "written_by": world.owner}
    row = ApplicatorLicenceFactory(**here, until=dt.date(2026, 1, 1))
    url = reverse("records:page", args=["alder-hill", "applicator-licences", row.pk])
    assert "ran out" in owner_client.get(url).content.decode()


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("told", "shown"),
    [
        ({"status": "organic"}, None),
        ({"status": "organic", "came": "saved"}, False),
        ({"status": "untreated"}, False),
        (
            {
                "status": "untreated",
                "non_gmo": "test",
                "non_gmo_on": dt.date(2026, 2, 1),
            },
            True,
        ),
    ],
)
def test_a_lot_page_says_whether_it_is_shown_not_to_be_engineered(told, shown, world):
    kind = world.ours.kind
    KindFigureFactory(
        kind=kind, attribute="engineered_sold", unit="yes_no", low=1, high=1
    )
    row = SeedLotFactory(farm=world.farm, written_by=world.owner, kind=kind, **told)
    assert lot_standing(row, today=TODAY).is_shown is shown
