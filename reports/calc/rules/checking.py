"""All the checks, put to the books one after another."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from reports.calc.rules import (
    apart,
    bounds,
    chain,
    cleaning,
    clock,
    compost,
    covers,
    endings,
    engineered,
    entry,
    held,
    history,
    inputs,
    keeping,
    laid,
    manure,
    nitrogen,
    restricted,
    search,
    seed,
    stock,
    supply,
    tags,
    trained,
    unended,
    upkept,
)
from reports.calc.shapes.dossier import Dossier
from reports.calc.shapes.rules import Finding, Found, Rule, RuleId, Severity

Check = Callable[[Dossier, Rule], Iterator[Found]]

CHECKS: Mapping[RuleId, Check] = {
    RuleId.LAND_CLOCK: clock.land_clock,
    RuleId.LAND_HISTORY: history.land_history,
    RuleId.LAND_STATEMENTS: history.land_statements,
    RuleId.BOUNDARY: bounds.boundary,
    RuleId.EDGES: bounds.edges,
    RuleId.MANURE: manure.manure,
    RuleId.COMPOST: compost.compost,
    RuleId.MANURE_NITROGEN: nitrogen.manure_nitrogen,
    RuleId.SEED_STATUS: seed.seed_status,
    RuleId.SEED_SEARCH: search.seed_search,
    RuleId.SEED_TREATED: seed.seed_treated,
    RuleId.SEED_LINKED: tags.seed_linked,
    RuleId.SEED_TAG: tags.seed_tag,
    RuleId.TAG_AGE: tags.tag_age,
    RuleId.INOCULANT: supply.inoculant,
    RuleId.SUPPLIER: supply.supplier,
    RuleId.APPROVAL: inputs.approval,
    RuleId.APPLICATOR: inputs.applicator,
    RuleId.TRIGGER: inputs.trigger,
    RuleId.SPRAYED: endings.sprayed,
    RuleId.TARP: laid.tarp,
    RuleId.SHEET_MATERIAL: laid.sheet_material,
    RuleId.BURNING: endings.burning,
    RuleId.REENTRY: entry.reentry,
    RuleId.POSTING: entry.posting,
    RuleId.PREHARVEST: held.preharvest,
    RuleId.PLANT_BACK: held.plant_back,
    RuleId.GRAZING_LABEL: held.grazing_label,
    RuleId.RESTRICTED_RECORD: restricted.restricted_record,
    RuleId.RESTRICTED_DAYS: restricted.restricted_days,
    RuleId.CONTRACTOR_COPY: restricted.contractor_copy,
    RuleId.LICENCE: restricted.licence,
    RuleId.HARVEST_CHAIN: chain.harvest_chain,
    RuleId.HARVEST_ORDER: chain.harvest_order,
    RuleId.LOTS_APART: apart.lots_apart,
    RuleId.SALE_STATUS: apart.sale_status,
    RuleId.CLEAN_OUT: cleaning.clean_out,
    RuleId.INCIDENT: keeping.incident,
    RuleId.DONE_BY: keeping.done_by,
    RuleId.REVIEW: keeping.review,
    RuleId.LATE: keeping.late,
    RuleId.STOCK: stock.stock,
    RuleId.COVER_SEED: covers.cover_seed,
    RuleId.COVER_PLAN: covers.cover_plan,
    RuleId.TERMINATION_DAY: covers.termination_day,
    RuleId.NO_RECORDS: keeping.no_records,
    RuleId.DOCUMENT: keeping.document,
    RuleId.ENGINEERED: engineered.engineered,
    RuleId.TRAINED: trained.trained,
    RuleId.COVER_END: unended.cover_end,
    RuleId.COVER_INOCULANT: covers.cover_inoculant,
    RuleId.LAND_KEPT: upkept.land_kept,
}
ORDER = {severity: place for place, severity in enumerate(Severity)}


def findings(books: Dossier, rules: Iterable[Rule]) -> tuple[Finding, ...]:
    """Return what an inspector would ask about, the heaviest first.

    Parameters
    ----------
    books : Dossier
        The farm's books over the season and the years before it.
    rules : iterable of Rule
        The rules of the sets the farm is held to, with the certifier's numbers.

    Returns
    -------
    tuple of Finding
        By severity, then field, day and rule; each rule is put to a matter by the
        day of the record, so that old seasons keep old rules. What two sets ask of one
        record is told once, under the heavier.
    """
    found = [
        Finding(rule, one)
        for rule in rules
        for one in CHECKS[rule.id](books, rule)
        if rule.covers(one.on)
    ]
    once: dict[str, Finding] = {}
    for one in sorted(found, key=_place):
        once.setdefault(one.key, one)
    return tuple(once.values())


def _place(finding: Finding) -> tuple[int, int, str, str, int]:
    found = finding.found
    return (
        ORDER[finding.severity],
        found.field_id or 0,
        found.on.isoformat() if found.on else "",
        finding.rule.id,
        found.record or 0,
    )
