"""How much seed for a piece of ground, through the page and the workshop."""

import datetime as dt
import re

import pytest
from django.urls import reverse

from reports.calc.assumptions import Assumptions
from reports.calc.season.how_much import how_much
from reports.calc.shapes.how_much import Asked, Plot, ToldBy
from reports.calc.shapes.ledger import Group, Method
from reports.calc.shapes.season import Verdict
from tests.calc.builders import ACRE_M2, BUCKWHEAT, LB_AC, figure, kind
from tests.factories import FieldFactory, KindFigureFactory, SeedLotFactory

LB, FT2 = 0.45359237, 0.3048**2
JUNE = dt.date(2026, 6, 10)
RYE = kind(
    "rye",
    Group.GRASS,
    figure("seeding_rate_drilled", 60 * LB_AC, 120 * LB_AC, "MCCP3-GP"),
    figure("seeds_per_gram", 40_000, 40_000, "CFR201.46"),
)
ACRE = Plot(ACRE_M2, Method.DRILLED, JUNE)


def worked_out(*rows, plot=ACRE, told_by=ToldBy.RATE, **more):
    return how_much(rows, plot, told_by=told_by, assumptions=Assumptions(), **more)


def test_a_bed_of_four_thousand_square_feet_takes_five_pounds_of_98_90_seed():
    """50 lb/ac of pure live seed, 98 % purity and 90 % germination: 5.21 lb."""
    bed = Plot(4000 * FT2, Method.DRILLED, JUNE)
    told = worked_out(Asked(BUCKWHEAT, None, 0.98 * 0.9), plot=bed)
    assert told.bulk_kg / LB == pytest.approx(5.21, abs=0.005)


def test_small_ground_takes_a_pound_on_five_hundred_square_feet_by_common_practice():
    common = kind(
        "buckwheat",
        Group.BROADLEAF,
        figure("seeding_rate_small", LB / (500 * FT2), LB / (500 * FT2), "COMMON"),
    )
    bed = Plot(500 * FT2, Method.BROADCAST, JUNE)
    (line,) = worked_out(Asked(common, None, None), plot=bed).lines
    assert line.pls_kg / LB == pytest.approx(1.0)
    assert line.bulk_kg is None


def test_thirty_five_seeds_a_square_foot_are_84_pounds_of_rye():
    """35 x 43,560 / 18,144 seeds a pound (7 CFR 201.46, 40 seeds a gram) = 84.0."""
    told = worked_out(Asked(RYE, 35 / FT2, 1.0), told_by=ToldBy.SEEDS)
    (line,) = told.lines
    assert line.rate_kg_m2 / LB_AC == pytest.approx(84.03, abs=0.01)
    assert line.seeds_m2 * FT2 == pytest.approx(35)
    assert line.verdict is Verdict.WITHIN


@pytest.mark.parametrize(
    ("pounds", "verdict"),
    [(50, Verdict.BELOW), (90, Verdict.WITHIN), (140, Verdict.ABOVE)],
)
def test_a_rate_outside_the_range_in_print_is_marked(pounds, verdict):
    (line,) = worked_out(Asked(RYE, pounds * LB_AC, None)).lines
    assert line.verdict is verdict


def test_a_mix_by_share_takes_its_share_of_each_full_rate():
    """90 and 50 lb/ac at 60 % and 40 %: 54 and 20 lb."""
    told = worked_out(
        Asked(RYE, 0.6, 1.0), Asked(BUCKWHEAT, 0.4, 1.0), told_by=ToldBy.SHARE
    )
    assert [line.pls_kg / LB for line in told.lines] == pytest.approx([54, 20])
    assert told.share == pytest.approx(1.0)
    assert told.lines[0].verdict is None


def test_a_mix_by_weight_keeps_the_rate_of_the_whole():
    told = worked_out(
        Asked(RYE, 3.0, 0.5),
        Asked(BUCKWHEAT, 1.0, 1.0),
        told_by=ToldBy.WEIGHT,
        mix_kg_m2=80 * LB_AC,
        overage=0.1,
        hopper_kg=100 * LB,
    )
    assert [line.pls_kg / LB for line in told.lines] == pytest.approx([66, 22])
    assert told.bulk_kg / LB == pytest.approx(132 + 22)
    assert (told.fills, told.fill_kg / LB) == (2, pytest.approx(77))


def test_a_kind_without_a_rate_takes_what_is_told_and_no_guess():
    bare = kind("teff", Group.GRASS)
    (line,) = worked_out(Asked(bare, None, 0.9)).lines
    assert (line.rate_kg_m2, line.pls_kg, line.verdict) == (
        None,
        None,
        Verdict.NO_WEIGHT,
    )
    (line,) = worked_out(Asked(bare, 10 * LB_AC, 0.9)).lines
    assert line.pls_kg / LB == pytest.approx(10)
    assert line.verdict is Verdict.NO_RANGE


def asked(world, client, **told):
    url = reverse("reports:how-much", args=[world.farm.slug])
    sent = {"method": "drilled", "on": "2026-06-10", "told_by": "rate", "overage": "0"}
    return client.get(url, sent | told)


@pytest.mark.django_db
def test_the_page_weighs_a_field_less_its_headlands_from_a_lot(world, owner_client):
    kind = world.ours.kind
    KindFigureFactory(kind=kind, fifty_pounds_drilled=True)
    lot = SeedLotFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=kind,
        purity_share=1.0,
        germination_share=0.5,
    )
    told = {"length_m": "300 ft", "width_m": "145.2 ft", "headland_m": "30 ft"}
    answer = asked(world, owner_client, lot0=lot.pk, **told).content.decode()
    # 240 × 145.2 ft = 0.8 ac; 40 lb of pure live seed; 80 lb out of the bag.
    assert re.search(r"For 0\.8\s+ac", answer)
    assert re.search(r"80\s+lb <span", answer)


@pytest.mark.django_db
def test_an_untested_lot_or_none_says_what_is_missing(world, owner_client):
    field = FieldFactory(farm=world.farm)
    told = {"field": field.pk, "kind0": world.ours.kind.pk, "told0": "50 lb/ac"}
    answer = asked(world, owner_client, **told).content.decode()
    assert "pick a tested lot" in answer


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("told", "box"),
    [
        ({"kind0": "ours"}, "field"),
        ({"area_m2": "1 ac"}, "kind0"),
        ({"area_m2": "1 ac", "kind0": "ours", "told0": "lots"}, "told0"),
        ({"area_m2": "1 ac", "headland_m": "9 ft", "kind0": "ours"}, "headland_m"),
        ({"area_m2": "1 ac", "kind0": "ours", "told_by": "weight"}, "mix"),
    ],
)
def test_what_cannot_be_worked_out_is_refused_in_place(world, owner_client, told, box):
    sent = {
        name: world.ours.kind.pk if value == "ours" else value
        for name, value in told.items()
    }
    answer = asked(world, owner_client, **sent)
    assert box in answer.context["form"].errors
    assert "answer" not in answer.context
