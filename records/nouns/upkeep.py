"""What keeps the books straight: stations, partners, machines, counts."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from farm.access import MANAGERS
from records import filters, forms, models
from records.nouns.base import Column, Noun

NOUNS = (
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
        "suppliers",
        models.Supplier,
        forms.SupplierForm,
        filters.SupplierFilter,
        (
            Column(_("name"), lambda row: row.name),
            Column(_("supplier or contractor"), lambda row: row.get_part_display()),
            Column(_("organic certificate"), lambda row: row.certificate),
            Column(_("certificate runs to"), lambda row: row.certificate_until or ""),
            Column(_("looked up on"), lambda row: row.verified_on or ""),
        ),
        order=("name", "pk"),
        writers=MANAGERS,
    ),
    Noun(
        "equipment",
        models.Equipment,
        forms.EquipmentForm,
        filters.EquipmentFilter,
        (
            Column(_("name"), lambda row: row.name),
            Column(_("what it is"), lambda row: row.get_part_display()),
            Column(_("working width"), lambda row: row.width_m, "length"),
            Column(_("setting last used"), lambda row: row.setting),
        ),
        order=("name", "pk"),
        writers=MANAGERS,
        cautions=("machinery",),
    ),
    Noun(
        "calibrations",
        models.Calibration,
        forms.CalibrationForm,
        filters.CalibrationFilter,
        (
            Column(_("machine"), lambda row: row.equipment),
            Column(_("kind of seed"), lambda row: row.kind),
            Column(_("calibrated on"), lambda row: row.calibrated_on),
            Column(_("setting"), lambda row: row.setting),
            Column(_("seed caught"), lambda row: row.caught_kg, "mass"),
            Column(_("rate wanted"), lambda row: row.wanted_kg_m2, "rate"),
        ),
        order=("-calibrated_on", "pk"),
        related=("equipment", "kind"),
        cautions=("machinery",),
    ),
    Noun(
        "stock-counts",
        models.StockCount,
        forms.StockCountForm,
        filters.StockCountFilter,
        (
            Column(
                _("what was counted"),
                lambda row: row.seed_lot or row.harvest_lot or row.product,
            ),
            Column(_("counted on"), lambda row: row.counted_on),
            Column(_("weight found"), lambda row: row.mass_kg, "mass"),
        ),
        order=("-counted_on", "pk"),
        related=("seed_lot__kind", "harvest_lot", "product"),
    ),
    Noun(
        "clean-outs",
        models.CleanOut,
        forms.CleanOutForm,
        filters.CleanOutFilter,
        (
            Column(_("machine or store"), lambda row: row.equipment),
            Column(_("cleaned on"), lambda row: row.cleaned_on),
            Column(_("what it held before"), lambda row: row.held_before),
            Column(_("how"), lambda row: row.method),
        ),
        order=("-cleaned_on", "pk"),
        related=("equipment",),
        cautions=("machinery",),
    ),
    Noun(
        "incidents",
        models.Incident,
        forms.IncidentForm,
        filters.IncidentFilter,
        (
            Column(_("what it was"), lambda row: row.get_what_display()),
            Column(_("noticed on"), lambda row: row.noticed_on),
            Column(_("field"), lambda row: row.field or ""),
            Column(_("who was told, and when"), lambda row: row.told_to),
        ),
        order=("-noticed_on", "pk"),
        related=("field",),
    ),
    Noun(
        "trainings",
        models.Training,
        forms.TrainingForm,
        filters.TrainingFilter,
        (
            Column(_("person"), lambda row: row.person),
            Column(_("topic"), lambda row: row.topic),
            Column(_("trained on"), lambda row: row.trained_on),
            Column(_("trainer"), lambda row: row.trainer),
            Column(_("holds until"), lambda row: row.valid_until or ""),
        ),
        order=("-trained_on", "pk"),
        writers=MANAGERS,
    ),
)
