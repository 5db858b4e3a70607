"""What the checks find: clean books, then one fault a case."""

import datetime as dt

import pytest

from reports.calc.rules import CHECKS, RULES, findings
from reports.calc.shapes import books as rows
from reports.calc.shapes.rules import Matter, RuleId
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, spoiled
from tests.calc.rules.faults import (
    COVER,
    EVERY,
    MANURE,
    PEST,
    RESTRICTED,
    delivered,
    found,
    rich,
    sprayed,
    used_on,
)

# What the checks find: clean books, then one fault a case.


def test_clean_books_show_nothing():
    assert findings(CLEAN, EVERY) == ()


COMPOST = rows.Product(4, "Heap", "compost", approval="IPC 15")


HOT = tuple(
    (day("04-01") + dt.timedelta(days=n), 60.0, n in {2, 4, 6, 8, 10})
    for n in range(16)
)


HEAP = rows.Heap(1, "Heap", "windrow", day("04-01"), 30.0, HOT)


END = rows.EndOf(1, 2, day("05-05"), "mown", "on_top")


FILM = rows.Laid(1, 1, "polyethylene", day("05-04"), 4000.0)


def manured(**told):
    put = but(at.PUT, id=3, product_id=3, **told)
    return spoiled(products=(*CLEAN.products, MANURE), puts=(*CLEAN.puts, put))


def heaped(heap, **told):
    put = but(at.PUT, id=4, product_id=4, product_lot="Heap", **told)
    return spoiled(
        products=(*CLEAN.products, COMPOST), puts=(*CLEAN.puts, put), heaps=(heap,)
    )


def lotted(**told):
    return spoiled(lots=(but(at.LOT, **told),))


def searched(**told):
    search = rows.Search(
        1,
        1,
        "Buckwheat",
        day("02-03"),
        "early",
        "quantity",
        tuple((name, day("02-01")) for name in "ABC"),
    )
    return spoiled(
        lots=(but(at.LOT, status="untreated"),), searches=(but(search, **told),)
    )


def cropped(**told):
    return spoiled(crops=(but(at.CROP, **told),))


def covered(end=END, **told):
    return spoiled(stands=(at.STAND, but(COVER, **told)), ends=(end,))


def stated(*told):
    made = [rows.Statement(n, 1, *one) for n, one in enumerate(told, start=1)]
    return spoiled(statements=tuple(made))


def laid(**told):
    return spoiled(laid=(but(FILM, **told),))


HIRED = rows.Partner(9, "A sprayer for hire", "2 Road", is_contractor=True)


FORAGE = but(at.CROP, id=2, stand_id=2, use="feed", on=day("06-20"))


SILENT = but(PEST, plant_back_months=None)


CARD = rows.Licence(1, "NE-4711", "Nebraska", day("2025-01-01"), day("2027-12-31"))


def licensed(licences, **told):
    books = sprayed(RESTRICTED, licence="ne 4711", **told)
    return but(books, licences=licences)


def employed(**told):
    """Wren harvested eleven days after a spray."""
    cut = but(at.ENTRY, noun="harvest-lots", on=day("06-21"))
    return spoiled(entries=(at.ENTRY, cut), **told)


EARLIER = but(at.SPRAYED, id=5, on=day("2025-09-01"))


