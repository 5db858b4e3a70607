"""Narrowing lists of fields and what is told of them."""

from __future__ import annotations

import django_filters as df
from django.utils.translation import gettext_lazy as _

from farm.models import Field
from records.filters.base import RecordFilter, by_field


class FieldFilter(RecordFilter):
    WORDS = ("name", "notes")
    # Only fields that have parts, since a farm may have thousands.
    parent = df.ModelChoiceFilter(
        label=_("Part of"),
        queryset=Field.objects.filter(
            pk__in=Field.objects.exclude(parent=None).values("parent")
        ).order_by("name"),
    )
    kind = df.ChoiceFilter(label=_("What it is"), choices=Field.Kind.choices)
    status = df.ChoiceFilter(label=_("Status"), choices=Field.Status.choices)


class LandStatementFilter(RecordFilter):
    DAY = "signed_on"
    WORDS = ("substance", "signer", "notes")
    field = by_field("field")


class EdgeFilter(RecordFilter):
    WORDS = ("side", "neighbour", "barrier", "notes")
    field = by_field("field")
