"""What several checks ask of the books."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from reports.calc.rules.standing import beside
from reports.calc.shapes.books import Crop, EndOf, Put, Stand
from reports.calc.shapes.dossier import Dossier

ORGANIC = "organic"
# Ground on which the organic rules are kept.
UNDER_RULES = frozenset({ORGANIC, "transitional"})
PEST = "pest"
SPRAYED = "sprayed"
# Records of what took somebody onto the ground, a look at the stand among them; who
# noticed a mishap may have stood at the edge.
LOOKED = frozenset(
    {
        "observations",
        "biomass-samples",
        "grazings",
        "irrigations",
        "soil-tests",
        "mulch-films-and-tarps",
    }
)
WALKED = LOOKED | {"plantings", "terminations", "harvest-lots", "applications"}
# A product written down so near to a termination is taken to be what ended it.
NEAR = dt.timedelta(days=14)


def under_rules(books: Dossier, field_id: int) -> bool:
    """Tell whether the ground is organic or on its way there."""
    ground = books.field.get(field_id)
    return ground is not None and ground.status in UNDER_RULES


def field_name(books: Dossier, field_id: int | None) -> str:
    """Return the name of a field, or nothing."""
    ground = books.field.get(field_id or 0)
    return ground.name if ground else ""


def puts_of(books: Dossier, type_: str) -> Iterator[Put]:
    """Yield what was put on of one type of product."""
    return (put for put in books.puts if type_of(books, put) == type_)


def type_of(books: Dossier, put: Put) -> str:
    """Return the type of the product put on."""
    product = books.product.get(put.product_id)
    return product.type if product else ""


def sown_this_season(books: Dossier) -> Iterator[tuple[Stand, dt.date]]:
    """Yield each planting of the season with the day it was sown."""
    for stand in books.stands:
        if stand.sown_on is not None and stand.sown_on in books.season:
            yield stand, stand.sown_on


def cut_this_season(books: Dossier) -> Iterator[Crop]:
    """Yield each harvest lot of the season."""
    return (crop for crop in books.crops if crop.on in books.season)


def after_on_ground(books: Dossier, put: Put) -> Iterator[Crop]:
    """Yield harvests after a product was put on, where it was put.

    What was put on one stand also counts for the stand that followed it there.
    """
    for crop in books.on_ground("crops", put.field_id):
        if crop.on >= put.on and not beside(books, put.stand_id, crop.stand_id):
            yield crop


def sprayed_without_leave(books: Dossier) -> Iterator[tuple[EndOf, Stand]]:
    """Yield each stand that was sprayed out with nothing approved written down."""
    for end in books.ends:
        stand = books.stand.get(end.stand_id)
        if end.method == SPRAYED and stand and not _with_leave(books, end, stand):
            yield end, stand


def _with_leave(books: Dossier, end: EndOf, stand: Stand) -> bool:
    return any(
        abs(put.on - end.on) <= NEAR and books.product[put.product_id].approval
        for put in books.on_ground("puts", stand.field_id)
        if type_of(books, put) == PEST
    )
