"""Seed arithmetic against seed-law tables and Extension worked examples."""

import csv

import numpy as np
import pytest

from reports.calc.seed import (
    broadcast_rate,
    bulk_for,
    drill_catch_kg,
    mix_rates,
    pls,
    rate_for_seeds,
    seed_weight,
    seeds_per_kg,
    seeds_per_m2,
)
from tests.places import shared_data

LB = 0.45359237  # kg, exact
FT = 0.3048  # m, exact
FT2 = FT**2
ACRE = 4046.8564224  # m², international
LB_AC = LB / ACRE


@pytest.mark.parametrize(
    ("purity", "germination", "hard", "share"),
    [
        (0.85, 0.75, 0, 0.6375),
        (0.97, 0.98, 0, 0.9506),
        (0.85, 0.95, 0, 0.8075),
        (0.96, 0.80, 0, 0.768),
        (0.9875, 0.88, 0.05, 0.9184),
        (0.85, 0.72, 0, 0.61),
        (0.90, 0.60, 0, 0.54),
    ],
)
def test_pure_live_seed_is_purity_times_live_seed(purity, germination, hard, share):
    """Texas DOT; Ernst (three lots); Allamakee SWCD; Pennsylvania; Penn State."""
    found = pls(purity=purity, germination=germination, hard=hard)
    assert found == pytest.approx(share, abs=0.0025)
    assert found == pytest.approx(purity * (germination + hard))


@pytest.mark.parametrize(
    ("amount", "share", "bulk", "digit"),
    [
        (3.00, 0.9506, 3.16, 0.005),
        (0.12, 0.8075, 0.15, 0.005),
        (1.00, 0.768, 1.30, 0.005),
        (12.0, 0.35, 34.3, 0.05),
        (100.0, 0.54, 185, 0.5),
    ],
)
def test_bulk_seed_makes_up_for_what_is_not_live(amount, share, bulk, digit):
    """Ernst (three lots), Pennsylvania erosion manual, Duiker at Penn State."""
    found = bulk_for(pls_amount=amount, pls_share=share)
    assert found == pytest.approx(bulk, abs=digit)


@pytest.mark.parametrize(
    ("seeds_per_lb", "pounds"),
    [(12_000, 127), (14_000, 109), (16_000, 95), (18_000, 85), (20_000, 76)],
)
def test_thirty_five_seeds_a_square_foot_take_these_pounds_an_acre(
    seeds_per_lb, pounds
):
    """University of Kentucky wheat table; its 10,000 row is a slip and left out."""
    rate = rate_for_seeds(seeds_m2=35 / FT2, seeds_per_kg=seeds_per_lb / LB)
    assert rate / LB_AC == pytest.approx(pounds, abs=0.5)
    back = seeds_per_m2(rate_kg_m2=rate, seeds_per_kg=seeds_per_lb / LB)
    assert back * FT2 == pytest.approx(35)


@pytest.mark.parametrize(
    ("kind", "seeds_per_gram", "seeds_per_lb"),
    [
        ("Rye", 40, 18_144),
        ("Vetch hairy", 35, 15_876),
        ("Clover crimson", 330, 149_685),
        ("Clover red", 600, 272_155),
        ("Buckwheat", 45, 20_412),
        ("Pea field", 4, 1_814),
        ("Mustard white", 160, 72_575),
        ("Wheat common", 25, 11_340),
        ("Sorghum-sudangrass", 38, 17_237),
    ],
)
def test_seeds_in_a_pound_follow_from_the_federal_seeds_in_a_gram(
    kind, seeds_per_gram, seeds_per_lb
):
    """7 CFR 201.46 table 1, 2015 edition."""
    found = seeds_per_kg(count=seeds_per_gram, sample_kg=0.001) * LB
    assert found == pytest.approx(seeds_per_lb, abs=0.6), kind


def test_the_federal_table_beside_the_checkout_gives_the_same_buckwheat():
    """7 CFR 201.46 table 1, transcribed."""
    with shared_data("seed/fsa_seeds_per_gram.csv").open(newline="") as lines:
        grams = {row["kind"]: row["seeds_per_gram"] for row in csv.DictReader(lines)}
    found = seeds_per_kg(count=int(grams["Buckwheat"]), sample_kg=0.001)
    assert found == 45_000


def test_a_count_in_twenty_grams_gives_the_seeds_in_a_pound():
    """Common practice: the count in 20 g times 22.68."""
    found = seeds_per_kg(count=800, sample_kg=0.020) * LB
    assert found == pytest.approx(800 * 22.68, rel=1e-4)


def test_a_twentieth_of_an_acre_is_145_feet_behind_a_fifteen_foot_drill():
    """Southeast Farm Press: 24 rows of 7.5 in; the catch is a twentieth of the rate."""
    catch = drill_catch_kg(
        rate_kg_m2=90 * LB_AC,
        row_spacing_m=7.5 / 12 * FT,
        distance_m=145.2 * FT,
        rows=24,
    )
    assert catch / LB == pytest.approx(90 / 20)


