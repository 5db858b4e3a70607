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
from reports.ledger.rules_called import NUMBERED, SETS

SET = {one: SETS[one] for one in RuleSet}
SEVERITY = {
    Severity.STOP: _("Stop and ask"),
    Severity.FIX: _("Mend"),
    Severity.WARN: _("Look again"),
    Severity.INFO: _("To know"),
}
RULE = {
    RuleId.LAND_STATEMENTS: _("Statements about the land agree"),
    RuleId.LAND_KEPT: _("Land in transition is looked after"),
    RuleId.BOUNDARY: _("Land has a drawn boundary"),
    RuleId.SEED_STATUS: _("Seed is organic, or was searched for"),
    RuleId.SEED_TREATED: _("Treated seed"),
    RuleId.SEED_LINKED: _("Plantings name their seed lots"),
    RuleId.SEED_TAG: _("What the seed tag says"),
    RuleId.INOCULANT: _("Inoculants are named"),
    RuleId.APPLICATOR: _("Who put it on, from where, and how"),
    RuleId.TRIGGER: _("What a pest-control material was for"),
    RuleId.SPRAYED: _("Stands sprayed out"),
    RuleId.SHEET_MATERIAL: _("What a film or tarp is made of"),
    RuleId.BURNING: _("Burning of residue"),
    RuleId.REENTRY: _("Work and the re-entry interval"),
    RuleId.PREHARVEST: _("Harvest and the pre-harvest interval"),
    RuleId.RESTRICTED_RECORD: _("What a restricted-use record names"),
    RuleId.HARVEST_CHAIN: _("From seed to sale without a missing link"),
    RuleId.HARVEST_ORDER: _("Days in their order"),
    RuleId.LOTS_APART: _("Organic lots kept apart"),
    RuleId.SALE_STATUS: _("Status on the papers"),
    RuleId.CLEAN_OUT: _("Clean-out between uses"),
    RuleId.INCIDENT: _("Mishaps told and settled"),
    RuleId.DONE_BY: _("Records name who did the work"),
    RuleId.COVER_SEED: _("No seed threshed from a cover under contract"),
    RuleId.COVER_INOCULANT: _("Legumes sown as a cover are inoculated"),
    RuleId.COVER_PLAN: _("Seed of a cover is weighed, and its depth told"),
    RuleId.NO_RECORDS: _("A season without records"),
    RuleId.DOCUMENT: _("Papers kept with seed and sprays"),
    RuleId.ENGINEERED: _("Seed shown not to be engineered"),
    **{RuleId(key): words for key, words in NUMBERED.items()},
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
    if name.endswith("_m3"):
        return str(units.write_volume(float(value), system))
    if name.endswith("_m"):
        return measure_said(units.write_length(float(value), system))
    if isinstance(value, float):
        return f"{value:g}"
    return str(value) or _now("not named")


def place_said(citation: str) -> str:
    """Where a rule stands, with what of it is not a number in words."""
    return str(CITED.get(citation, citation))
