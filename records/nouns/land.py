"""Fields and what is told of them."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from farm.forms import EdgeForm, FieldForm, LandStatementForm
from farm.models import Edge, Field, LandStatement
from records import filters
from records.nouns.base import AREA, Column, Noun

NOUNS = (
    Noun(
        "fields",
        Field,
        FieldForm,
        filters.FieldFilter,
        (
            Column(_("name"), lambda row: row.name),
            Column(_("what it is"), lambda row: row.get_kind_display()),
            Column(_("part of"), lambda row: row.parent or ""),
            AREA,
            Column(_("how the area is known"), lambda row: row.get_measured_display()),
            Column(_("status"), lambda row: row.get_status_display()),
        ),
        order=("name", "pk"),
        related=("parent",),
        writers=MANAGERS,
    ),
    Noun(
        "land-statements",
        LandStatement,
        LandStatementForm,
        filters.LandStatementFilter,
        (
            Column(_("field"), lambda row: row.field),
            Column(_("period from"), lambda row: row.first),
            Column(_("period to"), lambda row: row.last),
            Column(_("substance used"), lambda row: row.substance or _("none")),
            Column(_("signed by"), lambda row: row.signer),
        ),
        order=("-last", "pk"),
        related=("field",),
        writers=MANAGERS,
    ),
    Noun(
        "edges",
        Edge,
        EdgeForm,
        filters.EdgeFilter,
        (
            Column(_("field"), lambda row: row.field),
            Column(_("side"), lambda row: row.side),
            Column(_("what lies there"), lambda row: row.neighbour),
            Column(_("width of the buffer"), lambda row: row.buffer_m, "length"),
            Column(_("what keeps it apart"), lambda row: row.barrier),
        ),
        order=("field__name", "side", "pk"),
        related=("field",),
        writers=MANAGERS,
    ),
)
