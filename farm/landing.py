"""Where a person lands who comes in: crew at their day, others at their farms."""

from __future__ import annotations

import datetime as dt

from django.urls import reverse

from farm.models import Role, User


def address(user: User, *, now: dt.datetime) -> str:
    """The crew's page for who works on one farm only; else the list of farms."""
    rows = user.memberships.select_related("farm")
    open_now = [row for row in rows if row.holds_on(row.farm.today(now))]
    if len(open_now) == 1 and open_now[0].role == Role.CREW:
        return reverse("crew:today", args=[open_now[0].farm.slug])
    return reverse("home")
