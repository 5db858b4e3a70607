"""A clean set of books, and single rows to spoil it with."""

import dataclasses
import datetime as dt

from reports.calc.rules import RULES
from reports.calc.shapes import books as rows
from reports.calc.shapes.basics import Span
from reports.calc.shapes.dossier import Dossier

SEASON = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
TODAY = dt.date(2027, 1, 15)


def day(text):
    return dt.date.fromisoformat(f"2026-{text}" if len(text) == 5 else text)


GROUND = rows.Ground(1, "North", 4000.0, "organic", day("2015-01-01"))
LOT = rows.Lot(
    1,
    "Buckwheat",
    "BW-26",
    "Two Magpies",
    day("03-10"),
    50.0,
    "organic",
    certificate="IP 0117",
    tested_on=day("2025-12-01"),
    purity=0.98,
    germination=0.9,
)
STAND = rows.Stand(
    1,
    1,
    4000.0,
    "cash",
    day("05-10"),
    lines=(rows.Line("Buckwheat", False, 1, 20.0),),
    method="drilled",
)
PRODUCT = rows.Product(1, "Feather meal", "fertiliser", approval="IPC 12")
SPRAY = rows.Product(
    2,
    "Soap",
    "pest",
    approval="IPC 13",
    registration="1-2-3",
    reentry_hours=12,
    preharvest_days=1,
    plant_back_months=0,
)
PUT = rows.Put(
    1,
    1,
    1,
    day("05-01"),
    200.0,
    "mass",
    4000.0,
    worked_in_on=day("05-01"),
    method="spread",
    done_by="Wren",
    written_on=day("05-01"),
)
SPRAYED = dataclasses.replace(
    PUT,
    id=2,
    product_id=2,
    on=day("06-10"),
    target="aphids",
    started_at=dt.time(13),
    finished_at=dt.time(14),
    posted_at=dt.datetime(2026, 6, 10, 15),
    worked_in_on=None,
)
CROP = rows.Crop(
    1, "H1", "Squash", 1, 1, day("09-02"), 800.0, "food", "organic", touches_soil=True
)
KEPT = rows.Kept(1, 1, day("09-02"), "Cold room", 800.0)
GONE = rows.Gone(1, 1, day("09-10"), "Market", 100.0, "organic", "A 12")
PARTNER = rows.Partner(
    1, "Two Magpies", "1 Road", "IP 0117", day("2027-01-01"), day("02-01")
)
ENTRY = rows.Entry(
    "plantings", 1, "North, 10 May", day("05-10"), day("05-10"), "Wren", 1
)
SIDE = rows.Side(1, 1, "north", "Maize", 9.0, "hedge")

CLEAN = Dossier(
    season=SEASON,
    today=TODAY,
    fields=(GROUND,),
    sides=(SIDE,),
    lots=(LOT,),
    stands=(STAND,),
    products=(PRODUCT, SPRAY),
    puts=(PUT, SPRAYED),
    crops=(CROP,),
    kept=(KEPT,),
    gone=(GONE,),
    machines=("Drill",),
    partners=(PARTNER,),
    people=frozenset({"Wren"}),
    farm_address="1 Lane",
    entries=(ENTRY,),
)


def spoiled(**told):
    """The clean books with other rows in them."""
    return dataclasses.replace(CLEAN, **told)


def but(row, **told):
    return dataclasses.replace(row, **told)


def rule(id_, set_=None):
    """The first rule of that name, or the one of that set."""
    return next(
        one for one in RULES if one.id == id_ and (set_ is None or one.set == set_)
    )
