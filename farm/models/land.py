"""The pieces of land of a farm, what was told of them, and their edges."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import gettext_lazy as _

from farm.models.record import Record, RecordQuerySet


class Field(Record):
    class Kind(models.TextChoices):
        FIELD = "field", _("field")
        BLOCK = "block", _("block")
        STRIP = "strip", _("strip")
        BED = "bed", _("bed")
        TUNNEL = "tunnel", _("tunnel")

    class Status(models.TextChoices):
        ORGANIC = "organic", _("organic")
        TRANSITIONAL = "transitional", _("transitional")
        NOT_ORGANIC = "not_organic", _("not organic")
        BUFFER = "buffer", _("buffer")

    class Measured(models.TextChoices):
        OUTLINE = "outline", _("from its outline")
        SIDES = "sides", _("from length and width")
        ENTERED = "entered", _("entered")

    name = models.CharField(_("name"), max_length=80)
    kind = models.CharField(
        _("what it is"), max_length=8, choices=Kind.choices, default=Kind.FIELD
    )
    parent = models.ForeignKey(
        "self",
        on_delete=models.PROTECT,
        related_name="parts",
        null=True,
        blank=True,
        verbose_name=_("part of"),
    )
    area_m2 = models.FloatField(_("area"))
    measured = models.CharField(
        _("how the area is known"), max_length=8, choices=Measured.choices
    )
    length_m = models.FloatField(_("length"), null=True, blank=True)
    width_m = models.FloatField(_("width"), null=True, blank=True)
    outline = models.JSONField(_("outline"), null=True, blank=True)
    status = models.CharField(
        _("status"), max_length=14, choices=Status.choices, default=Status.ORGANIC
    )
    status_since = models.DateField(_("status since"), null=True, blank=True)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("field")
        verbose_name_plural = _("fields")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(area_m2__gt=0), name="field_has_an_area"
            ),
            models.CheckConstraint(
                condition=~Q(parent=F("id")), name="field_is_not_its_own_part"
            ),
            models.UniqueConstraint(
                "farm",
                "name",
                condition=Q(voided_at=None),
                name="field_name_once_a_farm",
                violation_error_message=_("Another field has this name."),
            ),
        ]

    def __str__(self) -> str:
        return self.name


class LandStatement(Record):
    DATE_FIELD = "signed_on"
    LASTS = True

    field = models.ForeignKey(
        Field,
        on_delete=models.PROTECT,
        related_name="statements",
        verbose_name=_("field"),
    )
    first = models.DateField(_("period from"))
    last = models.DateField(_("period to"))
    substance = models.CharField(
        _("substance used"),
        max_length=200,
        blank=True,
        help_text=_("Leave empty where none was used."),
    )
    last_used_on = models.DateField(_("last used on"), null=True, blank=True)
    signer = models.CharField(_("signed by"), max_length=120)
    signed_on = models.DateField(_("signed on"))

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("land statement")
        verbose_name_plural = _("land statements")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(last__gte=F("first")),
                name="statement_ends_after_it_begins",
                violation_error_message=_("The period ends before it begins."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.field}: {self.first} – {self.last}"


class Edge(Record):
    """One side of a field: what lies there, and what keeps it apart."""

    field = models.ForeignKey(
        Field, on_delete=models.PROTECT, related_name="edges", verbose_name=_("field")
    )
    side = models.CharField(
        _("side"), max_length=60, help_text=_("Such as north, or along the creek.")
    )
    neighbour = models.CharField(_("what lies there"), max_length=200)
    buffer_m = models.FloatField(_("width of the buffer"), null=True, blank=True)
    barrier = models.CharField(
        _("what keeps it apart"),
        max_length=200,
        blank=True,
        help_text=_("Such as a windbreak, a ditch, a lane."),
    )

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("edge of a field")
        verbose_name_plural = _("edges of fields")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(buffer_m=None) | Q(buffer_m__gte=0),
                name="buffer_not_below_zero",
                violation_error_message=_("A width is not below nothing."),
            ),
            models.UniqueConstraint(
                "field",
                "side",
                condition=Q(voided_at=None),
                name="edge_side_once_a_field",
                violation_error_message=_("This side is already written down."),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.field} · {self.side}"
