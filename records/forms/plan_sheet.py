"""The season plan as a sheet: a row a planting, moved, copied and saved together."""

from __future__ import annotations

import contextlib
import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

from django import forms
from django.db import transaction
from django.utils.formats import date_format
from django.utils.translation import gettext_lazy as _

from farm.models import Farm, Field, User
from farm.writing import write
from records.forms.plans import MOST_ROWS, PlanForm
from records.mixing import Mix, MixError, mix_of, written
from records.models import Kind, Planting, SeedLine
from records.planning import plan

BLANK_ROWS = 3
Names = Mapping[str, Mapping[str, str]]
WEEK = dt.timedelta(days=7)
ASKED = ("field", "kind", "mix", "planned_on", "area_m2", "method")


class PlanRow(PlanForm):
    """One row: a plan already written down, or a new one; empty rows are left out."""

    planting = forms.IntegerField(widget=forms.HiddenInput, required=False)
    pick = forms.BooleanField(label=_("Pick"), required=False)
    mix = forms.CharField(
        label=_("Or a mix"),
        required=False,
        max_length=300,
        help_text=_("Kinds with their shares: Oats 60 + Field pea 40."),
    )

    def __init__(self, *args: Any, names: Names, **options: Any) -> None:
        super().__init__(*args, **options)
        self.names = names
        self.fields["kind"].required = False
        for name in set(self.fields) - {*ASKED, "planting", "pick", "client_key"}:
            del self.fields[name]

    def clean_mix(self) -> Mix:
        text = self.cleaned_data["mix"].strip()
        try:
            return mix_of(text, self.farm) if text else ()
        except MixError as error:
            raise forms.ValidationError(str(error)) from None

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        kind, mix = cleaned.get("kind"), cleaned.get("mix")
        if "kind" in self.errors or "mix" in self.errors:
            return cleaned
        if kind and mix:
            self.add_error("mix", _("Choose one kind or write a mix, not both."))
        elif mix:
            cleaned["kind"] = mix[0][0]
        elif not kind:
            self.add_error("kind", _("Choose a kind, or write a mix."))
        return cleaned

    @property
    def asked(self) -> list[Any]:
        return [self[name] for name in ASKED]

    @property
    def gist(self) -> str:
        """Where, what and when in one line, as far as the row says it."""
        told = {name: self[name].value() for name in ("field", "kind", "mix")}
        named = [self.names[name].get(str(told[name])) for name in ("field", "kind")]
        on = self["planned_on"].value()
        with contextlib.suppress(ValueError):
            on = dt.date.fromisoformat(on) if isinstance(on, str) else on
        day = date_format(on, "j M Y") if isinstance(on, dt.date) else on
        return " · ".join(one for one in (*named, told["mix"], day) if one)

    @property
    def kept(self) -> Planting | None:
        """The plan a row stands for, while nobody has sown it."""
        pk = self.cleaned_data.get("planting")
        rows = Planting.objects.on(self.farm).live().filter(sown_on=None)
        return rows.filter(pk=pk).first() if pk else None

    def record(self, *, by: User, now: dt.datetime) -> Planting:
        kept, told = self.kept, self.planned()
        if kept is None:
            return plan([told], self.farm, by=by, now=now)[0]
        kept.field, kept.area_m2 = told.field, told.area_m2
        kept.planned_on, kept.method = told.planned_on, told.method
        # A kind that stays keeps what else is known of it, its lot and its weight.
        before = {line.kind_id: line for line in kept.lines.order_by("pk")}
        lines = []
        for kind, share in told.kinds:
            line = before.get(kind.pk) or SeedLine(kind=kind)
            line.share = share
            lines.append(line)
        return write(kept, by=by, now=now, parts={"lines": lines})


Rows = forms.formset_factory(
    PlanRow, extra=BLANK_ROWS, max_num=MOST_ROWS, absolute_max=2 * MOST_ROWS
)


def sheet(farm: Farm, *, today: dt.date, **options: Any) -> Any:
    """The rows, blank, filled or as typed."""
    kwargs: dict[str, Any] = {"use_required_attribute": False, "empty_permitted": True}
    kwargs |= {"farm": farm, "today": today}
    kwargs["names"] = {
        "field": {str(row.pk): row.name for row in Field.objects.on(farm)},
        "kind": {str(row.pk): str(row) for row in Kind.objects.open_to(farm)},
    }
    return Rows(prefix="rows", form_kwargs=kwargs, **options)


def save(rows: Any, *, by: User, now: dt.datetime) -> int:
    """Write every filled row down, or none; returns how many."""
    with transaction.atomic():
        filled = [row for row in rows if row.has_changed() and row.cleaned_data]
        for row in filled:
            row.record(by=by, now=now)
    return len(filled)


def planned_rows(farm: Farm, year: int) -> Iterator[Mapping[str, Any]]:
    """The season's plans nobody has sown yet."""
    rows = _of_season(farm, year).filter(sown_on=None).order_by("planned_on", "pk")
    for row in rows:
        yield {"planting": row.pk, **_told(row, row.planned_on)}


def copied_rows(farm: Farm, year: int) -> Iterator[Mapping[str, Any]]:
    """Last season's covers, mixes too, a year later to the week."""
    rows = _of_season(farm, year - 1).exclude(purpose=Planting.Purpose.CASH)
    for row in rows.order_by("sown_on", "planned_on", "pk"):
        yield _told(row, (row.sown_on or row.planned_on) + 52 * WEEK)


def _of_season(farm: Farm, year: int) -> Any:
    first, last = farm.season(year)
    rows: Any = Planting.objects.on(farm).live().prefetch_related("lines__kind")
    from_plans = rows.filter(sown_on=None, planned_on__range=(first, last))
    return from_plans | rows.filter(sown_on__range=(first, last))


def _told(row: Planting, on: dt.date) -> Mapping[str, Any]:
    lines = sorted(row.lines.all(), key=lambda line: line.pk)
    alone = lines[0].kind_id if len(lines) == 1 else None
    mix = [(line.kind, line.share) for line in lines]
    return {
        "field": row.field_id,
        "kind": alone,
        "mix": "" if alone else written(mix),
        "planned_on": on,
        "area_m2": row.area_m2,
        "method": row.method,
    }


def moved(typed: Any, days: int) -> Any:
    """What was typed, with the days of the picked rows moved."""
    data = typed.copy()
    for name in typed:
        row, _dash, part = name.rpartition("-")
        if part == "planned_on" and data.get(f"{row}-pick"):
            data[name] = _later(data[name], days)
    return data


def _later(text: str, days: int) -> str:
    try:
        return str(dt.date.fromisoformat(text) + dt.timedelta(days=days))
    except (ValueError, OverflowError):
        return text


def with_more(typed: Any) -> Any:
    """What was typed, with room for more rows."""
    data = typed.copy()
    count = data.get("rows-TOTAL_FORMS", "0")
    rows = int(count) if count.isdigit() else 0
    data["rows-TOTAL_FORMS"] = str(min(rows + BLANK_ROWS, MOST_ROWS))
    return data
