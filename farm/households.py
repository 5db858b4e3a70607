"""Founding a farm, and letting people in."""

from __future__ import annotations

import datetime as dt
import secrets
from dataclasses import dataclass

from django.db import transaction
from django.utils.text import slugify

from farm.models import Farm, Membership, Role, User

# Words nobody may take as a farm's short name, since they stand in addresses.
TAKEN = {"new"}


@dataclass(frozen=True)
class Welcome:
    """What the owner hands to a new person; the password is shown only here."""

    membership: Membership
    password: str | None


def found(farm: Farm, *, owner: User, today: dt.date) -> Farm:
    """Save a new farm under a free short name, and make its founder the owner."""
    with transaction.atomic():
        farm.slug = free_slug(farm.name)
        farm.save()
        Membership.objects.create(farm=farm, user=owner, role=Role.OWNER, since=today)
    return farm


def free_slug(name: str) -> str:
    stem = slugify(name)[:50] or "farm"
    used = TAKEN | set(
        Farm.objects.filter(slug__startswith=stem).values_list("slug", flat=True)
    )
    if stem not in used:
        return stem
    return next(
        slug for n in range(2, len(used) + 3) if (slug := f"{stem}-{n}") not in used
    )


def add(
    farm: Farm,
    *,
    email: str,
    name: str,
    role: str,
    until: dt.date | None,
    today: dt.date,
) -> Welcome:
    """Give a person a role; someone new to this place also gets a password."""
    with transaction.atomic():
        user = User.objects.filter(email=email.lower()).first()
        password = None
        if user is None:
            password = secrets.token_urlsafe(9)
            user = User.objects.create_user(email, password, name=name)
        membership = Membership.objects.create(
            farm=farm, user=user, role=role, since=today, until=until
        )
    return Welcome(membership, password)