def test_eight_rows_over_twenty_feet_catch_26_grams():
    """SoilHealthLabs, How to Calibrate a Grain Drill, part five: 100 sq ft at 25 lb/ac.

    Its 100 sq ft are one row of 0.625 ft behind a tire of 8 ft for 20 turns; eight rows
    over 20 ft are the same ground. Its 26.06 g come of 454 g to the pound.
    """
    catch = drill_catch_kg(
        rate_kg_m2=25 * LB_AC, row_spacing_m=0.625 * FT, distance_m=20 * FT, rows=8
    )
    assert catch * 1000 == pytest.approx(26.03, abs=0.01)
    assert catch * 1000 * 454 / 453.59237 == pytest.approx(26.06, abs=0.01)


@pytest.mark.parametrize(
    ("inches", "grams"), [(6, 0.78), (7, 0.91), (7.5, 0.98), (8, 1.04)]
)
def test_150_feet_of_one_row_catch_about_a_gram_a_pound(inches, grams):
    """University of Kentucky, in No-Till Farmer, 5 Easy Steps to Calibrating Your
    No-Till Drill, chart "Grams per row": grams from 150 ft of row for each lb/ac."""
    catch = drill_catch_kg(
        rate_kg_m2=LB_AC, row_spacing_m=inches / 12 * FT, distance_m=150 * FT
    )
    assert catch * 1000 == pytest.approx(grams, abs=0.006)


def test_a_bed_of_four_thousand_square_feet_takes_five_pounds():
    """50 lb/ac of pure live seed, seed of 98 % purity and 90 % germination."""
    share = pls(purity=0.98, germination=0.90)
    live = seed_weight(rate_kg_m2=50 * LB_AC, area_m2=4000 * FT2)
    found = bulk_for(pls_amount=live, pls_share=share) / LB
    assert found == pytest.approx(5.21, abs=0.005)


def test_half_a_pound_on_fifty_square_feet_is_ten_on_a_thousand():
    """Texas A&M spreader check."""
    rate = 0.5 * LB / (50 * FT2)
    assert seed_weight(rate_kg_m2=rate, area_m2=1000 * FT2) / LB == pytest.approx(10)


def test_each_kind_of_a_mix_takes_its_share_of_its_own_full_rate():
    """Structure of a Soil Conservation Service planning form."""
    rates = mix_rates(full_rates_kg_m2=[90.0, 20.0], shares=[0.5, 0.5])
    assert rates == (45.0, 10.0)


@pytest.mark.parametrize(
    ("drilled", "low", "high"), [(50, 70, 70), (80, 100, 120), (60, 90, 90)]
)
def test_printed_broadcast_rates_lie_within_the_factors(drilled, low, high):
    """Cornell buckwheat 50/70; UCSC rye and oats 80/100-120; a table's rye 60/90."""
    least = broadcast_rate(drilled_kg_m2=float(drilled), factor=1.2)
    most = broadcast_rate(drilled_kg_m2=float(drilled), factor=1.5)
    assert least <= low <= high <= most


def test_buckwheat_broadcast_is_seventy_pounds_for_fifty_drilled():
    """Cornell Buckwheat Handbook: 50 drilled, 70 broadcast."""
    assert broadcast_rate(drilled_kg_m2=50.0) == pytest.approx(70)


def test_many_beds_are_weighed_at_once():
    rates = np.array([0.005, 0.010])
    assert seed_weight(rate_kg_m2=rates, area_m2=100.0).tolist() == [0.5, 1.0]


def test_percentages_and_impossible_figures_are_refused():
    for tag in [(85, 0.75, 0), (0.85, 75, 0), (0, 0.9, 0), (0.9, 0, 0), (1, 0.9, 0.2)]:
        with pytest.raises(ValueError, match="purity|germination"):
            pls(purity=tag[0], germination=tag[1], hard=tag[2])
    for share in (0.0, 1.1):
        with pytest.raises(ValueError, match="pls_share"):
            bulk_for(pls_amount=1.0, pls_share=share)
    with pytest.raises(ValueError, match="amount"):
        bulk_for(pls_amount=-1.0, pls_share=0.9)
    with pytest.raises(ValueError, match="count"):
        seeds_per_kg(count=0, sample_kg=0.02)
    for rule, name in [(seeds_per_m2, "rate_kg_m2"), (rate_for_seeds, "seeds_m2")]:
        with pytest.raises(ValueError, match="seeds_per_kg"):
            rule(**{name: 1.0, "seeds_per_kg": 0.0})
    for rates, shares in [
        ([1.0], [0.5, 0.5]),
        ([0.0], [1.0]),
        ([1.0, 1.0], [0.5, 0.6]),
    ]:
        with pytest.raises(ValueError, match="share"):
            mix_rates(full_rates_kg_m2=rates, shares=shares)
    for factor in (1.19, 1.51):
        with pytest.raises(ValueError, match="factor"):
            broadcast_rate(drilled_kg_m2=1.0, factor=factor)
    with pytest.raises(ValueError, match="area_m2"):
        seed_weight(rate_kg_m2=1.0, area_m2=0.0)
    with pytest.raises(ValueError, match="rows"):
        drill_catch_kg(rate_kg_m2=1.0, row_spacing_m=0.2, distance_m=1.0, rows=0)
