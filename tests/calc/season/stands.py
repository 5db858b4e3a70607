"""Ground, and what is drawn of it."""

from reports.calc.shapes.ledger import (
    End,
    PlantingFacts,
    Sample,
)
from reports.calc.shapes.season import (
    CoverDays,
)
from tests.calc.builders import (
    day,
    one_planting,
    planting,
    summer,
)

HEAVY = (Sample(day(8, 14), (0.5604,)),)  # 5,000 lb of dry matter an acre


def total(cover: CoverDays) -> float:
    return cover.counted + cover.not_yet


def heavy(*ends: End) -> PlantingFacts:
    return planting(day(7, 10), *ends, samples=HEAVY)


def choice(row: PlantingFacts, **wanted: object):  # noqa: ANN201
    return one_planting(row, **{"weather": summer(), **wanted}).choices[0]
