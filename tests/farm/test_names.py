"""Names in the order in which one counts."""

import pytest

from farm.names import counting
from reports.ledger.land import plots_of
from tests.factories import FieldFactory


def test_beds_are_put_in_order_as_one_counts_them():
    told = [
        "Bed 10",
        "bed 2",
        "Bed 1",
        "10 acres",
        "Bed 2 west",
        "2 acres",
        "Bed",
    ]
    assert sorted(told, key=counting) == [
        "2 acres",
        "10 acres",
        "Bed",
        "Bed 1",
        "bed 2",
        "Bed 2 west",
        "Bed 10",
    ]


@pytest.mark.django_db
def test_the_land_of_a_farm_is_told_in_that_order(world):
    for number in (10, 9, 1):
        FieldFactory(farm=world.farm, name=f"Bed {number}")
    named = [one.name for one in plots_of(world.farm) if one.name.startswith("Bed")]
    assert named == ["Bed 1", "Bed 9", "Bed 10"]
