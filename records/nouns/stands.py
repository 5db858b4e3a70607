"""Plantings and what is seen of them and done to them."""

from __future__ import annotations

from django.db.models.functions import Coalesce
from django.utils.translation import gettext_lazy as _

from records import filters, forms, models
from records.nouns.base import AREA, PLANTING, WHAT, Column, Noun, kinds_of, start_of

NOUNS = (
    Noun(
        "plantings",
        models.Planting,
        forms.PlantingForm,
        filters.PlantingFilter,
        (
            Column(_("field"), "field", by="field__name"),
            Column(_("kind"), kinds_of),
            Column(_("purpose"), "purpose"),
            Column(_("sown, or planned for"), start_of, by="begins_on"),
            Column(_("how"), "method"),
            AREA,
        ),
        order=("-sown_on", "-planned_on", "pk"),
        related=("field",),
        prefetch=("lines__kind",),
        reckoned=lambda rows: rows.annotate(
            begins_on=Coalesce("sown_on", "planned_on")
        ),
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
            Column(_("seen on"), "seen_on"),
            Column(_("what was seen"), "seen"),
            Column(_("canopy"), "canopy_share", "percent"),
            Column(_("in bloom"), "bloom_share", "percent"),
            Column(_("weeds, 0–5"), "weeds", "number"),
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
            Column(_("cut on"), "cut_on"),
            Column(_("frames"), lambda row: len(row.frames.all()), "number"),
            Column(_("dry matter"), "dry_share", "percent"),
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
            Column(_("ended on"), "ended_on"),
            Column(_("how"), "method"),
            Column(_("residue"), "residue"),
            Column(_("outcome"), "outcome"),
            AREA,
        ),
        order=("-ended_on", "pk"),
        related=("planting__field",),
        prefetch=("planting__lines__kind",),
        cautions=("machinery", "grazing", "spraying", "burning", "tarp"),
    ),
)
