"""The catalogue of kinds, its figures, and the figures a farm puts in their place."""

from __future__ import annotations

from typing import Any, ClassVar

from django.db import models
from django.db.models import F, Q
from django.utils.translation import get_language
from django.utils.translation import gettext_lazy as _

from farm.models import Farm, Record, RecordQuerySet
from records.figures import called, unit_called


class KindQuerySet(models.QuerySet["Kind"]):
    def open_to(self, farm: Farm) -> KindQuerySet:
        """The catalogue and the farm's own kinds."""
        return self.filter(Q(farm=None) | Q(farm=farm))


class Kind(models.Model):
    class Use(models.TextChoices):
        COVER = "cover", _("cover crop")
        CASH = "cash", _("cash crop")
        BOTH = "both", _("cover or cash crop")

    class Group(models.TextChoices):
        GRASS = "grass", _("grass")
        LEGUME = "legume", _("legume")
        BRASSICA = "brassica", _("brassica")
        BROADLEAF = "broadleaf", _("other broadleaf")

    class Season(models.TextChoices):
        WARM = "warm", _("warm season")
        COOL = "cool", _("cool season")

    farm = models.ForeignKey(
        Farm,
        on_delete=models.PROTECT,
        related_name="kinds",
        null=True,
        blank=True,
        editable=False,
    )
    slug = models.SlugField(max_length=60, unique=True, editable=False)
    name = models.CharField(_("name"), max_length=80)
    name_es = models.CharField(_("name in Spanish"), max_length=80, blank=True)
    botanical = models.CharField(_("botanical name"), max_length=120, blank=True)
    botanical_source = models.CharField(max_length=40, blank=True, editable=False)
    botanical_unverified = models.BooleanField(default=False, editable=False)
    family = models.CharField(_("family"), max_length=80)
    family_source = models.CharField(max_length=40, blank=True, editable=False)
    family_unverified = models.BooleanField(default=False, editable=False)
    use = models.CharField(_("grown as"), max_length=5, choices=Use.choices)
    group = models.CharField(_("plant group"), max_length=9, choices=Group.choices)
    season = models.CharField(_("season"), max_length=4, choices=Season.choices)
    cautions = models.JSONField(default=list, editable=False)

    objects: ClassVar[models.Manager[Any]] = KindQuerySet.as_manager()

    class Meta:
        verbose_name = _("kind")
        verbose_name_plural = _("kinds")

    def __str__(self) -> str:
        if self.name_es and (get_language() or "").startswith("es"):
            return self.name_es
        return self.name

    def natural_key(self) -> tuple[str]:
        return (self.slug,)


class KindFigure(models.Model):
    kind = models.ForeignKey(Kind, on_delete=models.CASCADE, related_name="figures")
    attribute = models.CharField(_("figure"), max_length=40)
    stage = models.CharField(_("stage"), max_length=40, blank=True)
    low = models.FloatField(_("from"))
    high = models.FloatField(_("to"))
    unit = models.CharField(_("unit"), max_length=24)
    source = models.CharField(_("source"), max_length=40)
    unverified = models.BooleanField(_("unverified"), default=False)
    note = models.CharField(max_length=200, blank=True)
    place = models.PositiveIntegerField(default=0)

    class Meta:
        verbose_name = _("figure")
        verbose_name_plural = _("figures")
        constraints = [
            models.CheckConstraint(
                condition=Q(high__gte=F("low")), name="figure_low_before_high"
            ),
            models.UniqueConstraint(
                "kind", "place", name="figure_has_one_place_in_its_kind"
            ),
        ]

    def __str__(self) -> str:
        name, unit = called(self.attribute), unit_called(self.unit)
        return f"{self.kind} {name} {self.low}–{self.high} {unit}"


class FarmFigure(Record):
    """A figure of the farm's own, which wins over the catalogue's and says so."""

    kind = models.ForeignKey(
        Kind,
        on_delete=models.PROTECT,
        related_name="farm_figures",
        verbose_name=_("kind"),
    )
    attribute = models.CharField(_("figure"), max_length=40)
    stage = models.CharField(_("stage"), max_length=40, blank=True)
    low = models.FloatField(_("from"))
    high = models.FloatField(_("to"))
    unit = models.CharField(_("unit"), max_length=24)
    reason = models.CharField(_("how you know"), max_length=300)

    objects: ClassVar[models.Manager[Any]] = RecordQuerySet.as_manager()

    class Meta(Record.Meta):
        verbose_name = _("figure of our own")
        verbose_name_plural = _("figures of our own")
        constraints = [
            *Record.Meta.constraints,
            models.CheckConstraint(
                condition=Q(high__gte=F("low")),
                name="own_figure_low_before_high",
                violation_error_message=_("The second figure is below the first."),
            ),
            models.UniqueConstraint(
                "farm",
                "kind",
                "attribute",
                "stage",
                condition=Q(voided_at=None),
                name="one_own_figure_at_a_time",
                violation_error_message=_(
                    "The farm already has a figure of its own here. Change that one."
                ),
            ),
        ]

    def __str__(self) -> str:
        name, unit = called(self.attribute), unit_called(self.unit)
        return f"{self.kind}: {name} {self.low}–{self.high} {unit}"
