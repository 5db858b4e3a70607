"""Rules as data, and what a check on the records finds."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from types import MappingProxyType

Value = str | int | float | dt.date | dt.datetime
Told = dict[str, Value]


class RuleSet(StrEnum):
    """The texts a farm may be held to; each is switched on by itself."""

    ORGANIC_US = "organic_us"
    ORGANIC_EU = "organic_eu"
    ORGANIC_CA = "organic_ca"
    WORKERS = "workers"
    RESTRICTED = "restricted"
    FOOD = "food"
    COVER_CROP = "cover_crop"
    INSURANCE = "insurance"
    SEED_LAW = "seed_law"
    LABEL = "label"
    BOOKS = "books"


class Severity(StrEnum):
    """How much a finding weighs, heaviest first."""

    STOP = "stop"
    FIX = "fix"
    WARN = "warn"
    INFO = "info"


class RuleId(StrEnum):
    """What one check looks at; the same in every set that asks for it."""

    LAND_CLOCK = "land-clock"
    LAND_HISTORY = "land-history"
    LAND_STATEMENTS = "land-statements"
    BOUNDARY = "boundary"
    EDGES = "edges"
    MANURE = "manure"
    COMPOST = "compost"
    MANURE_NITROGEN = "manure-nitrogen"
    SEED_STATUS = "seed-status"
    SEED_SEARCH = "seed-search"
    SEED_TREATED = "seed-treated"
    SEED_LINKED = "seed-linked"
    SEED_TAG = "seed-tag"
    TAG_AGE = "tag-age"
    INOCULANT = "inoculant"
    SUPPLIER = "supplier"
    APPROVAL = "approval"
    APPLICATOR = "applicator"
    TRIGGER = "trigger"
    SPRAYED = "sprayed"
    TARP = "tarp"
    SHEET_MATERIAL = "sheet-material"
    BURNING = "burning"
    REENTRY = "reentry"
    POSTING = "posting"
    PREHARVEST = "preharvest"
    PLANT_BACK = "plant-back"
    RESTRICTED_RECORD = "restricted-record"
    RESTRICTED_DAYS = "restricted-days"
    CONTRACTOR_COPY = "contractor-copy"
    LICENCE = "licence"
    HARVEST_CHAIN = "harvest-chain"
    HARVEST_ORDER = "harvest-order"
    LOTS_APART = "lots-apart"
    SALE_STATUS = "sale-status"
    CLEAN_OUT = "clean-out"
    INCIDENT = "incident"
    DONE_BY = "done-by"
    REVIEW = "review"
    LATE = "late"
    STOCK = "stock"
    COVER_SEED = "cover-seed"
    COVER_PLAN = "cover-plan"
    TERMINATION_DAY = "termination-day"
    GRAZING_LABEL = "grazing-label"
    NO_RECORDS = "no-records"
    DOCUMENT = "document"
    ENGINEERED = "engineered"
    TRAINED = "trained"
    COVER_END = "cover-end"
    COVER_INOCULANT = "cover-inoculant"
    LAND_KEPT = "land-kept"


class Matter(StrEnum):
    """What exactly a check found; each has a sentence with the finding's values."""

    LAND_NOT_YET = "land_not_yet"
    LAND_JUST = "land_just"
    LAND_UNKNOWN = "land_unknown"
    LAND_SOWN_EARLY = "land_sown_early"
    STATEMENTS_DISAGREE = "statements_disagree"
    STATEMENTS_OVERLAP = "statements_overlap"
    NO_OUTLINE = "no_outline"
    EDGE_OPEN = "edge_open"
    EDGE_NARROW = "edge_narrow"
    MANURE_ON_TOP = "manure_on_top"
    MANURE_SOON = "manure_soon"
    GRAZED_SOON = "grazed_soon"
    NITROGEN_OVER = "nitrogen_over"
    NITROGEN_UNKNOWN = "nitrogen_unknown"
    COMPOST_NO_BATCH = "compost_no_batch"
    COMPOST_ON_TOP = "compost_on_top"
    COMPOST_SOON = "compost_soon"
    COMPOST_NO_LOG = "compost_no_log"
    COMPOST_DAYS = "compost_days"
    COMPOST_TURNINGS = "compost_turnings"
    COMPOST_RATIO = "compost_ratio"
    SEED_NO_CERTIFICATE = "seed_no_certificate"
    SEED_NO_SEARCH = "seed_no_search"
    SEARCH_FEW = "search_few"
    SEARCH_LATE = "search_late"
    SEARCH_OLD = "search_old"
    SEARCH_NO_REASON = "search_no_reason"
    TREATED_SOWN = "treated_sown"
    LINE_NO_LOT = "line_no_lot"
    TAG_SILENT = "tag_silent"
    TAG_OLD = "tag_old"
    INOCULANT_UNNAMED = "inoculant_unnamed"
    INOCULANT_OLD = "inoculant_old"
    SUPPLIER_UNKNOWN = "supplier_unknown"
    SUPPLIER_UNCHECKED = "supplier_unchecked"
    SUPPLIER_LAPSED = "supplier_lapsed"
    NOT_APPROVED = "not_approved"
    GREW_UNAPPROVED = "grew_unapproved"
    APPROVED_AFTER = "approved_after"
    APPROVAL_RAN_OUT = "approval_ran_out"
    APPLICATOR_UNNAMED = "applicator_unnamed"
    APPLICATOR_NO_ADDRESS = "applicator_no_address"
    METHOD_UNNAMED = "method_unnamed"
    TARGET_UNNAMED = "target_unnamed"
    SPRAYED_OUT = "sprayed_out"
    TARP_LEFT = "tarp_left"
    TARP_LATE = "tarp_late"
    TARP_UNDER = "tarp_under"
    SHEET_WORKED_IN = "sheet_worked_in"
    SHEET_PVC = "sheet_pvc"
    SHEET_UNAPPROVED = "sheet_unapproved"
    BURNED = "burned"
    BURNED_ASK = "burned_ask"
    ENTERED_EARLY = "entered_early"
    PLANNED_EARLY = "planned_early"
    INTERVAL_UNKNOWN = "interval_unknown"
    HOURS_UNKNOWN = "hours_unknown"
    POSTED_NOT = "posted_not"
    POSTED_LATE = "posted_late"
    HARVESTED_EARLY = "harvested_early"
    PREHARVEST_UNKNOWN = "preharvest_unknown"
    PLANT_BACK_SHORT = "plant_back_short"
    PLANT_BACK_UNKNOWN = "plant_back_unknown"
    RESTRICTED_NO_PRODUCT = "restricted_no_product"
    RESTRICTED_NO_NUMBER = "restricted_no_number"
    RESTRICTED_NO_AMOUNT = "restricted_no_amount"
    RESTRICTED_NO_AREA = "restricted_no_area"
    RESTRICTED_NO_CROP = "restricted_no_crop"
    RESTRICTED_NO_PLACE = "restricted_no_place"
    RESTRICTED_NO_NAME = "restricted_no_name"
    RESTRICTED_LATE = "restricted_late"
    RESTRICTED_NO_COPY = "restricted_no_copy"
    LICENCE_MISSING = "licence_missing"
    HARVEST_NO_LOT = "harvest_no_lot"
    HARVEST_NO_PLANTING = "harvest_no_planting"
    HARVEST_NO_SEED = "harvest_no_seed"
    HARVEST_NO_STORE = "harvest_no_store"
    SALE_NO_INVOICE = "sale_no_invoice"
    HARVEST_BEFORE_SOWING = "harvest_before_sowing"
    SOLD_BEFORE_HARVEST = "sold_before_harvest"
    BUFFER_AS_ORGANIC = "buffer_as_organic"
    TRANSITION_AS_ORGANIC = "transition_as_organic"
    NOT_ORGANIC_AS_ORGANIC = "not_organic_as_organic"
    STORED_TOGETHER = "stored_together"
    SOLD_ABOVE_STATUS = "sold_above_status"
    NOT_CLEANED = "not_cleaned"
    NOT_TOLD = "not_told"
    NOT_SETTLED = "not_settled"
    NOBODY_NAMED = "nobody_named"
    NOT_REVIEWED = "not_reviewed"
    WRITTEN_LATE = "written_late"
    MORE_SOWN = "more_sown"
    MORE_GONE = "more_gone"
    SEED_FROM_COVER = "seed_from_cover"
    COVER_UNMEASURED = "cover_unmeasured"
    ENDED_LATE = "ended_late"
    LABEL_NOT_READ = "label_not_read"
    SEASON_EMPTY = "season_empty"
    NO_DOCUMENT = "no_document"
    NO_LABEL = "no_label"
    LICENCE_UNKNOWN = "licence_unknown"
    LICENCE_NOT_YET = "licence_not_yet"
    LICENCE_RAN_OUT = "licence_ran_out"
    LICENCE_SOON = "licence_soon"
    ENGINEERED_UNSAID = "engineered_unsaid"
    ENGINEERED_SAID_LATE = "engineered_said_late"
    UNTRAINED_WORKED = "untrained_worked"
    UNTRAINED_PLANNED = "untrained_planned"
    LAND_CUT_EARLY = "land_cut_early"
    COVER_NOT_ENDED = "cover_not_ended"
    COVER_NOT_INOCULATED = "cover_not_inoculated"
    REGISTRATION_UNKNOWN = "registration_unknown"
    MORE_PUT = "more_put"
    MORE_POURED = "more_poured"
    EDGES_UNTOLD = "edges_untold"
    LAND_IDLE = "land_idle"
    TAG_NO_WEEDS = "tag_no_weeds"
    COVER_NO_DEPTH = "cover_no_depth"