CASES = [
    (Matter.LAND_NOT_YET, stated((day("2020-01-01"), day("2024-01-01"), "2,4-D"))),
    (Matter.LAND_JUST, stated((day("2020-01-01"), day("2023-08-25"), "2,4-D"))),
    (Matter.LAND_UNKNOWN, spoiled(fields=(but(at.GROUND, status_since=None),))),
    (
        Matter.STATEMENTS_DISAGREE,
        stated(
            (day("2020-01-01"), day("2022-01-01"), "atrazine", day("2021-05-01")),
            (day("2021-01-01"), day("2024-01-01")),
        ),
    ),
    (
        Matter.STATEMENTS_OVERLAP,
        stated(
            (day("2020-01-01"), day("2022-01-01")),
            (day("2021-01-01"), day("2024-01-01")),
        ),
    ),
    (Matter.NO_OUTLINE, spoiled(fields=(but(at.GROUND, has_outline=False),))),
    (Matter.EDGE_OPEN, spoiled(sides=(but(at.SIDE, buffer_m=None, barrier=""),))),
    (Matter.EDGE_NARROW, spoiled(sides=(but(at.SIDE, buffer_m=2, barrier=""),))),
    (Matter.EDGES_UNTOLD, spoiled(sides=())),
    (
        Matter.LAND_IDLE,
        spoiled(fields=(but(at.GROUND, status="transitional"),), entries=()),
    ),
    (Matter.MANURE_ON_TOP, manured(worked_in_on=None)),
    (Matter.MANURE_SOON, manured(worked_in_on=day("06-01"))),
    (
        Matter.GRAZED_SOON,
        spoiled(
            flocks=(rows.Flock(1, 1, None, "sheep", day("08-01"), day("08-05"), True),)
        ),
    ),
    (Matter.NITROGEN_OVER, rich(0.5)),
    (Matter.NITROGEN_UNKNOWN, manured()),
    (
        Matter.COMPOST_NO_BATCH,
        spoiled(
            products=(*CLEAN.products, but(COMPOST, approval="")),
            puts=(*CLEAN.puts, but(at.PUT, id=4, product_id=4)),
        ),
    ),
    (Matter.COMPOST_NO_LOG, heaped(but(HEAP, days=()))),
    (Matter.COMPOST_DAYS, heaped(but(HEAP, days=HOT[:9]))),
    (
        Matter.COMPOST_TURNINGS,
        heaped(but(HEAP, days=tuple((d, t, False) for d, t, _ in HOT))),
    ),
    (Matter.COMPOST_RATIO, heaped(but(HEAP, ratio=50.0))),
    (Matter.COMPOST_ON_TOP, heaped(but(HEAP, days=()), worked_in_on=None)),
    (Matter.COMPOST_SOON, heaped(but(HEAP, days=()), worked_in_on=day("08-01"))),
    (Matter.SEED_NO_CERTIFICATE, lotted(certificate="")),
    (Matter.SEED_NO_SEARCH, lotted(status="untreated")),
    (Matter.SEED_NO_SEARCH, searched(kind="Oats", lot_id=None)),
    (Matter.SEARCH_FEW, searched(asked=(("A", day("02-01")),))),
    (Matter.SEARCH_LATE, searched(asked=tuple((n, day("06-01")) for n in "ABC"))),
    (Matter.SEARCH_OLD, searched(asked=tuple((n, day("2024-02-01")) for n in "ABC"))),
    (Matter.SEARCH_NO_REASON, searched(reason="")),
    (Matter.TREATED_SOWN, lotted(status="treated", treatment="thiram")),
    (
        Matter.LINE_NO_LOT,
        spoiled(stands=(but(at.STAND, lines=(rows.Line("Rye", False, None),)),)),
    ),
    (Matter.TAG_SILENT, lotted(purity=None)),
    (Matter.TAG_NO_WEEDS, lotted(noxious_told=False)),
    (Matter.TAG_OLD, lotted(tested_on=day("2025-06-01"))),
    (Matter.INOCULANT_UNNAMED, spoiled(stands=(but(at.STAND, inoculated=True),))),
    (Matter.INOCULANT_OLD, lotted(inoculant="rhizobia", inoculant_until=day("04-01"))),
    (Matter.SUPPLIER_UNKNOWN, spoiled(partners=())),
    (Matter.SUPPLIER_UNCHECKED, spoiled(partners=(but(at.PARTNER, verified_on=None),))),
    (
        Matter.SUPPLIER_LAPSED,
        spoiled(partners=(but(at.PARTNER, certificate_until=day("01-01")),)),
    ),
    (Matter.NOT_APPROVED, spoiled(products=(but(at.PRODUCT, approval=""), PEST))),
    (Matter.GREW_UNAPPROVED, spoiled(products=(but(at.PRODUCT, approval=""), PEST))),
    (
        Matter.APPROVED_AFTER,
        spoiled(products=(but(at.PRODUCT, approved_on=day("06-01")), PEST)),
    ),
    (
        Matter.APPROVAL_RAN_OUT,
        spoiled(products=(but(at.PRODUCT, approved_until=day("04-01")), PEST)),
    ),
    (Matter.APPLICATOR_UNNAMED, sprayed(done_by="")),
    (Matter.APPLICATOR_NO_ADDRESS, sprayed(done_by="A stranger")),
    (Matter.METHOD_UNNAMED, sprayed(method="")),
    (Matter.TARGET_UNNAMED, sprayed(target="")),
    (Matter.SPRAYED_OUT, covered(but(END, method="sprayed"))),
    (Matter.TARP_LEFT, covered(but(END, method="tarped"))),
    (Matter.TARP_LATE, laid(off_on=day("2027-01-05"))),
    (Matter.TARP_UNDER, laid(on=day("2025-05-04"), stand_id=1)),
    (Matter.SHEET_WORKED_IN, laid(off_on=day("09-01"), went="worked_in")),
    (Matter.SHEET_PVC, laid(material="pvc")),
    (Matter.SHEET_UNAPPROVED, laid(material="biodegradable")),
    (Matter.BURNED, covered(but(END, method="burned"))),
    (Matter.BURNED_ASK, covered(but(END, method="burned", reason="blight"))),
    (
        Matter.ENTERED_EARLY,
        spoiled(
            products=(at.PRODUCT, but(PEST, reentry_hours=48)),
            crops=(but(at.CROP, on=day("06-11")),),
            kept=(but(at.KEPT, on=day("06-11")),),
        ),
    ),
    (
        Matter.PLANNED_EARLY,
        spoiled(
            products=(at.PRODUCT, but(PEST, reentry_hours=48)),
            stands=(at.STAND, but(COVER, sown_on=None, planned_on=day("06-11"))),
        ),
    ),
    (Matter.INTERVAL_UNKNOWN, sprayed(but(PEST, reentry_hours=None))),
    (Matter.REGISTRATION_UNKNOWN, sprayed(but(PEST, registration=" "))),
    (Matter.HOURS_UNKNOWN, sprayed(started_at=None)),
    (Matter.POSTED_NOT, sprayed(posted_at=None)),
    (Matter.POSTED_LATE, sprayed(posted_at=dt.datetime(2026, 6, 12, 8))),
    (Matter.HARVESTED_EARLY, sprayed(but(PEST, preharvest_days=100))),
    (Matter.PREHARVEST_UNKNOWN, sprayed(but(PEST, preharvest_days=None))),
    (
        Matter.PLANT_BACK_SHORT,
        spoiled(
            stands=(at.STAND, COVER),
            crops=(at.CROP, FORAGE),
            products=(at.PRODUCT, but(PEST, plant_back_months=12)),
            puts=(*CLEAN.puts, EARLIER),
        ),
    ),
    (
        Matter.PLANT_BACK_UNKNOWN,
        spoiled(
            stands=(at.STAND, COVER),
            crops=(at.CROP, FORAGE),
            products=(at.PRODUCT, SILENT),
            puts=(*CLEAN.puts, EARLIER),
        ),
    ),
    (
        Matter.LABEL_NOT_READ,
        spoiled(flocks=(rows.Flock(1, 1, None, "sheep", day("10-01"), day("10-05")),)),
    ),
    (Matter.RESTRICTED_NO_NUMBER, sprayed(but(RESTRICTED, registration=""))),
    (Matter.RESTRICTED_NO_PRODUCT, sprayed(but(RESTRICTED, name=" "))),
    (Matter.RESTRICTED_NO_AMOUNT, sprayed(RESTRICTED, amount=0.0)),
    (Matter.RESTRICTED_NO_AREA, sprayed(RESTRICTED, area_m2=0.0)),
    (Matter.RESTRICTED_NO_PLACE, sprayed(RESTRICTED, field_id=99)),
    (Matter.RESTRICTED_NO_CROP, sprayed(RESTRICTED, target="")),
    (Matter.RESTRICTED_NO_NAME, sprayed(RESTRICTED, done_by="")),
    (Matter.RESTRICTED_LATE, sprayed(RESTRICTED, written_on=day("06-25"))),
    (
        Matter.RESTRICTED_NO_COPY,
        but(
            sprayed(RESTRICTED, done_by=HIRED.name),
            partners=(at.PARTNER, HIRED),
            documents=frozenset({("seed-lots", 1)}),
        ),
    ),
    (Matter.LICENCE_MISSING, sprayed(RESTRICTED)),
    (Matter.LICENCE_UNKNOWN, licensed(())),
    (Matter.LICENCE_NOT_YET, licensed((but(CARD, since=day("06-11")),))),
    (Matter.LICENCE_RAN_OUT, licensed((but(CARD, until=day("06-09")),))),
    (Matter.LICENCE_SOON, licensed((but(CARD, until=day("2027-02-01")),))),
    (Matter.ENGINEERED_UNSAID, lotted(engineered=("Buckwheat",), saved=True)),
    (
        Matter.ENGINEERED_SAID_LATE,
        lotted(
            engineered=("Buckwheat",),
            status="untreated",
            non_gmo="test",
            non_gmo_on=day("05-11"),
        ),
    ),
    (Matter.UNTRAINED_WORKED, employed()),
    (
        Matter.UNTRAINED_PLANNED,
        spoiled(tasks=(rows.Task(1, 1, day("06-01"), day("06-12"), "Wren"),)),
    ),
    (Matter.HARVEST_NO_LOT, covered(but(END, method="harvested"))),
    (Matter.HARVEST_NO_PLANTING, cropped(stand_id=None)),
    (
        Matter.HARVEST_NO_SEED,
        spoiled(stands=(but(at.STAND, lines=(rows.Line("Rye", False, None),)),)),
    ),
    (Matter.HARVEST_NO_STORE, spoiled(kept=(), gone=())),
    (Matter.SALE_NO_INVOICE, spoiled(gone=(but(at.GONE, invoice=""),))),
    (Matter.HARVEST_BEFORE_SOWING, cropped(on=day("05-02"))),
    (Matter.SOLD_BEFORE_HARVEST, spoiled(gone=(but(at.GONE, on=day("08-01")),))),
    (Matter.BUFFER_AS_ORGANIC, cropped(from_buffer=True)),
    (
        Matter.TRANSITION_AS_ORGANIC,
        spoiled(fields=(but(at.GROUND, status="transitional"),)),
    ),
    (
        Matter.NOT_ORGANIC_AS_ORGANIC,
        spoiled(fields=(but(at.GROUND, status="not_organic"),)),
    ),
    (
        Matter.STORED_TOGETHER,
        spoiled(
            crops=(at.CROP, but(at.CROP, id=2, code="H2", status="not_organic")),
            kept=(at.KEPT, but(at.KEPT, id=2, lot_id=2, place="cold room ")),
        ),
    ),
    (Matter.SOLD_ABOVE_STATUS, cropped(status="transitional")),
    (Matter.NOT_CLEANED, used_on("not_organic")),
    (
        Matter.NOT_TOLD,
        spoiled(mishaps=(rows.Mishap(1, 1, "drift", day("06-01"), "x", ""),)),
    ),
    (
        Matter.NOT_SETTLED,
        spoiled(mishaps=(rows.Mishap(1, 1, "flood", day("06-01"), "", ""),)),
    ),
    (
        Matter.NOBODY_NAMED,
        spoiled(entries=(but(at.ENTRY, noun="harvest-lots", done_by=""),)),
    ),
    (Matter.NOT_REVIEWED, spoiled(entries=(but(at.ENTRY, noun="trainings"),))),
    (Matter.WRITTEN_LATE, spoiled(entries=(but(at.ENTRY, written_on=day("05-13")),))),
    (Matter.MORE_SOWN, lotted(received_kg=10.0)),
    (Matter.MORE_PUT, delivered(150.0)),
    (Matter.MORE_POURED, delivered(150.0, measure="volume")),
    (Matter.MORE_GONE, cropped(mass_kg=50.0)),
    (
        Matter.SEED_FROM_COVER,
        spoiled(stands=(at.STAND, COVER), crops=(at.CROP, but(FORAGE, use="seed"))),
    ),
    (Matter.COVER_UNMEASURED, covered(lines=(rows.Line("Rye", False, 1),))),
    (Matter.ENDED_LATE, covered(but(END, on=day("05-20")))),
    (Matter.COVER_NO_DEPTH, covered(depth_m=None)),
    (Matter.COVER_NOT_INOCULATED, covered(lines=(rows.Line("Vetch", True, 1, 5.0),))),
    (Matter.COVER_NOT_ENDED, spoiled(stands=(at.STAND, COVER))),
    (Matter.SEASON_EMPTY, spoiled(entries=())),
    (Matter.NO_DOCUMENT, spoiled(documents=frozenset())),
    (Matter.NO_LABEL, spoiled(documents=frozenset({("seed-lots", 1)}))),
]


@pytest.mark.parametrize(("matter", "books"), CASES, ids=[one[0] for one in CASES])
def test_one_fault_in_clean_books_is_found(matter, books):
    assert matter in found(books)


def test_there_is_a_case_for_everything_that_can_be_found():
    elsewhere = {Matter.LAND_SOWN_EARLY, Matter.LAND_CUT_EARLY}
    assert {matter for matter, _ in CASES} | elsewhere == set(Matter)


def test_every_rule_has_a_check_and_every_check_a_rule():
    assert {one.id for one in RULES} == set(CHECKS) == set(RuleId)
