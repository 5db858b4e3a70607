"""The crew's page: duties, where one may go, and what was written down last."""

from __future__ import annotations

import datetime as dt
import zoneinfo
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from farm.models import Farm, User
from reports.calc.rules.post import keeps_out, spread, still_closed
from reports.ledger.crew import (
    ACTS as KNOWN_ACTS,
)
from reports.ledger.crew import (
    DutyOfMine,
    OwnEntry,
    duties_of,
    own_entries,
    plots,
    seeds_query,
    sprayed,
)

AHEAD = dt.timedelta(days=7)
# So long an entry is young: whoever wrote it may still mend or strike it out here.
YOUNG = dt.timedelta(hours=24)
ACTS = {"sow": "sow", "plant": "sow", "look": "see"}
ACTS |= dict.fromkeys(("cut", "end", "work_in"), "end")
# What a duty says already of the form that does it.
TOLD = {
    "cut": {"outcome": "regrows"},
    "end": {"outcome": "ended"},
    "work_in": {
        "outcome": "ended",
        "method": "tilled_in",
        "residue": "worked_in",
    },
    "plant": {"purpose": "cash"},
}


@dataclass(frozen=True)
class Press:
    """A duty and the press that opens its form, already filled."""

    duty: DutyOfMine
    act: str
    query: str


@dataclass(frozen=True)
class Entry:
    """An entry of the person's; a young one may be mended or struck out here."""

    told: OwnEntry
    young: bool


def crew_paper(farm: Farm, user: User, *, now: dt.datetime) -> dict[str, Any]:
    """A person's day on a farm, in a fixed number of queries."""
    here = now.astimezone(zoneinfo.ZoneInfo(farm.time_zone)).replace(tzinfo=None)
    today = here.date()
    fresh = [one for one in sprayed(farm, today=today) if keeps_out(one, now=here)]
    land = plots(farm, of={one.field_id for one in fresh})
    presses = [press(one, farm) for one in duties_of(farm, user, until=today + AHEAD)]
    closed = still_closed(spread(fresh, land), now=here)
    shut = {one.field for one in closed}
    return {
        "farm": farm,
        "here": here,
        "today": today,
        "acts": KNOWN_ACTS,
        "due": [one for one in presses if one.duty.earliest_on <= today],
        "coming": [one for one in presses if one.duty.earliest_on > today],
        "closed": closed,
        "free": [one.name for one in land if one.name not in shut],
        "entries": [
            Entry(one, not one.voided and now - one.at < YOUNG)
            for one in own_entries(farm, user)
        ],
    }


def press(duty: DutyOfMine, farm: Farm) -> Press:
    """What is filled in when a duty is pressed."""
    act = ACTS.get(duty.code, "")
    told: dict[str, Any] = dict(TOLD.get(duty.code, {}))
    if act == "sow":
        told["place"] = duty.field_id
        told |= seeds_query(map(vars, duty.seeds), farm=farm) if duty.seeds else {}
    elif duty.planting_id:
        told["place"] = duty.planting_id
    return Press(duty, act, urlencode(told))
