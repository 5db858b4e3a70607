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
            Column(_("name"), "name"),
            Column(_("station number"), "station_id"),
            Column(_("the farm’s own station"), "is_main", "yes"),
            Column(_("where the readings come from"), "source"),
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
            Column(_("name"), "name"),
            Column(_("supplier or contractor"), "part"),
            Column(_("organic certificate"), "certificate"),
            Column(_("certificate runs to"), "certificate_until"),
            Column(_("looked up on"), "verified_on"),
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
            Column(_("name"), "name"),
            Column(_("what it is"), "part"),
            Column(_("working width"), "width_m", "length"),
            Column(_("setting last used"), "setting"),
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
            Column(_("machine"), "equipment", by="equipment__name"),
            Column(_("kind of seed"), "kind", by="kind__name"),
            Column(_("calibrated on"), "calibrated_on"),
            Column(_("setting"), "setting"),
            Column(_("seed caught"), "caught_kg", "mass"),
            Column(_("rate wanted"), "wanted_kg_m2", "rate"),
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
            Column(_("counted on"), "counted_on"),
            Column(_("weight found"), "mass_kg", "mass"),
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
            Column(_("machine or store"), "equipment", by="equipment__name"),
            Column(_("cleaned on"), "cleaned_on"),
            Column(_("what it held before"), "held_before"),
            Column(_("how"), "method"),
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
            Column(_("what it was"), "what"),
            Column(_("noticed on"), "noticed_on"),
            Column(_("field"), "field", by="field__name"),
            Column(_("who was told, and when"), "told_to"),
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
            Column(_("person"), "person"),
            Column(_("what it counts as"), "subject"),
            Column(_("topic"), "topic"),
            Column(_("trained on"), "trained_on"),
            Column(_("trainer"), "trainer"),
            Column(_("holds until"), "valid_until"),
        ),
        order=("-trained_on", "pk"),
        writers=MANAGERS,
    ),
)
