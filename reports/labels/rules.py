"""Words for rules, sets of rules, how heavy a finding weighs, and counts."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext as _now
from django.utils.translation import gettext_lazy as _

from farm import units
from farm.templatetags.days import day_said
from farm.unit_words import measure_said
from farm.units import System
from reports.calc.shapes.rules import (
    Counted,
    Finding,
    RuleId,
    RuleSet,
    Severity,
    Tally,
    Value,
)
from reports.labels.matters import MATTER
from reports.labels.records import material_said

SET = {
    RuleSet.ORGANIC_US: _("US organic, 7 CFR 205"),
    RuleSet.ORGANIC_EU: _("EU organic, Regulation 2018/848"),
    RuleSet.ORGANIC_CA: _("Canada organic, CAN/CGSB-32.310"),
    RuleSet.WORKERS: _("Worker protection, 40 CFR 170"),
    RuleSet.RESTRICTED: _("Restricted-use pesticides, 7 CFR 110"),
    RuleSet.FOOD: _("Produce safety, 21 CFR 112"),
    RuleSet.COVER_CROP: _("Cover crop practice, NRCS 340"),
    RuleSet.INSURANCE: _("Termination guideline for insured dry land"),
    RuleSet.SEED_LAW: _("Seed tags, Federal Seed Act and 7 CFR 201"),
    RuleSet.LABEL: _("Labels in hand"),
    RuleSet.BOOKS: _("The books themselves"),
}
SEVERITY = {
    Severity.STOP: _("Stop and ask"),
    Severity.FIX: _("Mend"),
    Severity.WARN: _("Look again"),
    Severity.INFO: _("To know"),
}
RULE = {
    RuleId.LAND_CLOCK: _("Time since a prohibited substance"),
    RuleId.LAND_HISTORY: _("History of the land without a gap"),
    RuleId.LAND_STATEMENTS: _("Statements about the land agree"),
    RuleId.BOUNDARY: _("Land has a drawn boundary"),
    RuleId.EDGES: _("Edges are kept apart from the neighbours"),
    RuleId.MANURE: _("Raw manure, from being worked in to harvest"),
    RuleId.COMPOST: _("Compost: heat, turnings, C:N"),
    RuleId.MANURE_NITROGEN: _("Nitrogen from manure and compost over the season"),
    RuleId.SEED_STATUS: _("Seed is organic, or was searched for"),
    RuleId.SEED_SEARCH: _("The search for organic seed is whole"),
    RuleId.SEED_TREATED: _("Treated seed"),
    RuleId.SEED_LINKED: _("Plantings name their seed lots"),
    RuleId.SEED_TAG: _("What the seed tag says"),
    RuleId.TAG_AGE: _("Age of the germination test"),
    RuleId.INOCULANT: _("Inoculants are named"),
    RuleId.SUPPLIER: _("Suppliers’ certificates are looked up"),
    RuleId.APPROVAL: _("Inputs are approved before use"),
    RuleId.APPLICATOR: _("Who put it on, from where, and how"),
    RuleId.TRIGGER: _("What a pest-control material was for"),
    RuleId.SPRAYED: _("Stands sprayed out"),
    RuleId.TARP: _("Tarps and plastic taken off"),
    RuleId.SHEET_MATERIAL: _("What a film or tarp is made of"),
    RuleId.BURNING: _("Burning of residue"),
    RuleId.REENTRY: _("Work and the re-entry interval"),
    RuleId.POSTING: _("Posting of what was sprayed"),
    RuleId.PREHARVEST: _("Harvest and the pre-harvest interval"),
    RuleId.PLANT_BACK: _("A label’s wait before feed and grain"),
    RuleId.GRAZING_LABEL: _("Labels read before grazing"),
    RuleId.RESTRICTED_RECORD: _("What a restricted-use record names"),
    RuleId.RESTRICTED_DAYS: _("Restricted use written down in time"),
    RuleId.CONTRACTOR_COPY: _("The contractor’s copy of the record"),
    RuleId.LICENCE: _("The applicator’s licence"),
    RuleId.HARVEST_CHAIN: _("From seed to sale without a missing link"),
    RuleId.HARVEST_ORDER: _("Days in their order"),
    RuleId.LOTS_APART: _("Organic lots kept apart"),
    RuleId.SALE_STATUS: _("Status on the papers"),
    RuleId.CLEAN_OUT: _("Clean-out between uses"),
    RuleId.INCIDENT: _("Mishaps told and settled"),
    RuleId.DONE_BY: _("Records name who did the work"),
    RuleId.REVIEW: _("Records looked over"),
    RuleId.LATE: _("Written down in time"),
    RuleId.STOCK: _("No more goes out than came in"),
    RuleId.COVER_SEED: _("No seed threshed from a cover under contract"),
    RuleId.COVER_PLAN: _("Seed of a cover is weighed"),
    RuleId.TERMINATION_DAY: _("End of a cover before the crop"),
    RuleId.NO_RECORDS: _("A season without records"),
    RuleId.DOCUMENT: _("Papers kept with seed and sprays"),
    RuleId.ENGINEERED: _("Seed shown not to be engineered"),
    RuleId.TRAINED: _("Training before work where something was sprayed"),
}
TALLY = {
    Tally.PLANTINGS_LOT: _("%(have)s of %(of)s plantings name a lot for every kind"),
    Tally.LOTS_TAG: _("%(have)s of %(of)s seed lots sown have their tag’s figures"),
    Tally.LOTS_PAPER: _(
        "%(have)s of %(of)s seed lots sown have a certificate or search"
    ),
    Tally.INPUTS_APPROVED: _("%(have)s of %(of)s applications are of approved inputs"),
    Tally.INPUTS_BY: _("%(have)s of %(of)s applications name who put it on"),
    Tally.HARVESTS_PLANTING: _("%(have)s of %(of)s harvest lots name their planting"),
    Tally.HARVESTS_STORED: _("%(have)s of %(of)s harvest lots name a store"),
    Tally.HARVESTS_CHAIN: _("%(have)s of %(of)s harvest lots have an unbroken chain"),
    Tally.SALES_INVOICE: _("%(have)s of %(of)s sales name an invoice"),
    Tally.FIELDS_OUTLINE: _("%(have)s of %(of)s fields have an outline"),
    Tally.FIELDS_HISTORY: _("%(have)s of %(of)s fields have something told of before"),
    Tally.RECORDS_PROMPT: _("%(have)s of %(of)s records were written by the day after"),
}
# Who decides, by set of rules.
DECIDES = {
    RuleSet.ORGANIC_US: _("Your certifier decides."),
    RuleSet.ORGANIC_EU: _("Your control body decides."),
    RuleSet.ORGANIC_CA: _("Your certification body decides."),
    RuleSet.WORKERS: _("The label and your State’s pesticide office decide."),
    RuleSet.RESTRICTED: _("The label, the licensed applicator and your State decide."),
    RuleSet.FOOD: _("This is not a food-safety plan. Ask Extension or your State."),
    RuleSet.COVER_CROP: _("Your NRCS office and the State’s own text decide."),
    RuleSet.INSURANCE: _("Your insurance agent decides; keep advice in writing."),
    RuleSet.SEED_LAW: _("Your State’s seed law decides."),
    RuleSet.LABEL: _("Typed from the label by you. The label in hand governs."),
    RuleSet.BOOKS: _("Our own check: no text stands behind it."),
}
PARAMS = {
    "months": _("months"),
    "perennial_months": _("months for perennials other than forage"),
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
    "nitrogen_kg_ha": _("nitrogen, kilograms a hectare"),
    "sources": _("sources asked"),
    "metres": _("width of a buffer, metres"),
    "post_hours": _("hours until it is posted"),
    "show_days": _("days it stays posted"),
    "keep_years": _("years it is kept"),
    "days": _("days"),
    "zone": _("zone of the guideline"),
    "days_1": _("days before planting, zone 1"),
    "days_2": _("days before planting, zone 2"),
    "days_3": _("days before planting, zone 3"),
    "days_4": _("days before planting, zone 4"),
    "packed_share": _("tolerance for seed and packed inputs, share"),
    "bulk_share": _("tolerance for harvests in bulk, share"),
}
LISTS = (SET, SEVERITY, RULE, TALLY, MATTER)


# Places in the texts that are told in words.
CITED: Mapping[str, Promise] = {
    "the product’s label": _("the product’s label"),
    "40 CFR 170, and the label": _("40 CFR 170, and the label"),
    "Federal Seed Act, what a tag says": _("Federal Seed Act, what a tag says"),
    "NRCS cover crop termination guidelines": _(
        "NRCS cover crop termination guidelines"
    ),
    "NRCS practice 340, as your State prints it": _(
        "NRCS practice 340, as your State prints it"
    ),
    "Regulation (EU) 2018/848, Annex II, Part I, 1.10": _(
        "Regulation (EU) 2018/848, Annex II, Part I, 1.10"
    ),
    "Regulation (EU) 2018/848, Annex II, Part I, 1.7": _(
        "Regulation (EU) 2018/848, Annex II, Part I, 1.7"
    ),
    "Regulation (EU) 2018/848, Annex II, Part I, 1.8": _(
        "Regulation (EU) 2018/848, Annex II, Part I, 1.8"
    ),
    "Regulation (EU) 2018/848, Annex II, Part I, 1.9": _(
        "Regulation (EU) 2018/848, Annex II, Part I, 1.9"
    ),
    "Regulation (EU) 2018/848, Article 11": _("Regulation (EU) 2018/848, Article 11"),
    "Regulation (EU) 2018/848, Article 24": _("Regulation (EU) 2018/848, Article 24"),
    "Regulation (EU) 2018/848, Article 34": _("Regulation (EU) 2018/848, Article 34"),
    "Regulation (EU) 2018/848, Article 9": _("Regulation (EU) 2018/848, Article 9"),
}


def sentence(finding: Finding, system: System) -> str:
    """What was found, with the finding's values in the farm's units."""
    values = finding.found.values
    told = {name: written(name, value, system) for name, value in values.items()}
    return str(MATTER[finding.found.matter]) % told


def counted(one: Counted) -> str:
    """So many of so many, in words."""
    return str(TALLY[one.tally]) % {"have": one.have, "of": one.of}


def written(name: str, value: Value, system: System) -> str:
    """A value as one reads it: days by the calendar, weights in the farm's units."""
    if isinstance(value, dt.datetime):
        return day_said(value, "j M Y H:i")
    if isinstance(value, dt.date):
        return day_said(value, "j M Y")
    if name == "material":
        return material_said(str(value))
    if name.endswith("_kg"):
        return str(units.write_mass(float(value), system))
    if name.endswith("_m"):
        return measure_said(units.write_length(float(value), system))
    if isinstance(value, float):
        return f"{value:g}"
    return str(value) or _now("not named")


def place_said(citation: str) -> str:
    """Where a rule stands, with what of it is not a number in words."""
    return str(CITED.get(citation, citation))
