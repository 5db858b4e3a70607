"""Who may put a voided record back, and what stands in the way of it."""

from __future__ import annotations

import datetime as dt

from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm.models import Membership, Record, User
from farm.roles import MANAGERS
from farm.writing import put_back

# One's own slip is seen within minutes; later it is a decision, for a manager.
OWN_MINUTES = 15
REASON = "undone"
LEANS = _("It leans on a record that is voided: %(what)s. Put that one back first.")
TAKEN = _("Another record has taken its place since. %(why)s")


def may_undo(row: Record, *, by: Membership, now: dt.datetime) -> bool:
    """Whether this member may put the record back now."""
    if row.voided_at is None:
        return False
    is_own = row.voided_by_id == by.user_id
    is_fresh = now - row.voided_at <= dt.timedelta(minutes=OWN_MINUTES)
    return by.role in MANAGERS or (is_own and is_fresh)


def undo(row: Record, *, by: User, now: dt.datetime) -> str:
    """Put a record back; a sentence says what stood in the way, if anything did."""
    for field in row._meta.concrete_fields:
        leant_on = getattr(row, field.name) if field.is_relation else None
        if isinstance(leant_on, Record) and leant_on.voided_at:
            return LEANS % {"what": leant_on}
    try:
        put_back(row, by=by, now=now, reason=REASON)
    except ValidationError as error:
        return TAKEN % {"why": " ".join(error.messages)}
    return ""
