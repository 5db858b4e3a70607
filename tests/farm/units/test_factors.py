"""Factors of units, against published ones."""

import pytest

from farm import units
from farm.units import factors
from tests.farm.units.factors import (
    EXACT,
)

# GNU units 2.22 (`units -t -d 15`), an implementation independent of Python. Pound,
# gallon and bushel agree with NIST SP 811 (2008) appendix B; acre with 85 FR 62698.
GNU_UNITS = [
    (units.M2_PER_ACRE, 4046.8564224),
    (units.KG_PER_LB, 0.45359237),
    (units.KG_PER_OZ, 0.028349523125),
    (units.KG_PER_CWT, 100 * 0.45359237),
    (units.KG_PER_SHORT_TON, 907.18474),
    (units.M3_PER_US_BUSHEL, 35.23907016688e-3),
    (units.M3_PER_US_GALLON, 3.785411784e-3),
    (factors.M3_PER_US_QUART, 0.946352946e-3),
    (factors.M3_PER_US_PINT, 0.473176473e-3),
    (factors.M3_PER_US_FL_OZ, 29.5735295625e-6),
    (units.M3_PER_YD3, 0.764554857984),
    (factors.M3_PER_FT3, 0.028316846592),
    (factors.M2_PER_YD2, 0.83612736),
    (factors.M2_PER_IN2, 0.00064516),
    (factors.M_PER_MI, 1609.344),
    (units.M2_PER_HA / units.M2_PER_ACRE, 2.47105381467165),
    (units.KG_M2_PER_LB_AC / units.KG_M2_PER_KG_HA, 1.12085115619446),
    (units.KG_M2_PER_KG_HA / units.KG_M2_PER_LB_AC, 0.892179121619705),
    (units.KG_M2_PER_SHORT_TON_AC / units.KG_M2_PER_T_HA, 2.24170231238891),
    (units.KG_M2_PER_LB_1000FT2 / units.KG_M2_PER_KG_HA, 48.8242763638305),
    (units.KG_M2_PER_LB_1000FT2 / units.KG_M2_PER_LB_AC, 43.56),
    (units.M3_PER_US_GALLON * 1000 / units.M2_PER_ACRE * 1e4, 9.35395622895623),
    (units.M3_PER_US_BUSHEL * 1000 / units.M2_PER_ACRE * 1e4, 87.0776387613509),
    (units.c_from_f(28.0), -2.22222222222223),
]


@pytest.mark.parametrize(("ours", "gnu"), GNU_UNITS)
def test_each_factor_is_the_one_gnu_units_gives(ours, gnu):
    assert ours == pytest.approx(gnu, rel=2e-14 if gnu < 0 else EXACT)


def test_the_acre_is_not_the_survey_acre():
    ratio = 4046.872609874252 / units.M2_PER_ACRE
    assert ratio == pytest.approx(1.000004, abs=1e-9)


def test_water_freezes_at_32_and_boils_at_212():
    assert units.c_from_f(32) == 0
    assert units.c_from_f(212) == pytest.approx(100, rel=EXACT)
    assert units.f_from_c(-40) == -40
