"""How each noun is told on the page of its field: its words and its measures."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from django.utils.translation import gettext as _

from farm.models import LandStatement, Record
from farm.templatetags.days import day_said
from records.models import (
    Application,
    BiomassSample,
    Grazing,
    HarvestLot,
    Incident,
    Irrigation,
    MulchSheet,
    Observation,
    Planting,
    SoilTest,
    Termination,
)

# What a record is measured by: the word before it, the value, how it is shown.
Measured = tuple[str, float, str]
Kinds = Mapping[int, str]
Said = tuple[list[str], list[Measured]]


@dataclass(frozen=True)
class Telling:
    """How one noun is told, and the way from its rows to the field."""

    model: type[Record]
    tell: Callable[[Any, Kinds], Said]
    path: str = "field"
    related: tuple[str, ...] = ()
    prefetch: tuple[str, ...] = ()


def _measured(value: float | None, measure: str, word: str = "") -> list[Measured]:
    return [] if value is None else [(word, value, measure)]


def planting_told(row: Planting, kinds: Kinds) -> Said:
    words = [kinds[row.pk], row.get_purpose_display(), row.get_method_display()]
    return words, _measured(row.area_m2, "area")


def _observation(row: Observation, kinds: Kinds) -> Said:
    shares = {
        Observation.Seen.CANOPY: (_("canopy"), row.canopy_share),
        Observation.Seen.BLOOM: (_("in bloom"), row.bloom_share),
        None: (_("ground covered"), row.ground_cover_share),
    }
    told = {key: one for key, one in shares.items() if one[1] is not None}
    words = [kinds.get(row.planting_id, "")]
    if row.seen not in told:
        words.append(row.get_seen_display())
    words += [f"{word} {share:.0%}" for word, share in told.values()]
    if row.weeds is not None:
        words.append(_("weeds %(number)d of 5") % {"number": row.weeds})
    return words, _measured(row.height_m, "length", _("height"))


def _sample(row: BiomassSample, kinds: Kinds) -> Said:
    frames = [one.wet_kg * row.dry_share / one.area_m2 for one in row.frames.all()]
    dry = sum(frames) / len(frames) if frames else None
    return [kinds.get(row.planting_id, "")], _measured(dry, "density", _("dry matter"))


def _termination(row: Termination, kinds: Kinds) -> Said:
    words = [kinds.get(row.planting_id, ""), row.get_method_display()]
    words.append(row.get_residue_display())
    if row.outcome == Termination.Outcome.REGROWS:
        words.append(row.get_outcome_display())
    return words, _measured(row.area_m2, "area")


def _application(row: Application, kinds: Kinds) -> Said:
    by_volume = row.measure == Application.Measure.VOLUME
    amount = _measured(row.amount_si, "volume" if by_volume else "mass")
    return [str(row.product), row.target], amount + _measured(row.area_m2, "area")


def _harvest(row: HarvestLot, kinds: Kinds) -> Said:
    words = [row.crop, row.code, row.get_status_display()]
    return words, _measured(row.mass_kg, "mass")


def _grazing(row: Grazing, kinds: Kinds) -> Said:
    words = [row.animals, "" if row.head is None else str(row.head)]
    if row.out_on:
        words.append(_("out on %(day)s") % {"day": day_said(row.out_on, "j M Y")})
    return words, []


def _irrigation(row: Irrigation, kinds: Kinds) -> Said:
    return [row.source], _measured(row.water_mm, "rain")


def _sheet(row: MulchSheet, kinds: Kinds) -> Said:
    words = [row.material_words or row.get_material_display()]
    words.append(kinds.get(row.planting_id or 0, ""))
    if row.taken_off_on:
        off = day_said(row.taken_off_on, "j M Y")
        words += [_("taken off on %(day)s") % {"day": off}, row.get_went_display()]
    return words, _measured(row.area_m2, "area")


def _soil_test(row: SoilTest, kinds: Kinds) -> Said:
    values = [f"{one.name} {one.value:g} {one.unit}" for one in row.readings.all()]
    return [row.laboratory, *values], _measured(row.depth_m, "depth", _("depth"))


def _incident(row: Incident, kinds: Kinds) -> Said:
    return [row.get_what_display(), row.account], []


def _statement(row: LandStatement, kinds: Kinds) -> Said:
    first, last = (day_said(day, "j M Y") for day in (row.first, row.last))
    used = row.substance or _("no substance used")
    return [f"{first} – {last}", used, row.signer], []


OF_PLANTING = "planting__field"
TELLINGS = (
    Telling(Observation, _observation, OF_PLANTING),
    Telling(BiomassSample, _sample, OF_PLANTING, prefetch=("frames",)),
    Telling(Termination, _termination, OF_PLANTING),
    Telling(Application, _application, related=("product",)),
    Telling(HarvestLot, _harvest),
    Telling(Grazing, _grazing),
    Telling(Irrigation, _irrigation),
    Telling(MulchSheet, _sheet),
    Telling(SoilTest, _soil_test, prefetch=("readings",)),
    Telling(Incident, _incident),
    Telling(LandStatement, _statement),
)
