"""The story of the demonstration farm against its real weather."""

from farm import units
from records.reading.demo import plain
from tests.records.demo.story import (
    FIELDS,
    IN_THE_GROUND,
    KINDS,
    WEATHER,
    called,
    day,
    for_good,
    kinds,
    live,
    spans,
)

FREEZING_C = 0.0


HARD_FREEZE_C = units.c_from_f(28)


# A hard freeze for what 28 °F does not kill: common practice.
DEEP_FREEZE_C = units.c_from_f(12)


# Ground is too wet to sow on such a day: common practice.
HEAVY_RAIN_MM = 5.0


# Killed at 32 °F: the catalogue's own choice for buckwheat and cowpea.
TENDER = {"buckwheat", "cowpea"}


WARM_COVERS = {"buckwheat", "sorghum-sudangrass", "cowpea"}


SOWN = ("broadcast", "drilled")


def under_a_roof(planting):
    return FIELDS[planting["field"]]["kind"] == "tunnel"


def test_frost_killed_what_the_nights_could_kill():
    killed = [
        (row, day(end["on"]))
        for row in IN_THE_GROUND
        for end in for_good(row)
        if end["how"] == "frost killed"
    ]
    assert len(killed) >= 12
    for row, on in killed:
        night_c = WEATHER[on].tmin_c
        if set(kinds(row)) <= TENDER:
            assert night_c <= FREEZING_C, called(row)
        elif "sorghum-sudangrass" in kinds(row):
            assert night_c <= HARD_FREEZE_C, called(row)
        else:
            assert night_c <= DEEP_FREEZE_C, called(row)


def test_no_tender_stand_outlives_a_night_that_kills_by_more_than_one():
    for row, sown, over in spans(IN_THE_GROUND):
        if set(kinds(row)) <= TENDER and not under_a_roof(row):
            up = [day(s["on"]) for s in row.get("seen", []) if s["what"] == "emerged"]
            nights = [
                on
                for on, told in WEATHER.items()
                if max([sown, *up]) <= on < over and told.tmin_c <= FREEZING_C
            ]
            assert len(nights) <= 1, called(row)


def test_warm_covers_wait_for_the_last_spring_frost_unless_a_risk_is_told():
    risked = []
    for row in IN_THE_GROUND:
        sown = day(row["sown"])
        warm = WARM_COVERS & set(kinds(row)) and not under_a_roof(row)
        cold = [
            on
            for on, told in WEATHER.items()
            if on.year == sown.year and on.month <= 6 and told.tmin_c <= FREEZING_C
        ]
        if warm and sown <= max(cold):
            risked.append(row)
    assert len(risked) == 1
    assert "At risk and we know it" in risked[0]["notes"]


def test_nothing_is_sown_outside_on_a_day_of_heavy_rain():
    wet = [
        called(row)
        for row in IN_THE_GROUND
        if row["how"] != "self sown"
        and not under_a_roof(row)
        and WEATHER[day(row["sown"])].rain_mm > HEAVY_RAIN_MM
    ]
    assert wet == []


def test_a_cut_that_grows_back_comes_before_a_quarter_is_in_bloom():
    # 25 % of bloom is the catalogue's regrowth limit for buckwheat (common practice).
    cuts = [
        end
        for row in IN_THE_GROUND
        if "buckwheat" in kinds(row)
        for end in live(row.get("ended", []))
        if end.get("outcome") == "regrows"
    ]
    assert len(cuts) >= 6
    assert all(plain.share(cut.get("bloom", "0 %")) < 0.25 for cut in cuts)


def test_buckwheat_first_flowers_within_the_handbooks_days():
    # OMAFRA prints 28 to 42 days, JEFF-BW about 21 (sources in fixtures/crops.json).
    figures = [
        figure
        for figure in KINDS["buckwheat"]["figures"]
        if figure["attribute"] == "first_flower_days" and figure["unit"] == "days"
    ]
    low = min(figure["low"] for figure in figures)
    high = max(figure["high"] for figure in figures)
    flowered = [
        (day(seen["on"]) - day(row["sown"])).days
        for row in IN_THE_GROUND
        if "buckwheat" in kinds(row) and row["how"] in SOWN
        for seen in live(row.get("seen", []))
        if seen["what"] == "first flower"
    ]
    assert len(flowered) >= 30
    assert low <= min(flowered) and max(flowered) <= high
