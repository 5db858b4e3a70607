"""One act on one page, places and boxes together, so that it can be filled offline."""

from __future__ import annotations

import uuid
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.http import QueryDict
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from farm.forms.measures import MassField
from farm.models import Farm, Field
from farm.units import System
from records.acts.base import Act
from records.acts.sheet import Sheet, sheet
from records.forms.attachments import AttachmentForm
from records.forms.seeds_once import SeedsOnceForm
from records.models import Planting


class SeedOfPlaceForm(forms.Form):
    seed_kg = MassField(
        label=gettext_lazy("Seed sown"),
        required=False,
        help_text=gettext_lazy("Leave empty to have it worked out from the rate."),
    )


@dataclass
class Entry:
    """An act as one page shows it: asked once, and of every place it may be about."""

    act: Act
    farm: Farm
    once: Any
    seeds: SeedsOnceForm | None
    rows: list[Any] = field(default_factory=list)

    @property
    def once_fields(self) -> list[Any]:
        return [self.once[name] for name in self.act.once]


def blank(
    act: Act, farm: Farm, found: Sequence[Any], *, options: Mapping[str, Any]
) -> Entry:
    """The page before anything is typed; ``options`` hold today and first guesses."""
    today, guess = options["today"], dict(options["initial"])
    once = act.noun.form(initial=guess, farm=farm, today=today)
    seeds = SeedsOnceForm(farm=farm, initial=guess) if act.sows else None
    made = Entry(act, farm, once, seeds)
    for place in found:
        row: Any = act.noun.form(farm=farm, today=today, prefix=f"at{place.pk}")
        made.rows.append(_row(act, farm, place, row))
    return made


def typed_again(entry: Entry, typed: QueryDict, sent: Sheet | None) -> Entry:
    """The page with what was typed, and what is wrong with it."""
    bound = {row.place.pk: row for row in sent.rows} if sent else {}
    if entry.seeds:
        entry.seeds = SeedsOnceForm(typed, farm=entry.farm)
    if sent:
        entry.once = sent.once
    rows = (bound.get(row.place.pk, row) for row in entry.rows)
    entry.rows = [_row(entry.act, entry.farm, row.place, row, typed) for row in rows]
    return entry


def _row(act: Act, farm: Farm, place: Any, row: Any, typed: Any = None) -> Any:
    row.place, row.asked = place, [row[name] for name in act.each]
    if act.sows:
        weight = SeedOfPlaceForm(typed, prefix=f"at{place.pk}")
        box: Any = weight.fields["seed_kg"]
        box.system = System(farm.units)
        row.asked.append(weight["seed_kg"])
    return row


def named_places(act: Act, farm: Farm, asked: Sequence[str]) -> list[Any]:
    """The places of an entry that are still there, whatever stands on them today."""
    numbers = [int(one) for one in asked if one.isdigit() and len(one) < 18]
    if act.place == "field":
        return list(Field.objects.on(farm).live().filter(pk__in=numbers))
    rows = Planting.objects.on(farm).live().filter(pk__in=numbers)
    sown = rows.filter(sown_on__isnull=False).select_related("field")
    return list(sown.prefetch_related("lines__kind"))


def filled(
    act: Act,
    farm: Farm,
    found: Sequence[Any],
    *,
    typed: QueryDict,
    key: uuid.UUID,
    today: Any,
) -> Sheet:
    """The sheet of an entry: every row gets a key that follows from the entry's."""
    data = typed.copy()
    for place in found:
        before = f"at{place.pk}"
        data[f"{before}-client_key"] = str(uuid.uuid5(key, f"{act.slug} {place.pk}"))
        if act.sows:
            _tell_seed(act, farm, place, data, before)
    return sheet(act, farm, found, today=today, typed=data)


def _tell_seed(act: Act, farm: Farm, place: Any, data: QueryDict, before: str) -> None:
    """Seed typed once goes to each place, by weight or by rate and area."""
    once = SeedsOnceForm(data, farm=farm)
    if not once.is_valid():
        return
    box: Any = SeedOfPlaceForm(data, prefix=before)
    box.fields["seed_kg"].system = System(farm.units)
    typed = data.get(f"{before}-seed_kg", "").strip()
    whole = box.cleaned_data.get("seed_kg") if box.is_valid() else None
    weights = once.weights(_area(act, farm, place, data, before), whole)
    for row, (number, share) in enumerate(once.shares().items()):
        line, weight = f"{before}-lines-{row}", weights.get(number)
        told = {
            "lot": data.get(f"lot{number}", ""),
            "kind": data.get(f"kind{number}", ""),
            "share": "" if share is None else f"{share * 100:.6g}",
            # A weight that cannot be read is told as it was typed.
            "seed_kg": f"{weight:.6g} kg" if weight else ("" if whole else typed),
        }
        for name, text in told.items():
            data[f"{line}-{name}"] = text


def _area(act: Act, farm: Farm, place: Any, data: QueryDict, before: str) -> float:
    box: Any = act.noun.form.base_fields["area_m2"]
    box = type(box)(required=False, system=System(farm.units))
    try:
        typed = box.clean(data.get(f"{before}-area_m2", ""))
    except ValidationError:
        typed = None
    return float(typed or place.area_m2)


def photographs(
    entry: Sheet, files: Mapping[str, Any], *, key: uuid.UUID, today: Any
) -> list[tuple[Any, AttachmentForm]]:
    """A form for each picture that came with a place, checked before all is written."""
    made = []
    for row in entry.rows:
        picture = files.get(f"photo{row.place.pk}")
        if picture is not None:
            told = {
                "shows": f"{entry.act.words}: {row.place}"[:200],
                "client_key": uuid.uuid5(key, f"photo {row.place.pk}"),
            }
            form = AttachmentForm(
                told, {"upload": picture}, row=row.instance, today=today
            )
            made.append((row, form))
    return made


def complaints(entry: Sheet) -> Iterator[str]:
    """What is wrong with a sheet, a sentence each."""
    for row in entry.rows:
        rows = getattr(row, "formsets", [])
        for form in (row, *(part for one in rows for part in one.forms)):
            for name, errors in form.errors.items():
                box = form.fields[name].label if name in form.fields else ""
                for error in errors:
                    yield complaint(str(row.place), str(box), str(error))


def complaint(place: str, box: str, error: str) -> str:
    told = {"place": place, "box": box, "error": error}
    if box:
        return _("%(place)s, %(box)s: %(error)s") % told
    return _("%(place)s: %(error)s") % told
