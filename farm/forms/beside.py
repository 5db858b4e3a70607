"""Beside which box of a form the sentence of a broken rule of its table belongs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from django.core.exceptions import ValidationError
from django.db import models
from django.db.models import BaseConstraint, CheckConstraint, F, UniqueConstraint

# A rule about more boxes than this is told over the form.
FEW = 2


def box_of(
    error: ValidationError, model: type[models.Model], boxes: Iterable[str]
) -> str | None:
    """The last box that a rule names, None where it names none or many."""
    for one in model._meta.constraints:
        if str(one.violation_error_message) in error.messages:
            named = set(_named(one))
            held = [box for box in boxes if box in named]
            return held[-1] if 0 < len(held) <= FEW else None
    return None


def _named(rule: BaseConstraint) -> Iterator[str]:
    """The fields that a rule of a table is about."""
    if isinstance(rule, CheckConstraint) and isinstance(rule.condition, models.Q):
        yield from rule.condition.referenced_base_fields
    if isinstance(rule, UniqueConstraint):
        yield from rule.fields
        for expression in rule.expressions:
            yield from _columns(expression)


def _columns(expression: Any) -> Iterator[str]:
    if isinstance(expression, F):
        yield str(getattr(expression, "name", ""))
    else:
        for part in expression.get_source_expressions():
            yield from _columns(part)
