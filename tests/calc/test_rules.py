"""The checks: worked dates, and a case for everything they can find."""

import datetime as dt

import pytest

from reports.calc.rules import CHECKS, RULES, dates, findings, rules_for, tallies
from reports.calc.shapes import books as rows
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter, RuleId, RuleSet, Severity, Tally
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, rule, spoiled

EVERY = tuple(RULES)
US = RuleSet.ORGANIC_US


def found(books, rules=EVERY):
    return {one.found.matter for one in findings(books, rules)}


# Worked dates, counted from the texts that the rules name.


@pytest.mark.parametrize(
    ("last", "clean"),
    [("2022-10-15", "2025-10-15"), ("2024-02-29", "2027-03-01")],
)
def test_land_is_clean_three_years_after_the_last_prohibited_substance(last, clean):
    """7 CFR 205.202(b): three years immediately before harvest."""
    assert dates.land_clean_from(day(last), months=36) == day(clean)


@pytest.mark.parametrize(
    ("need", "earliest"), [(120, "2025-06-29"), (90, "2025-05-30")]
)
def test_manure_worked_in_on_1_march_lets_harvest_begin(need, earliest):
    """7 CFR 205.203(c)(1): 120 days in contact with the soil, 90 without."""
    worked = day("2025-03-01")
    assert dates.earliest_harvest(worked, days=need) == day(earliest)
    assert dates.earliest_harvest(None, days=need) is None


def test_a_test_of_september_holds_to_the_last_of_february_or_two_years_sealed():
    """7 CFR 201.30a: five calendar months after the month of the test."""
    tested = day("2025-09-01")
    assert dates.last_ship_day(tested, months=5) == day("2026-02-28")
    assert dates.last_ship_day(tested, months=24) == day("2027-09-30")


def test_a_spray_finished_at_two_with_twelve_hours_is_posted_and_taken_down():
    """40 CFR 170.311(b): 24 hours, 30 days past the interval, kept 2 years."""
    ended = dt.datetime(2026, 5, 1, 14)
    assert dates.post_by(ended, hours=24) == dt.datetime(2026, 5, 2, 14)
    first = dt.datetime(2026, 5, 2, 7)
    assert dates.post_by(ended, hours=24, first_entry=first) == first
    assert dates.reentry_over(ended, hours=12) == dt.datetime(2026, 5, 2, 2)
    down = dates.posted_until(ended, reentry_hours=12, days=30)
    assert down == dt.datetime(2026, 6, 1, 2)
    kept = dates.posting_kept_until(ended, reentry_hours=12, years=2)
    assert kept == day("2028-05-02")


def test_restricted_use_of_1_may_is_written_down_by_the_15th():
    """7 CFR 110.3: 14 days; a contractor's copy within 30."""
    assert dates.recorded_by(day("05-01"), days=14) == day("05-15")
    assert dates.recorded_by(day("05-01"), days=30) == day("05-31")


@pytest.mark.parametrize(
    ("zone", "by"), [(1, "04-15"), (2, "05-05"), (3, "05-20"), (4, "05-25")]
)
def test_a_cover_ends_before_a_crop_of_20_may_by_the_guidelines_zone(zone, by):
    """NRCS cover crop termination guidelines, 2013 and 2014."""
    timing = rule(RuleId.TERMINATION_DAY)
    before = round(timing[f"days_{zone}"])
    assert dates.terminate_by(day("05-20"), days_before=before) == day(by)


def test_a_record_is_kept_five_years_after_its_latest_day():
    """7 CFR 205.103(b), counted from the later of its days."""
    told = day("2025-04-02"), day("2026-01-10"), day("2025-12-31")
    assert dates.kept_until(*told, years=5) == day("2031-01-10")


