"""What is kept of people at the door, and for how long."""

from __future__ import annotations

import datetime as dt

from axes.models import AccessAttempt
from django.db.models import Q

from farm.models import Invitation, SignIn

# A month shows who tried the door; after it the names and places are nobody's.
KEPT = dt.timedelta(days=30)


def clear_door(now: dt.datetime) -> int:
    """Delete old failed attempts, visits that ran out and links nobody used.

    An invitation that was used stays: it says who let whom in.
    """
    old = now - KEPT
    unused = Invitation.objects.filter(used_at=None)
    rows = (
        AccessAttempt.objects.filter(attempt_time__lt=old),
        SignIn.objects.filter(expire_date__lt=now),
        unused.filter(Q(expires_at__lt=old) | Q(revoked_at__lt=old)),
    )
    return sum(told.delete()[0] for told in rows)
