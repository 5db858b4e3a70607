"""Relative erosion against the surface-cover term and a Nebraska bulletin."""

import numpy as np
import pytest

from reports.calc.erosion import canopy_factor, surface_cover_factor


@pytest.mark.parametrize(
    ("cover", "loss"),
    [
        (0.0, 1),
        (0.20, 0.4966),
        (0.30, 0.3499),
        (0.50, 0.1738),
        (0.80, 0.0608),
        (0.95, 0.0360),
    ],
)
def test_soil_loss_falls_with_residue_cover(cover, loss):
    """RUSLE surface-cover term, 0.035 for each per cent of cover."""
    assert surface_cover_factor(cover=cover) == pytest.approx(loss, abs=5e-5)


def test_a_fifth_covered_about_halves_erosion():
    """University of Nebraska G-20, 1990."""
    assert surface_cover_factor(cover=0.20) == pytest.approx(0.5, abs=0.05)


def test_leaves_shelter_less_the_higher_drops_fall():
    """RUSLE canopy term: 1 - cover x exp(-0.328 H)."""
    found = canopy_factor(cover=np.array([0.0, 0.5, 1.0]), fall_height_m=0.0)
    assert found == pytest.approx([1, 0.5, 0])
    low, high = (canopy_factor(cover=0.8, fall_height_m=m) for m in (0.3, 1.5))
    assert low < high < 1
    assert high == pytest.approx(1 - 0.8 * np.exp(-0.328 * 1.5))


def test_cover_in_per_cent_and_tall_trees_are_refused():
    for cover in (-0.1, 20.0, np.nan):
        with pytest.raises(ValueError, match="cover"):
            surface_cover_factor(cover=cover)
        with pytest.raises(ValueError, match="cover"):
            canopy_factor(cover=cover, fall_height_m=0.5)
    for height in (-0.1, 5.1):
        with pytest.raises(ValueError, match="fall_height_m"):
            canopy_factor(cover=0.5, fall_height_m=height)