def test_rye_over_new_year_is_told_in_both_seasons():
    rye = day("2025-09-20"), day("2026-05-05")
    for year, told in ((2024, False), (2025, True), (2026, True), (2027, False)):
        season = {"first": dt.date(year, 1, 1), "last": dt.date(year, 12, 31)}
        assert dates.in_season(*rye, **season) is told


# What the checks find: clean books, then one fault a case.


def test_clean_books_show_nothing():
    assert findings(CLEAN, EVERY) == ()


PEST = at.SPRAY
MANURE = rows.Product(3, "Cow manure", "manure", approval="IPC 14")
COMPOST = rows.Product(4, "Heap", "compost", approval="IPC 15")
COVER = but(at.STAND, id=2, purpose="cover", sown_on=day("03-20"))
HOT = tuple(
    (day("04-01") + dt.timedelta(days=n), 60.0, n in {2, 4, 6, 8, 10})
    for n in range(16)
)
HEAP = rows.Heap(1, "Heap", "windrow", day("04-01"), 30.0, HOT)
END = rows.EndOf(1, 2, day("05-05"), "mown", "on_top")


def manured(**told):
    put = but(at.PUT, id=3, product_id=3, **told)
    return spoiled(products=(*CLEAN.products, MANURE), puts=(*CLEAN.puts, put))


def heaped(heap, **told):
    put = but(at.PUT, id=4, product_id=4, product_lot="Heap", **told)
    return spoiled(
        products=(*CLEAN.products, COMPOST), puts=(*CLEAN.puts, put), heaps=(heap,)
    )


