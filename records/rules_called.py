"""What the numbers of rules are called, for records that name one by its key."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.templatetags.measures import HasUnits, bare, written
from farm.units import System, c_from_f, f_from_c

SETS: Mapping[str, Promise] = {
    "organic_us": _("US organic, 7 CFR 205"),
    "organic_eu": _("EU organic, Regulation 2018/848"),
    "organic_ca": _("Canada organic, CAN/CGSB-32.310"),
    "workers": _("Worker protection, 40 CFR 170"),
    "restricted": _("Restricted-use pesticides, 7 CFR 110"),
    "food": _("Produce safety, 21 CFR 112"),
    "cover_crop": _("Cover crop practice, NRCS 340"),
    "insurance": _("Termination guideline for insured dry land"),
    "seed_law": _("Seed tags, Federal Seed Act and 7 CFR 201"),
    "label": _("Labels in hand"),
    "books": _("The books themselves"),
}
# Rules that lean on a number.
NUMBERED: Mapping[str, Promise] = {
    "land-clock": _("Time since a prohibited substance"),
    "land-history": _("History of the land without a gap"),
    "approval": _("Inputs are approved before use"),
    "edges": _("Edges are kept apart from the neighbours"),
    "manure": _("Raw manure, from being worked in to harvest"),
    "compost": _("Compost: heat, turnings, C:N"),
    "seed-search": _("The search for organic seed is whole"),
    "supplier": _("Suppliers’ certificates are looked up"),
    "manure-nitrogen": _("Nitrogen from manure and compost over the season"),
    "posting": _("Posting of what was sprayed"),
    "restricted-days": _("Restricted use written down in time"),
    "contractor-copy": _("The contractor’s copy of the record"),
    "review": _("Records looked over"),
    "termination-day": _("End of a cover before the crop"),
    "cover-end": _("How and when covers ended is written down"),
    "tag-age": _("Age of the germination test"),
    "plant-back": _("A label’s wait before feed and grain"),
    "grazing-label": _("Labels read before grazing"),
    "stock": _("No more goes out than came in"),
    "late": _("Written down in time"),
    "licence": _("The applicator’s licence"),
    "trained": _("Training before work where something was sprayed"),
    "tarp": _("Tarps and plastic taken off"),
}
NUMBERS: Mapping[str, Promise] = {
    "months": _("months"),
    "perennial_months": _("months for perennials other than forage"),
    "soon_days": _("days a licence is named before it runs out"),
    "treated_days": _("days ground counts as sprayed lately"),
    "near_days": _("days counted as near"),
    "contact_days": _("days where the part eaten touches the soil"),
    "other_days": _("days where it does not"),
    "low_c": _("heat, from"),
    "high_c": _("heat, to"),
    "days_turned": _("days of heat in a windrow"),
    "days_still": _("days of heat in a vessel or aerated pile"),
    "turnings": _("turnings"),
    "ratio_low": _("C:N, from"),
    "ratio_high": _("C:N, to"),
    "after_days": _("days after the season’s end"),
    "late_days": _("days before the season’s end that count as late"),
    "stand_months": _("months it may lie under a stand that was not ended"),
    "nitrogen_kg_ha": _("nitrogen"),
    "sources": _("sources asked"),
    "metres": _("width of a buffer"),
    "post_hours": _("hours until it is posted"),
    "show_days": _("days it stays posted"),
    "keep_years": _("years it is kept"),
    "days": _("days"),
    "zone": _("zone of the guideline"),
    "days_1": _("days before planting, zone 1"),
    "days_2": _("days before planting, zone 2"),
    "days_3": _("days before planting, zone 3"),
    "days_4": _("days before planting, zone 4"),
    "past_days": _("days a cover may stand past the crop’s sowing"),
    "packed_share": _("tolerance for seed and packed inputs"),
    "bulk_share": _("tolerance for harvests in bulk"),
}
# Numbers with a unit of their own: how they are written, and how they are typed.
MEASURES = {
    "metres": "length",
    "low_c": "temp",
    "high_c": "temp",
    "packed_share": "percent",
    "bulk_share": "percent",
}
TYPED: Mapping[str, Promise] = {
    "metres": _("in metres"),
    "low_c": _("in degrees Celsius"),
    "high_c": _("in degrees Celsius"),
    "nitrogen_kg_ha": _("in kilograms a hectare"),
    "packed_share": _("as a share: 0.05 is 5 %"),
    "bulk_share": _("as a share: 0.05 is 5 %"),
}


def called(key: str) -> str:
    """Which number of which rule it is; the key itself where no rule has it."""
    try:
        rule_set, rule, number = key.split(".")
        told = SETS[rule_set], NUMBERED[rule], NUMBERS[number]
    except (KeyError, ValueError):
        return key
    return "{}: {}, {}".format(*told)


def typed_as(key: str) -> str:
    """In what the number is typed, where that does not go without saying."""
    return str(TYPED.get(key.rpartition(".")[2], ""))


def number_said(key: str, value: float, farm: HasUnits) -> str:
    """A number of a rule, with its unit as the farm reads it."""
    number = key.rpartition(".")[2]
    if number == "nitrogen_kg_ha":
        return written(value / 10_000, "nitrogen", farm)
    measure = MEASURES.get(number)
    if measure == "temp" and farm.units == System.US:
        # The texts give whole degrees; what is kept of them in Celsius is rounded.
        value = c_from_f(round(f_from_c(value)))
    return written(value, measure, farm) if measure else bare(value)
