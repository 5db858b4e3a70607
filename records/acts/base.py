"""What can be written down fast: which record an act makes, and what is asked."""

from __future__ import annotations

from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from records.nouns import BY_SLUG, Noun


@dataclass(frozen=True)
class Act:
    """Something done in a field: which record it makes, what is asked once, what
    of each place."""

    slug: str
    words: str | Promise
    noun_slug: str
    place: str
    once: tuple[str, ...]
    each: tuple[str, ...]
    sows: bool = False

    @property
    def noun(self) -> Noun:
        return BY_SLUG[self.noun_slug]


ACTS = (
    Act(
        "sow",
        _("Sown"),
        "plantings",
        "field",
        ("sown_on", "method", "purpose", "depth_m", "rain_expected", "done_by"),
        ("area_m2",),
        sows=True,
    ),
    Act(
        "see",
        _("Seen"),
        "observations",
        "planting",
        ("seen_on", "seen", "done_by"),
        ("canopy_share", "bloom_share", "weeds", "notes"),
    ),
    Act(
        "end",
        _("Cut or ended"),
        "terminations",
        "planting",
        ("ended_on", "method", "outcome", "residue", "reason", "tool", "done_by"),
        ("area_m2", "bloom_share"),
    ),
    Act(
        "put-on",
        _("Put on"),
        "applications",
        "field",
        ("product", "product_lot", "applied_on", "method", "worked_in_on", "done_by"),
        ("amount", "area_m2"),
    ),
    Act(
        "lay",
        _("Film or tarp laid"),
        "mulch-films-and-tarps",
        "field",
        ("laid_on", "material", "material_words", "approval", "done_by"),
        ("area_m2",),
    ),
    Act(
        "water",
        _("Watered"),
        "irrigations",
        "field",
        ("watered_on", "source", "done_by"),
        ("water_mm",),
    ),
    Act(
        "harvest",
        _("Harvested"),
        "harvest-lots",
        "field",
        ("harvested_on", "crop", "use", "status", "done_by"),
        ("code", "mass_kg"),
    ),
)


BY_ACT = {act.slug: act for act in ACTS}
