"""Whom and what an archive finds where it arrives: numbers, people, a farm's name."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence

from django.core.exceptions import ValidationError
from django.core.management.color import no_style
from django.db import connection, models
from django.utils.translation import gettext as _

from farm.models import ChangeHead, Farm, Membership, Role, User
from records.tables.archive.contents import Kept
from records.tables.archive.opening import ArchiveError

ROWS_A_STATEMENT = 500
Model = type[models.Model]


def free(numbers: Sequence[int], model: Model) -> dict[int, int]:
    """The numbers rows may keep: all of them, or none if one is taken."""
    for at in range(0, len(numbers), ROWS_A_STATEMENT):
        some = numbers[at : at + ROWS_A_STATEMENT]
        if model._default_manager.filter(pk__in=some).exists():
            return {}
    return {number: number for number in numbers}


def holds_something(farm: Farm, tables: Iterable[Kept]) -> bool:
    beside = {Membership, ChangeHead}
    return any(
        one.rows(farm).exists() for one in tables if one.table.model not in beside
    )


def person(email: str) -> User:
    found = User.objects.filter(email=email.strip().lower()).first()
    try:
        return found or User.objects.create_user(email.strip())
    except ValidationError:
        sentence = _("“%s” cannot be the address of an owner.")
        raise ArchiveError(sentence % email[:80]) from None


def let_in(farm: Farm, owner: User, today: dt.date) -> None:
    found = farm.memberships.filter(user=owner).first()
    if found is None:
        farm.memberships.create(user=owner, role=Role.OWNER, since=today)
    elif found.role != Role.OWNER or found.until is not None:
        found.role, found.until = Role.OWNER, None
        found.save()


def count_on(tables: Sequence[Model]) -> None:
    """Let the database number new rows after those that brought theirs along."""
    with connection.cursor() as cursor:
        for statement in connection.ops.sequence_reset_sql(no_style(), list(tables)):
            cursor.execute(statement)
