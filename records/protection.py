"""A word of caution when work is given out where something was sprayed lately."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Any

from django.db.models import Q
from django.utils.translation import gettext as _

from farm.models import Role
from farm.templatetags.days import day_said
from records.models import Application, Duty, InputProduct, RulesFollowed, Training

# Wide on purpose: the findings go by the rule, its hours and its months.
LATELY = dt.timedelta(days=35)
A_YEAR = dt.timedelta(days=365)


def training_first(row: Duty) -> Iterator[str]:
    """For work given to somebody of whom no training of the year is written down."""
    if row.who_for is None or not _is_asked(row) or _is_trained(row):
        return
    spray = _sprays(row).order_by("-applied_on").first()
    if spray is not None:
        sentence = _(
            "%(product)s was used here on %(applied)s, and no training of %(who)s in "
            "worker protection is written down for the year before. Read the label, "
            "and train before the work."
        )
        told = {"product": spray.product, "who": row.who_for.name or _("this person")}
        yield sentence % {**told, "applied": day_said(spray.applied_on, "j M Y")}


def _is_asked(row: Duty) -> bool:
    """Whether the farm follows the rules on workers, and they bind this person."""
    followed = RulesFollowed.objects.on(row.farm).live()
    workers = followed.filter(which=RulesFollowed.Which.WORKERS)
    is_owner = row.farm.memberships.filter(user=row.who_for, role=Role.OWNER).exists()
    family = {name.strip().casefold() for name in row.farm.family.splitlines()}
    is_family = row.who_for is not None and row.who_for.name.casefold() in family
    return workers.exists() and not (is_owner or is_family)


def _is_trained(row: Duty) -> bool:
    assert row.who_for is not None
    days = (row.earliest_on - A_YEAR, row.latest_on)
    rows = Training.objects.on(row.farm).live().filter(trained_on__range=days)
    rows = rows.filter(Q(valid_until=None) | Q(valid_until__gte=row.earliest_on))
    subject = Training.Subject.WORKERS
    found: bool = rows.filter(subject=subject, person__iexact=row.who_for.name).exists()
    return found


def _sprays(row: Duty) -> Any:
    """On this field, on what it is part of, and on its parts."""
    here = Q(field=row.field_id) | Q(field__parent=row.field_id)
    if row.field.parent_id:
        here |= Q(field=row.field.parent_id)
    days = (row.earliest_on - LATELY, row.latest_on)
    rows = Application.objects.on(row.farm).live().filter(here)
    pest = InputProduct.Type.PEST
    return rows.filter(product__type=pest, applied_on__range=days)
