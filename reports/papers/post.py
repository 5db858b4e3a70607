"""The post for the crew, as a page one can print and pin up."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from typing import Any

from farm.models import Farm
from reports.calc.rules import RULES
from reports.calc.rules.compost import counted_raw
from reports.calc.rules.post import first_harvests, keep_out, on_show
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import RuleId
from reports.ledger.dossier import dossier
from reports.ledger.ruling import rules_of


def post_paper(farm: Farm, *, now: dt.datetime) -> dict[str, Any]:
    """Where not to go now, and what waits before it is harvested."""
    here = now.astimezone(zoneinfo.ZoneInfo(farm.time_zone)).replace(tzinfo=None)
    season = Span(*farm.season(farm.season_year(here.date())))
    books = dossier(farm, season, today=here.date())
    told = (*rules_of(farm, season), *RULES)
    manure = next(rule for rule in told if rule.id is RuleId.MANURE)
    heat = next(rule for rule in told if rule.id is RuleId.COMPOST)
    days = round(manure["contact_days"])
    posting = next(rule for rule in told if rule.id is RuleId.POSTING)
    return {
        "farm": farm,
        "now": here,
        "keep_out": keep_out(books, now=here),
        "on_show": on_show(books, posting, now=here),
        "posting": posting,
        "waiting": first_harvests(
            books,
            today=here.date(),
            manure_days=days,
            raw=counted_raw(books, heat),
        ),
        "manure_days": days,
    }
