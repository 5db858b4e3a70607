"""What the tests of seed share: a day, and oats planned on it."""

import pytest
from django.utils import timezone

from tests.factories import (
    KindFactory,
    KindFigureFactory,
)
from tests.reports.seed.sowings import plan


@pytest.fixture
def today():
    return timezone.localdate()


@pytest.fixture
def oats(world, today):
    """A kind with a rate, planned on two acres, and nothing of it on hand."""
    kind = KindFactory(farm=world.farm, slug="alder-hill--oats", name="Oats")
    KindFigureFactory(
        kind=kind,
        attribute="seeding_rate_drilled",
        low=80,
        high=110,
        unit="lb/ac",
        source="CORN-OAT",
    )
    plan(world, kind, today)
    return kind
