"""Both ways to leave a stand that is still to end, what serves what, and cautions."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from reports.calc.assumptions import Assumptions
from reports.calc.nutrients import Climate
from reports.calc.season.ahead.acts import acts_in
from reports.calc.season.ahead.ending import end_choice
from reports.calc.shapes.acts import Act
from reports.calc.shapes.ledger import Group, Observation, Residue, Seen
from reports.calc.shapes.wishes import Serves, Wish
from tests.calc.ahead import TENDER, urbana_weather
from tests.calc.builders import RYE, ended, field, figure, kind, planting, summer

TODAY = dt.date(2010, 7, 20)
END = dt.date(2010, 8, 1)
HEAVY = kind(
    "cereal-rye",
    Group.GRASS,
    *[row for rows in RYE.figures.values() for row in rows],
    figure("dry_matter", 0.9, 0.9, "HT2013"),
)
# Poor in nitrogen: nothing is freed (PNW636: none below 1.5 %).
STRAW = kind(
    "oats",
    Group.GRASS,
    figure("decay_k", 0.0185, 0.0185, "UPGM"),
    figure("dry_matter", 0.4, 0.4, "HT2013"),
    figure("nitrogen_percent", 0.01, 0.01, "MCCP3-N"),
)


def both(row, weather=None, on=END):
    here = field(row)
    return end_choice(
        here,
        here.plantings[0],
        on=on,
        weather=weather,
        today=TODAY,
        assumptions=Assumptions(),
        climate=Climate.COOL,
    )


def advice(kinds, **more):
    row = planting(dt.date(2010, 6, 20), kinds=kinds)
    found = both(replace(row, **more), summer(dt.date(2008, 1, 1), 920))
    return {one.wish: (one.way, one.why) for one in found.advice}


def test_a_killed_buckwheat_never_holds_weeds_better_than_in_part():
    # CORN-HB-BEN: no control once killed; we never show better than partial.
    way, why = advice([TENDER])[Wish.WEEDS]
    assert (way, why) in {
        (Residue.ON_TOP, Serves.HOLDS_WEEDS_IN_PART),
        (None, Serves.NO_HOLD),
    }


def test_a_heavy_rye_left_on_top_holds_weeds():
    assert advice([HEAVY])[Wish.WEEDS] == (Residue.ON_TOP, Serves.HOLDS_WEEDS)


def test_worked_in_frees_more_nitrogen_soon():
    found = advice([TENDER])[Wish.NITROGEN_SOON]
    assert found == (Residue.WORKED_IN, Serves.MORE_NITROGEN)


def test_straw_worked_in_may_tie_nitrogen_up():
    found = advice([STRAW])[Wish.NITROGEN_SOON]
    assert found == (Residue.ON_TOP, Serves.NITROGEN_TIED_UP)


def test_transplants_go_sooner_into_mulch():
    found = advice([TENDER], next_crop_transplanted=True)[Wish.PLANTING_SOON]
    assert found == (Residue.ON_TOP, Serves.PLANTS_SOONER)


def test_residue_on_top_keeps_the_soil():
    assert advice([TENDER])[Wish.SOIL_KEPT] == (Residue.ON_TOP, Serves.COVERS_SOIL)


def test_neither_way_is_marked_as_taken():
    found = both(planting(dt.date(2010, 6, 20), kinds=[TENDER]))
    assert not found.choice.on_top.taken and not found.choice.worked_in.taken


@pytest.mark.parametrize(
    "row",
    [
        planting(dt.date(2010, 6, 20), ended(dt.date(2010, 7, 10)), kinds=[TENDER]),
        planting(dt.date(2010, 9, 1), kinds=[TENDER]),
    ],
)
def test_nothing_is_compared_where_nothing_would_stand(row):
    assert both(row) is None


def test_a_cut_that_grew_back_still_stands():
    cut = ended(dt.date(2010, 7, 10), regrows=True)
    assert both(planting(dt.date(2010, 6, 1), cut, kinds=[TENDER])) is not None


@pytest.mark.shared_data
def test_the_spread_is_of_the_weather_of_every_year():
    found = both(planting(dt.date(2010, 6, 20), kinds=[TENDER]), urbana_weather())
    assert found.years >= 25
    for point in found.points:
        assert point.on_top_kg_m2.low <= point.on_top_middle_kg_m2
        assert point.on_top_middle_kg_m2 <= point.on_top_kg_m2.high
        assert point.worked_in_middle_kg_m2 <= point.on_top_middle_kg_m2 + 1e-9
    masses = [point.on_top_middle_kg_m2 for point in found.points]
    assert masses == sorted(masses, reverse=True)
    assert np.isclose(masses[0], found.choice.mass_likely_kg_m2)


def test_without_weather_no_spread_is_told():
    found = both(planting(dt.date(2010, 6, 20), kinds=[TENDER]))
    assert found.points == () and found.years == 0


# --- Cautions at the moment of the act ----------------------------------------

STAND = planting(
    dt.date(2010, 6, 20), kinds=[replace(TENDER, cautions=("fagopyrism",))]
)


@pytest.mark.parametrize(
    ("chosen", "act"),
    [
        ({"ending": "grazed"}, Act.GRAZE),
        ({"residue": "grazed"}, Act.GRAZE),
        ({"residue": "removed"}, Act.FEED),
        ({"ending": "sprayed"}, Act.SPRAY),
        ({"ending": "burned"}, Act.BURN),
        ({"ending": "tilled_in"}, Act.MACHINE),
        ({"residue": "worked_in"}, Act.MACHINE),
        ({"manure": True}, Act.MANURE),
    ],
)
def test_each_dangerous_choice_brings_its_caution(chosen, act):
    assert [row.act for row in acts_in(**chosen)] == [act]


def test_cutting_by_hand_before_seed_brings_none():
    assert list(acts_in(ending="hand_cut", residue="on_top", planting=STAND)) == []


def test_grazing_buckwheat_names_what_buckwheat_does():
    (row,) = acts_in(ending="grazed", planting=STAND)
    assert row.kinds == ("fagopyrism",)


def test_cutting_after_seed_has_set_is_warned_of():
    seen = Observation(dt.date(2010, 8, 1), Seen.SEED_SET)
    row = replace(STAND, observations=(seen,))
    later = dt.date(2010, 8, 2)
    assert [one.act for one in acts_in(planting=row, on=later)] == [Act.AFTER_SEED]
    earlier = dt.date(2010, 7, 30)
    assert list(acts_in(planting=row, on=earlier)) == []


def test_seed_foretold_warns_as_seed_seen_does():
    on = dt.date(2010, 8, 10)
    found = acts_in(planting=STAND, seed_from=on, on=on)
    assert [one.act for one in found] == [Act.AFTER_SEED]


def held_in(found):
    rows = found.points
    return [row.holds_partly for row in rows], [row.holds_moderately for row in rows]


@pytest.mark.shared_data
def test_the_hold_on_weeds_fades_over_the_years_and_is_never_more_than_in_part():
    found = both(planting(dt.date(2010, 6, 20), kinds=[TENDER]), urbana_weather())
    partly, fairly = held_in(found)
    assert partly == sorted(partly, reverse=True)
    assert set(fairly) == {0.0}


@pytest.mark.shared_data
def test_a_heavy_rye_holds_weeds_in_every_year_at_first():
    row = planting(dt.date(2009, 9, 20), kinds=[HEAVY])
    partly, fairly = held_in(both(row, urbana_weather()))
    assert fairly[0] == 1.0 and fairly == sorted(fairly, reverse=True)
    assert all(one >= other for one, other in zip(partly, fairly, strict=True))
