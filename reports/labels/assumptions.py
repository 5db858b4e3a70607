"""Sentences for our own choices, their units and where they come from."""

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from reports.calc.assumptions import Basis, Use

ASSUMPTIONS: Mapping[str, Promise] = {
    "emergence_days": _("Days from sowing to coming up, where no figure says"),
    "buckwheat_canopy_days": _("Days from sowing to a closed canopy of buckwheat"),
    "buckwheat_canopy_heat": _("Heat from sowing to a closed canopy of buckwheat"),
    "buckwheat_heat_base": _("Temperature above which heat counts for buckwheat"),
    "full_bloom_share": _("Share of plants in flower that is called full bloom"),
    "days_emerged_to_closed": _(
        "Days from coming up to the full canopy, for ground cover only"
    ),
    "closed_cover": _("Ground cover at which a canopy is called closed"),
    "fullest_cover": _("Most ground cover a living stand reaches"),
    "residue_counts_from": _("Ground cover below which residue is called bare soil"),
    "sample_days_before_end": _(
        "Days before the end within which a weighed sample stands for the stand"
    ),
    "decay_slow": _("Slowest decay, as a multiple of the likely one"),
    "decay_fast": _("Fastest decay, as a multiple of the likely one"),
    "leaf_share": _("Share of the mass that is leaf, where no figure says"),
    "cover_area": _("Ground that a mass of residue covers, where no figure says"),
    "doubtful_below_left": _(
        "Share of residue left below which its ground cover is doubtful"
    ),
    "half_life_on_top": _("Half-life of residue on top, without weather"),
    "half_life_worked_in": _("Half-life of residue worked in, without weather"),
    "flat_wet_from_below": _("How far soil moisture wets residue lying on it"),
    "soil_water_full": _("Water in fifteen days that keeps the top of the soil wet"),
    "buried_least_wet": _("Least wetness of residue in the soil"),
    "mulch_strong": _("Mulch from which the hold on weeds is called strong"),
    "mulch_moderate": _("Mulch from which the hold on weeds is called moderate"),
    "mulch_partial_cover": _("Ground cover from which the hold is called partial"),
    "nitrogen_on_top_warm": _(
        "Nitrogen from residue on top against worked in, where springs are warm"
    ),
    "nitrogen_on_top_cool": _(
        "Nitrogen from residue on top against worked in, where springs are cool"
    ),
    "nitrogen_release_days": _("Days over which the nitrogen is counted"),
    "plant_back_young": _("Days to wait after working in a young stand"),
    "plant_back_mixed": _("Days to wait after working in a stand of middle age"),
    "plant_back_small_seed": _(
        "Days to wait before small seed, after residue is worked in"
    ),
    "broadcast_factor": _("Broadcast rate as a multiple of the drilled rate"),
    "rate_tolerance": _("How far a rate may lie outside the range and pass as within"),
    "seed_overage": _("Seed taken along above what is reckoned"),
    "seed_loss_a_year": _(
        "Share of the live seed on a tag no longer counted on, for each year since"
    ),
    "seed_oldest_years": _("Age of a test beyond which stock is not counted on"),
    "seed_test_months": _(
        "Age of a germination test from which a sowing is warned about; between states "
        "a seller tests within 5 months (7 CFR 201.30a, for vegetable seed)"
    ),
    "search_sources": _(
        "Sources asked that make a search for organic seed complete (common practice)"
    ),
    "sow_chance": _(
        "Least chance of bloom before frost at which sowing is called good"
    ),
    "soil_warm_days": _("Days of air temperature whose mean stands for the soil’s"),
    "growth_stops_c": _(
        "Mean of thirty days below which growth is called over, where no figure "
        "says what kills a kind"
    ),
    "rain_week_mm": _("Rain within a week of sowing that is called enough"),
}
UNITS: Mapping[str, Promise] = {
    "d": _("days"),
    "°C-day": _("°C-days"),
    "°C": _("°C"),
    "share": _("share"),
    "ratio": _("times"),
    "kg/m²": _("kg/m²"),
    "m²/kg": _("m²/kg"),
    "mm": _("mm"),
    "years": _("years"),
    "months": _("months"),
    "sources": _("sources"),
}
BASES = {
    Basis.ASSUMED: _("our own choice, no source"),
    Basis.FIT: _("fitted to published measurements"),
}
USES = {
    Use.GROWTH: _("growth"),
    Use.COVER: _("cover days"),
    Use.WEEDS: _("weed suppression"),
    Use.RESIDUE: _("residue"),
    Use.NITROGEN: _("nitrogen"),
    Use.PLANT_BACK: _("the wait before planting"),
    Use.SEED: _("seed"),
    Use.WINDOWS: _("windows"),
}
