"""What the tests of pages ahead share: land with weather, and a stand on it."""

import pytest

from tests.factories import (
    FieldFactory,
    KindFigureFactory,
    PlantingFactory,
)
from tests.reports.ahead.places import (
    FIGURES,
    SOWN,
    years,
)


@pytest.fixture
def here(world):
    return {"farm": world.farm, "written_by": world.owner}


@pytest.fixture
def stand(world, here):
    kind = world.ours.kind
    for attribute, low, high, unit, source in FIGURES:
        KindFigureFactory(
            kind=kind, attribute=attribute, low=low, high=high, unit=unit, source=source
        )
    years(world.ours["stations"])
    field = FieldFactory(**here, name="Creek")
    return PlantingFactory(**here, field=field, sown_on=SOWN, line__kind=kind)
