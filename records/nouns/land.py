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
            Column(_("name"), "name"),
            Column(_("what it is"), "kind"),
            Column(_("part of"), "parent", by="parent__name"),
            AREA,
            Column(_("how the area is known"), "measured"),
            Column(_("status"), "status"),
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
            Column(_("field"), "field", by="field__name"),
            Column(_("period from"), "first"),
            Column(_("period to"), "last"),
            Column(
                _("substance used"),
                lambda row: row.substance or _("none"),
                by="substance",
            ),
            Column(_("signed by"), "signer"),
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
            Column(_("field"), "field", by="field__name"),
            Column(_("side"), "side"),
            Column(_("what lies there"), "neighbour"),
            Column(_("width of the buffer"), "buffer_m", "length"),
            Column(_("what keeps it apart"), "barrier"),
        ),
        order=("field__name", "side", "pk"),
        related=("field",),
        writers=MANAGERS,
    ),
)