class Tally(StrEnum):
    """What is counted in words: so many of so many."""

    PLANTINGS_LOT = "plantings_lot"
    LOTS_TAG = "lots_tag"
    LOTS_PAPER = "lots_paper"
    INPUTS_APPROVED = "inputs_approved"
    INPUTS_BY = "inputs_by"
    HARVESTS_PLANTING = "harvests_planting"
    HARVESTS_STORED = "harvests_stored"
    HARVESTS_CHAIN = "harvests_chain"
    SALES_INVOICE = "sales_invoice"
    FIELDS_OUTLINE = "fields_outline"
    FIELDS_HISTORY = "fields_history"
    RECORDS_PROMPT = "records_prompt"


@dataclass(frozen=True, slots=True)
class Param:
    """A number a rule leans on, and the range within which it may be overruled.

    ``ours`` says that no text gives the number: it is our own, without legal
    force. ``overruled`` says that the farm's certifier gave another.
    """

    key: str
    value: float
    unit: str
    low: float
    high: float
    ours: bool = False
    overruled: bool = False


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of one set, as it stood from one day to another.

    ``stale`` says that the copy read was old, or known to be changed since.
    """

    id: RuleId
    set: RuleSet
    citation: str
    severity: Severity
    source: str
    params: tuple[Param, ...] = ()
    effective_from: dt.date | None = None
    effective_to: dt.date | None = None
    stale: bool = False

    def __getitem__(self, key: str) -> float:
        found = next((one.value for one in self.params if one.key == key), None)
        if found is None:
            raise KeyError(key)
        return found

    def covers(self, day: dt.date | None) -> bool:
        """Tell whether the rule was in force on a day; a dateless matter always is."""
        if day is None:
            return self.effective_to is None
        since, until = self.effective_from, self.effective_to
        return (since is None or since <= day) and (until is None or day <= until)

    def overruled(self, key: str, value: float) -> Rule:
        """Return the rule with one number of the certifier's own.

        Raises
        ------
        ValueError
            If the rule has no such number, or it lies out of its range.
        """
        one = next((row for row in self.params if row.key == key), None)
        if one is None or not one.low <= value <= one.high:
            raise ValueError(f"{self.id}: {key} = {value}")
        mended = replace(one, value=value, overruled=True)
        rest = tuple(mended if row is one else row for row in self.params)
        return replace(self, params=rest)


@dataclass(frozen=True, slots=True)
class Found:
    """What a check found, before the rule is put to it.

    ``noun`` and ``record`` name the record that mends it; ``noun`` is the word of
    its address. ``severity`` stands only where it differs from the rule's.
    """

    matter: Matter
    noun: str
    record: int | None
    on: dt.date | None = None
    field_id: int | None = None
    severity: Severity | None = None
    values: Mapping[str, Value] = field(default_factory=lambda: MappingProxyType({}))


@dataclass(frozen=True, slots=True)
class Finding:
    """One matter an inspector would ask about, under one rule."""

    rule: Rule
    found: Found

    @property
    def severity(self) -> Severity:
        """Return the finding's own weight, or else the rule's."""
        return self.found.severity or self.rule.severity

    @property
    def key(self) -> str:
        """Return what stays the same while the matter stays open."""
        found = self.found
        return f"{self.rule.id}.{found.matter}.{found.noun}.{found.record or 0}"


@dataclass(frozen=True, slots=True)
class Counted:
    """So many of so many."""

    tally: Tally
    have: int
    of: int
