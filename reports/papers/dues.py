"""Windows with the duty that was made of each, or the duty one press would make."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from farm.models import Farm, User
from reports.calc.shapes.ahead import Window, WindowKind
from reports.calc.shapes.now import Due
from reports.ledger.ahead import DutyTold

# A window without an end is worth doing something about within a week.
WEEK = dt.timedelta(days=6)
# What a duty asks for, and the window it keeps as its origin.
NEXT_CROP = ("plant", "plant_back")
MADE_OF: Mapping[WindowKind, tuple[str, str]] = {
    WindowKind.SOW: ("sow", "sow"),
    WindowKind.CUT: ("cut", "cut"),
    WindowKind.END_MOWING: ("end", "end_mowing"),
    WindowKind.END_WORKING_IN: ("work_in", "end_working_in"),
    WindowKind.FROST_KILL: ("look", "frost_kill"),
    WindowKind.SELF_SOWN: ("look", ""),
    WindowKind.LARGE_SEED_ON_TOP: NEXT_CROP,
    WindowKind.PLANTS_ON_TOP: NEXT_CROP,
    WindowKind.SMALL_SEED_WORKED_IN: NEXT_CROP,
    WindowKind.LARGE_SEED_WORKED_IN: NEXT_CROP,
    WindowKind.PLANTS_WORKED_IN: NEXT_CROP,
}


@dataclass(frozen=True)
class Offer:
    """The duty that one press makes of a window."""

    what: str
    from_window: str
    earliest_on: dt.date
    latest_on: dt.date


@dataclass(frozen=True)
class DueRow:
    """A window that is due, with its duty or the offer of one."""

    due: Due
    offer: Offer | None
    duty: DutyTold | None


def due_rows(
    dues: Sequence[Due], duties: Sequence[DutyTold], *, on: dt.date
) -> Iterator[DueRow]:
    for due in dues:
        offer = offer_of(due.window, on=on)
        yield DueRow(due, offer, duty_of(due.planting.id, offer, duties))


def offer_of(window: Window, *, on: dt.date) -> Offer | None:
    """The duty a window asks for, None where it has no day."""
    first = window.opens or (on if window.closes else None)
    if first is None:
        return None
    last = window.closes or window.late or max(first, on) + WEEK
    what, origin = MADE_OF[window.kind]
    return Offer(what, origin, min(first, last), last)


def duty_of(
    planting: int, offer: Offer | None, duties: Sequence[DutyTold]
) -> DutyTold | None:
    """The open duty that stands for such an offer already, its days meeting it."""
    if offer is None:
        return None
    return next(
        (
            row
            for row in duties
            if (row.planting_id, row.code) == (planting, offer.what)
            and row.earliest_on <= offer.latest_on
            and row.latest_on >= offer.earliest_on
        ),
        None,
    )


def people_on(farm: Farm, day: dt.date) -> tuple[User, ...]:
    """Everybody on the farm who may be given a duty."""
    members = farm.memberships.on(day).select_related("user").order_by("since", "pk")
    return tuple(member.user for member in members)
