"""Biomass from frames against Extension worked examples."""

import numpy as np
import pytest

from reports.calc.biomass import dry_share, stand_biomass

LB = 0.45359237  # kg, exact
FT2 = 0.3048**2  # m², exact
LB_AC = LB / 4046.8564224  # kg/m², exact


def test_two_frames_of_two_by_two_feet_make_6534_pounds_an_acre():
    """NC State handout: 1.2 lb dry from 8 ft²."""
    found = stand_biomass(
        wet_kg=[0.6 * LB, 0.6 * LB], area_m2=[4 * FT2, 4 * FT2], dry_share=1.0
    )
    assert found.mean_kg_m2 / LB_AC == pytest.approx(6534)
    assert found.se_kg_m2 == 0
    assert not found.enough


def test_twenty_grams_a_square_foot_are_two_thousand_pounds_an_acre():
    """Published as 2,000 lb/ac for 20.8 g/ft²; exactly 1,997."""
    found = stand_biomass(wet_kg=[0.0208], area_m2=[FT2], dry_share=1.0)
    assert found.mean_kg_m2 / LB_AC == pytest.approx(1997, abs=0.5)
    assert found.se_kg_m2 is None


def test_six_pounds_wet_at_18_per_cent_from_four_frames_are_2940_pounds_an_acre():
    """Oregon State sampling sheet's frames: four of 2 by 2 ft."""
    share = dry_share(wet_kg=1.0 * LB, dry_kg=0.18 * LB)
    found = stand_biomass(wet_kg=[1.5 * LB] * 4, area_m2=[4 * FT2] * 4, dry_share=share)
    assert found.mean_kg_m2 / LB_AC == pytest.approx(2940, abs=0.5)
    assert found.enough


def test_the_standard_error_is_that_of_the_frames():
    wet = [1.0, 1.2, 0.8, 1.4]
    found = stand_biomass(wet_kg=wet, area_m2=[0.5] * 4, dry_share=0.2)
    each = np.array(wet) * 0.2 / 0.5
    assert found.mean_kg_m2 == pytest.approx(each.mean())
    assert found.se_kg_m2 == pytest.approx(each.std(ddof=1) / 2)


def test_a_larger_frame_weighs_more_in_the_mean():
    found = stand_biomass(wet_kg=[1.0, 1.0], area_m2=[1.0, 3.0], dry_share=1.0)
    assert found.mean_kg_m2 == pytest.approx(0.5)


def test_weights_that_cannot_be_are_refused():
    for wet, dry in [(1.0, 1.1), (1.0, 0.0)]:
        with pytest.raises(ValueError, match="dry_kg"):
            dry_share(wet_kg=wet, dry_kg=dry)
    for wet, area in [([], []), ([1.0], [1.0, 1.0])]:
        with pytest.raises(ValueError, match="frame"):
            stand_biomass(wet_kg=wet, area_m2=area, dry_share=0.2)
    for wet, area in [([-1.0], [1.0]), ([1.0], [0.0])]:
        with pytest.raises(ValueError, match="weight"):
            stand_biomass(wet_kg=wet, area_m2=area, dry_share=0.2)
    for share in (0.0, 18.0):
        with pytest.raises(ValueError, match="dry_share"):
            stand_biomass(wet_kg=[1.0], area_m2=[1.0], dry_share=share)
