"""Plantings and what is seen of them and done to them."""

from __future__ import annotations

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
)
