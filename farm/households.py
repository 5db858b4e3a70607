"""Founding a farm."""

from __future__ import annotations

import datetime as dt

from django.db import transaction
from django.utils.text import slugify

from farm.models import Farm, Membership, Role, User

# Words nobody may take as a farm's short name, since they stand in addresses.
TAKEN = {"new"}


def found(farm: Farm, *, owner: User, now: dt.datetime) -> Farm:
    """Save a new farm under a free short name, and make its founder the owner."""
    with transaction.atomic():
        farm.slug = free_slug(farm.name)
        farm.save()
        today = farm.today(now)
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
