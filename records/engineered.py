"""Of which seed it is asked that it be shown not to be engineered."""

from __future__ import annotations

from farm.models import Farm
from records.models import FarmFigure, Kind, KindFigure, SeedLot

FLAG = "engineered_sold"


def kinds_asked(row: SeedLot) -> list[Kind]:
    """The kinds of a lot for which a statement or a test is asked; often none.

    Organic seed that was bought answers for itself by its certificate.
    """
    if row.status == SeedLot.Status.ORGANIC and row.came != SeedLot.Came.SAVED:
        return []
    kinds = [kind for kind, _pls in row.contents()]
    return [kind for kind in kinds if is_sold_engineered(kind, row.farm)]


def is_sold_engineered(kind: Kind, farm: Farm) -> bool:
    """The farm's own word on a kind, or else the catalogue's."""
    own = FarmFigure.objects.on(farm).live().filter(attribute=FLAG, kind=kind).first()
    said = own or KindFigure.objects.filter(attribute=FLAG, kind=kind).first()
    return said is not None and said.low > 0
