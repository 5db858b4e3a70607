"""Ground cover against handbook masses and the soil-cover index."""

import numpy as np
import pytest

from reports.calc.cover import (
    combine,
    cover_is_trusted,
    days_at_least,
    ground_cover,
    live_cover,
    mass_for_cover,
    soil_cover_days,
)
from reports.calc.residue import (
    LEAF_FACTOR,
    decomposition_days,
    share_left,
    step_running_log,
)

LB_AC = 0.45359237 / 4046.8564224  # kg/m² in one pound an acre, exact


@pytest.mark.parametrize(
    ("area", "pounds"),
    [
        (5.228, 609),
        (4.934, 645),
        (3.381, 941),
        (3.0, 1061),
        (2.7, 1179),
        (1.972, 1614),
    ],
)
def test_thirty_per_cent_cover_takes_these_pounds_an_acre(area, pounds):
    """Gregory 1982 with the cover factors of the USDA crop records."""
    mass = mass_for_cover(cover=0.30, area_m2_per_kg=area)
    assert mass / LB_AC == pytest.approx(pounds, abs=0.5)
    assert ground_cover(mass_kg_m2=mass, area_m2_per_kg=area) == pytest.approx(0.30)


@pytest.mark.parametrize(("pounds", "cover"), [(1000, 0.443), (5000, 0.9466), (0, 0)])
def test_a_thousand_pounds_of_small_grain_hide_44_per_cent(pounds, cover):
    """Gregory 1982, A 5.228 m²/kg, which is 0.000586 acre a pound."""
    found = ground_cover(mass_kg_m2=pounds * LB_AC, area_m2_per_kg=5.228)
    assert found == pytest.approx(cover, abs=5e-4)


def test_rye_and_vetch_together_hide_nearly_four_fifths():
    rye = ground_cover(mass_kg_m2=0.2, area_m2_per_kg=5.228)
    vetch = ground_cover(mass_kg_m2=0.2, area_m2_per_kg=2.7)
    assert combine(rye, vetch) == pytest.approx(0.7952, abs=5e-5)
    assert combine(rye, vetch) == pytest.approx(1 - np.exp(-0.2 * (5.228 + 2.7)))


def test_layers_of_cover_by_day_combine_day_by_day():
    live, dead = np.array([0.0, 0.5, 1.0]), np.array([0.3, 0.5, 0.3])
    assert combine(live, dead) == pytest.approx([0.3, 0.75, 1.0])


def test_two_days_half_covered_make_one_soil_cover_day():
    """Agroscope, soil cover by mean daily cover: 100, 50 and 50 % make two days."""
    assert soil_cover_days([1.0, 0.5, 0.5]) == 2.0
    assert soil_cover_days([]) == 0.0


def test_a_day_at_exactly_thirty_per_cent_counts():
    assert days_at_least([0.29, 0.30, 0.31]) == 2
    assert days_at_least([0.5, 0.8], share=0.8) == 1


def test_two_hundred_days_of_buckwheat_mulch_make_105_soil_cover_days():
    """5,000 lb/ac at bloom, 18 to 30 °C and 12 mm every third day."""
    water = np.where(np.arange(215) % 3 == 0, 12.0, 0.0)
    weather = decomposition_days(
        tmin_c=np.full(215, 18.0), tmax_c=np.full(215, 30.0), water_mm=water
    )
    left = share_left(
        stem_log=step_running_log(dd=weather.surface, k_per_dd=0.025),
        leaf_log=step_running_log(dd=weather.surface, k_per_dd=0.025 * LEAF_FACTOR),
        leaf_share=0.30,
        start=15,
        stop=np.arange(16, 216),
    )
    cover = ground_cover(mass_kg_m2=left * 5000 * LB_AC, area_m2_per_kg=5.228)
    assert soil_cover_days(cover) == pytest.approx(105.4, abs=0.05)
    assert days_at_least(cover) == 156
    assert int(np.argmax(cover < 0.80)) + 1 == 37
    assert int(np.argmax(cover < 0.30)) + 1 == 157


def test_living_cover_runs_straight_between_what_is_known():
    found = live_cover(days=np.arange(0, 50, 10), knots=[(10, 0), (30, 0.8), (40, 0.9)])
    assert found == pytest.approx([0, 0, 0.4, 0.8, 0.9])


def test_cover_is_no_longer_trusted_once_little_is_left():
    assert cover_is_trusted(share_left=[1.0, 0.40, 0.39]).tolist() == [1, 1, 0]
    assert cover_is_trusted(share_left=0.39, least=0.3)


def test_cover_outside_its_range_is_refused():
    for area in (1.89, 5.31):
        with pytest.raises(ValueError, match="area_m2_per_kg"):
            ground_cover(mass_kg_m2=0.1, area_m2_per_kg=area)
    with pytest.raises(ValueError, match="mass"):
        ground_cover(mass_kg_m2=-0.1, area_m2_per_kg=3.0)
    for cover in (-0.1, 1.0):
        with pytest.raises(ValueError, match="cover"):
            mass_for_cover(cover=cover, area_m2_per_kg=3.0)
    for daily in ([1.1], [-0.1], [np.nan]):
        with pytest.raises(ValueError, match="cover"):
            soil_cover_days(daily)
        with pytest.raises(ValueError, match="cover"):
            combine(np.array(daily), np.array([0.5]))
    with pytest.raises(ValueError, match="share"):
        days_at_least([0.5], share=1.5)
    for knots in ([], [(5, 0), (5, 0.5)], [(5, 0), (9, 1.2)]):
        with pytest.raises(ValueError, match="knots|cover"):
            live_cover(days=[1], knots=knots)
