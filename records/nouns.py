"""Every noun a farm writes down: its form, its list, who may write it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _
from django_filters import FilterSet

from farm.access import MANAGERS, WRITERS
from farm.forms import FieldForm, LandStatementForm, RecordForm
from farm.models import Field, LandStatement, Record, Role
from records import filters, forms, models

Told = Callable[[Any], Any]


@dataclass(frozen=True)
class Column:
    """One column of a list: what it is called, what it shows, how it is measured."""

    label: str | Promise
    told: Told
    measure: str = ""


@dataclass(frozen=True)
class Noun:
    slug: str
    model: type[Record]
    form: type[RecordForm[Any]]
    filter: type[FilterSet]
    columns: tuple[Column, ...]
    order: tuple[str, ...]
    related: tuple[str, ...] = ()
    prefetch: tuple[str, ...] = ()
    writers: frozenset[Role] = field(default=WRITERS)
    cautions: tuple[str, ...] = ()
    # Named address where a new one begins, when that is not a form of its own.
    begins_at: str = ""

    @property
    def title(self) -> str:
        return str(self.model._meta.verbose_name)

    @property
    def titles(self) -> str:
        return str(self.model._meta.verbose_name_plural)

    def rows(self) -> Any:
        """Every row with what its list shows, in a fixed number of queries."""
        rows = self.model._default_manager.select_related(*self.related)
        return rows.prefetch_related(*self.prefetch)


def kinds_of(planting: models.Planting) -> str:
    return " + ".join(str(line.kind) for line in planting.lines.all())


def start_of(planting: models.Planting) -> Any:
    return planting.sown_on or planting.planned_on


PLANTING = Column(_("planting"), lambda row: row.planting.field)
WHAT = Column(_("kind"), lambda row: kinds_of(row.planting))
AREA = Column(_("area"), lambda row: row.area_m2, "area")

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
        "seed-lots",
        models.SeedLot,
        forms.SeedLotForm,
        filters.SeedLotFilter,
        (
            Column(_("kind"), lambda row: row.kind),
            Column(_("variety"), lambda row: row.variety),
            Column(_("lot number"), lambda row: row.lot_number),
            Column(_("supplier"), lambda row: row.supplier),
            Column(_("received on"), lambda row: row.received_on),
            Column(_("weight received"), lambda row: row.received_kg, "mass"),
            Column(_("left"), lambda row: row.left_kg, "mass"),
            Column(_("pure live seed"), lambda row: row.pls_share, "percent"),
            Column(_("status"), lambda row: row.get_status_display()),
        ),
        order=("-received_on", "pk"),
        related=("kind",),
        writers=MANAGERS,
    ),
    Noun(
        "plantings",
        models.Planting,
        forms.PlantingForm,
        filters.PlantingFilter,
        (
            Column(_("field"), lambda row: row.field),
            Column(_("kind"), kinds_of),
            Column(_("purpose"), lambda row: row.get_purpose_display()),
            Column(_("sown, or planned for"), start_of),
            Column(_("how"), lambda row: row.get_method_display()),
            AREA,
        ),
        order=("-sown_on", "-planned_on", "pk"),
        related=("field",),
        prefetch=("lines__kind",),
        cautions=("treated_seed", "machinery"),
    ),
    Noun(
        "observations",
        models.Observation,
        forms.ObservationForm,
        filters.ObservationFilter,
        (
            PLANTING,
            WHAT,
            Column(_("seen on"), lambda row: row.seen_on),
            Column(_("what was seen"), lambda row: row.get_seen_display()),
            Column(_("canopy"), lambda row: row.canopy_share, "percent"),
            Column(_("in bloom"), lambda row: row.bloom_share, "percent"),
            Column(_("weeds, 0–5"), lambda row: row.weeds, "number"),
        ),
        order=("-seen_on", "pk"),
        related=("planting__field",),
        prefetch=("planting__lines__kind",),
    ),
    Noun(
        "biomass-samples",
        models.BiomassSample,
        forms.BiomassSampleForm,
        filters.BiomassSampleFilter,
        (
            PLANTING,
            WHAT,
            Column(_("cut on"), lambda row: row.cut_on),
            Column(_("frames"), lambda row: len(row.frames.all()), "number"),
            Column(_("dry matter"), lambda row: row.dry_share, "percent"),
        ),
        order=("-cut_on", "pk"),
        related=("planting__field",),
        prefetch=("planting__lines__kind", "frames"),
    ),
    Noun(
        "terminations",
        models.Termination,
        forms.TerminationForm,
        filters.TerminationFilter,
        (
            PLANTING,
            WHAT,
            Column(_("ended on"), lambda row: row.ended_on),
            Column(_("how"), lambda row: row.get_method_display()),
            Column(_("residue"), lambda row: row.get_residue_display()),
            Column(_("outcome"), lambda row: row.get_outcome_display()),
            AREA,
        ),
        order=("-ended_on", "pk"),
        related=("planting__field",),
        prefetch=("planting__lines__kind",),
        cautions=("machinery", "grazing", "spraying", "burning", "tarp"),
    ),
    Noun(
        "input-products",
        models.InputProduct,
        forms.InputProductForm,
        filters.InputProductFilter,
        (
            Column(_("name"), lambda row: row.name),
            Column(_("maker or source"), lambda row: row.maker),
            Column(_("type"), lambda row: row.get_type_display()),
            Column(_("approved by, reference"), lambda row: row.approval),
            Column(_("approval runs out on"), lambda row: row.approved_until or ""),
        ),
        order=("name", "pk"),
        writers=MANAGERS,
        cautions=("label",),
    ),
    Noun(
        "applications",
        models.Application,
        forms.ApplicationForm,
        filters.ApplicationFilter,
        (
            Column(_("product"), lambda row: row.product),
            Column(_("field"), lambda row: row.field),
            Column(_("applied on"), lambda row: row.applied_on),
            Column(_("amount"), lambda row: row, "amount"),
            AREA,
            Column(_("worked in on"), lambda row: row.worked_in_on or ""),
        ),
        order=("-applied_on", "pk"),
        related=("product", "field"),
        cautions=("label", "manure"),
    ),
    Noun(
        "stations",
        models.WeatherStation,
        forms.StationForm,
        filters.StationFilter,
        (
            Column(_("name"), lambda row: row.name),
            Column(_("station number"), lambda row: row.station_id),
            Column(_("the farm’s own station"), lambda row: row.is_main, "yes"),
            Column(_("where the readings come from"), lambda row: row.source),
        ),
        order=("name", "pk"),
        writers=MANAGERS,
        begins_at="records:weather-load",
    ),
    Noun(
        "own-figures",
        models.FarmFigure,
        forms.FarmFigureForm,
        filters.FarmFigureFilter,
        (
            Column(_("kind"), lambda row: row.kind),
            Column(_("figure"), lambda row: row.attribute),
            Column(_("stage"), lambda row: row.stage),
            Column(_("from"), lambda row: row.low, "number"),
            Column(_("to"), lambda row: row.high, "number"),
            Column(_("unit"), lambda row: row.unit),
            Column(_("how you know"), lambda row: row.reason),
        ),
        order=("kind__name", "attribute", "pk"),
        related=("kind",),
        writers=MANAGERS,
        begins_at="records:kinds",
    ),
)

BY_SLUG = {noun.slug: noun for noun in NOUNS}
BY_MODEL = {noun.model._meta.model_name: noun for noun in NOUNS}