def sprayed(product=PEST, **told):
    return spoiled(
        products=(at.PRODUCT, product), puts=(at.PUT, but(at.SPRAYED, **told))
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


def used_on(status, cleaned=()):
    before = rows.Ground(2, "South", 1.0, status, day("2015-01-01"))
    drilled = but(at.PUT, id=9, field_id=2, equipment="drill", on=day("04-01"))
    return spoiled(
        fields=(at.GROUND, before),
        puts=(but(at.PUT, equipment="Drill"), drilled, at.SPRAYED),
        cleaned=cleaned,
    )


RESTRICTED = but(PEST, restricted=True)
FORAGE = but(at.CROP, id=2, stand_id=2, use="feed", on=day("06-20"))
SILENT = but(PEST, plant_back_months=None)
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
    (Matter.MANURE_ON_TOP, manured(worked_in_on=None)),
    (Matter.MANURE_SOON, manured(worked_in_on=day("06-01"))),
    (
        Matter.GRAZED_SOON,
        spoiled(
            flocks=(rows.Flock(1, 1, None, "sheep", day("08-01"), day("08-05"), True),)
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
    (Matter.RESTRICTED_NO_CROP, sprayed(RESTRICTED, target="")),
    (Matter.RESTRICTED_NO_NAME, sprayed(RESTRICTED, done_by="")),
    (Matter.RESTRICTED_LATE, sprayed(RESTRICTED, written_on=day("06-25"))),
    (Matter.LICENCE_MISSING, sprayed(RESTRICTED)),
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
    (Matter.MORE_GONE, cropped(mass_kg=50.0)),
    (
        Matter.SEED_FROM_COVER,
        spoiled(stands=(at.STAND, COVER), crops=(at.CROP, but(FORAGE, use="seed"))),
    ),
    (Matter.COVER_UNMEASURED, covered(lines=(rows.Line("Rye", False, 1),))),
    (Matter.ENDED_LATE, covered(but(END, on=day("05-20")))),
    (Matter.SEASON_EMPTY, spoiled(entries=())),
    (Matter.NO_DOCUMENT, spoiled(documents=frozenset())),
]


@pytest.mark.parametrize(("matter", "books"), CASES, ids=[one[0] for one in CASES])
def test_one_fault_in_clean_books_is_found(matter, books):
    assert matter in found(books)


def test_there_is_a_case_for_everything_that_can_be_found():
    by_sowing = {Matter.LAND_SOWN_EARLY}
    assert {matter for matter, _ in CASES} | by_sowing == set(Matter)


def test_every_rule_has_a_check_and_every_check_a_rule():
    assert {one.id for one in RULES} == set(CHECKS) == set(RuleId)


@pytest.mark.parametrize(
    ("cut", "passes"), [("2025-03-09", False), ("2025-03-10", True)]
)
def test_lettuce_cut_119_days_after_manure_under_rye_fails_and_120_passes(cut, passes):
    """7 CFR 205.203(c)(1)(ii): worked in on 10 November 2024."""
    put = but(
        at.PUT, id=3, product_id=3, on=day("2024-11-09"), worked_in_on=day("2024-11-10")
    )
    books = spoiled(
        season=Span(day("2025-01-01"), day("2025-12-31")),
        products=(*CLEAN.products, MANURE),
        puts=(put,),
        crops=(but(at.CROP, on=day(cut), stand_id=None),),
    )
    assert (Matter.MANURE_SOON in found(books, [rule(RuleId.MANURE)])) is not passes


@pytest.mark.parametrize(
    ("touches", "found_"), [(True, True), (None, True), (False, False)]
)
def test_a_crop_whose_contact_is_not_known_waits_the_longer_interval(touches, found_):
    put = but(at.PUT, id=3, product_id=3, worked_in_on=day("05-20"))
    books = spoiled(
        products=(*CLEAN.products, MANURE),
        puts=(put,),
        crops=(but(at.CROP, touches_soil=touches),),
    )
    assert (Matter.MANURE_SOON in found(books)) is found_


@pytest.mark.parametrize(
    ("sown", "eligible"), [("2024-10-14", False), ("2024-10-15", True)]
)
def test_eu_ground_clean_since_october_2022_is_sown_from_october_2024(sown, eligible):
    """Regulation (EU) 2018/848, Annex II: 24 months before sowing."""
    last = day("2022-10-15")
    books = spoiled(
        statements=(rows.Statement(1, 1, day("2020-01-01"), last, "2,4-D"),),
        stands=(but(at.STAND, sown_on=day(sown)),),
    )
    matters = found(books, [rule(RuleId.LAND_CLOCK, RuleSet.ORGANIC_EU)])
    assert (Matter.LAND_SOWN_EARLY not in matters) is eligible


def test_a_bed_waits_for_what_was_used_on_the_whole_field_but_not_on_its_sister():
    whole = but(at.GROUND, id=5, name="Whole")
    bed, sister = (but(at.GROUND, id=n, name=str(n), parent_id=5) for n in (1, 6))
    used = day("2020-01-01"), day("2025-01-01"), "2,4-D"
    clock = [rule(RuleId.LAND_CLOCK)]
    for place, waits in ((5, True), (6, False), (1, True)):
        told = (rows.Statement(1, place, *used),)
        books = spoiled(fields=(whole, bed, sister), statements=told)
        assert (Matter.LAND_NOT_YET in found(books, clock)) is waits


def test_a_clean_out_in_between_settles_the_use_before():
    cleaned = (rows.Cleaned(1, "drill", day("04-15")),)
    assert Matter.NOT_CLEANED not in found(used_on("not_organic", cleaned))
    assert Matter.NOT_CLEANED not in found(used_on("organic"))


@pytest.mark.parametrize(
    ("hours", "severity"),
    [(8, None), (12, None), (20, Severity.WARN), (48, Severity.STOP)],
)
def test_work_the_day_after_a_spray_weighs_by_how_much_of_it_lies_inside(
    hours, severity
):
    books = spoiled(
        products=(at.PRODUCT, but(PEST, reentry_hours=hours)),
        stands=(at.STAND, but(COVER, sown_on=day("06-11"))),
    )
    told = findings(books, [rule(RuleId.REENTRY)])
    assert [one.severity for one in told] == ([severity] if severity else [])


def test_a_mix_that_is_not_organic_needs_a_search_for_each_of_its_kinds():
    matter = Matter.SEED_NO_SEARCH
    parts = (rows.Part("Buckwheat", 0.9), rows.Part("Oats", 0.8))
    mix = but(at.LOT, number="MIX", status="untreated", purity=None, parts=parts)

    def unsearched(*searches):
        told = findings(spoiled(lots=(mix,), searches=searches), EVERY)
        made = [one.found for one in told]
        return [one.values["seed"] for one in made if one.matter == matter]

    asked = tuple((name, day("02-01")) for name in "ABC")
    search = rows.Search(1, None, "Buckwheat", day("02-03"), "early", "quantity", asked)
    assert unsearched() == ["Buckwheat + Oats MIX"]
    assert unsearched(search) == ["Oats MIX"]
    assert unsearched(search, but(search, id=2, kind="Oats")) == []


def test_the_tag_of_a_mix_is_told_when_every_kind_of_it_was_tested():
    told = but(at.LOT, parts=(rows.Part("Buckwheat", 0.9), rows.Part("Oats")))
    assert Matter.TAG_SILENT in found(spoiled(lots=(told,)))
    whole = but(told, purity=None, parts=(rows.Part("Oats", 0.8),))
    assert Matter.TAG_SILENT not in found(spoiled(lots=(whole,)))


def test_a_certifiers_number_takes_the_place_of_the_rules_within_its_range():
    key = (US, RuleId.SEED_SEARCH, "sources")
    mended = {one.id: one for one in rules_for([US], {key: 5})}[RuleId.SEED_SEARCH]
    assert mended["sources"] == 5
    assert [one.key for one in mended.params if one.overruled] == ["sources"]
    kept = {one.id: one for one in rules_for([US], {key: 500})}[RuleId.SEED_SEARCH]
    assert kept["sources"] == 3
    with pytest.raises(ValueError, match="sources"):
        mended.overruled("sources", 500)
    with pytest.raises(ValueError, match="nothing"):
        mended.overruled("nothing", 1)


def test_a_farm_is_only_held_to_the_sets_it_switched_on():
    sets = {one.set for one in rules_for([RuleSet.FOOD], {})}
    assert sets == {RuleSet.FOOD, RuleSet.BOOKS, RuleSet.LABEL}


def test_a_rule_is_put_to_a_record_by_the_day_of_the_record():
    supplier = rule(RuleId.SUPPLIER)
    assert supplier.covers(day("2024-03-19"))
    assert not supplier.covers(day("2024-03-18"))


def test_findings_come_heaviest_first_and_each_once():
    books = spoiled(
        lots=(but(at.LOT, certificate="", purity=None),),
        gone=(but(at.GONE, invoice=""),),
    )
    told = findings(books, EVERY)
    order = [list(Severity).index(one.severity) for one in told]
    assert order == sorted(order)
    assert len({one.key for one in told}) == len(told)


def test_counts_are_told_in_whole_numbers():
    told = {one.tally: (one.have, one.of) for one in tallies(CLEAN)}
    assert told[Tally.PLANTINGS_LOT] == (1, 1)
    assert told[Tally.HARVESTS_CHAIN] == (1, 1)
    spoilt = spoiled(stands=(but(at.STAND, lines=()),))
    told = {one.tally: (one.have, one.of) for one in tallies(spoilt)}
    assert told[Tally.PLANTINGS_LOT] == (0, 1)


def test_a_farm_with_no_records_at_all_is_told_so_and_nothing_breaks():
    empty = type(CLEAN)(season=at.SEASON, today=at.TODAY)
    assert found(empty) == {Matter.SEASON_EMPTY}
    assert tallies(empty) == ()


def test_every_number_of_a_rule_lies_in_its_own_range():
    for one in RULES:
        for param in one.params:
            assert param.low <= param.value <= param.high, (one.id, param.key)
