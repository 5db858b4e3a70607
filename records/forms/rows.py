"""Forms with rows under them: the lines of a mix, the frames of a sample."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, ClassVar, TypeVar

from django import forms
from django.db import models
from django.forms.formsets import BaseFormSet

from farm.forms.base import RecordForm, offered
from farm.forms.measures import MeasureField
from farm.models import Farm, Record
from farm.units import System
from records.forms.lots import LotChoice

R = TypeVar("R", bound=Record)


class RowForm(forms.Form):
    """One row; a row left empty is no row."""

    def __init__(self, *args: Any, farm: Farm, **options: Any) -> None:
        super().__init__(*args, **options)
        self.farm = farm
        for name, field in self.fields.items():
            if isinstance(field, MeasureField):
                field.system = System(farm.units)
                field.kept = self.initial.get(name)
            if hasattr(field, "told_in"):
                field.told_in(farm.currency)
            if isinstance(field, LotChoice):
                field.of_farm(farm, self[name].value())
            elif isinstance(field, forms.ModelChoiceField):
                field.queryset = offered(field.queryset, farm)

    def row(self) -> models.Model:
        """The row to be kept."""
        raise NotImplementedError

    @property
    def is_filled(self) -> bool:
        return any(
            value not in (None, "")
            for value in getattr(self, "cleaned_data", {}).values()
        )


class RowsForm(RecordForm[R]):
    """A record with rows of its own, checked and kept together with it."""

    ROWS: ClassVar[type[BaseFormSet[Any]]]
    RELATED: ClassVar[str]
    # Further rows that a form may leave out of what it sends, by related name.
    MORE: ClassVar[Mapping[str, type[BaseFormSet[Any]]]] = {}

    def __init__(self, data: Any = None, *, farm: Farm, **options: Any) -> None:
        super().__init__(data, farm=farm, **options)
        guess = options.get("initial") or {}
        self.rows = self._rows(self.RELATED, self.ROWS, data, guess)
        self.more = {
            name: self._rows(name, made, with_counts(data, name), guess)
            for name, made in self.MORE.items()
        }

    def _rows(
        self, name: str, made: type[BaseFormSet[Any]], data: Any, guess: Any
    ) -> BaseFormSet[Any]:
        kept = []
        if self.instance.pk:
            rows = getattr(self.instance, name).order_by("pk")
            kept = [self.as_initial(row) for row in rows]
        return made(
            data,
            prefix=self.add_prefix(name),
            initial=kept or guess.get(name),
            form_kwargs={"farm": self.farm},
        )

    def as_initial(self, row: Any) -> dict[str, Any]:
        """What the boxes of a kept row show."""
        raise NotImplementedError

    def is_valid(self) -> bool:
        # Every set is looked at, so that all that is wrong is said at once.
        checked = [rows.is_valid() for rows in self.formsets]
        return super().is_valid() and all(checked) and self.rows_fit()

    @property
    def formsets(self) -> list[BaseFormSet[Any]]:
        """Every set of rows, in the order of the record's parts."""
        return [self.rows, *self.more.values()]

    @property
    def rows_are_sound(self) -> bool:
        return not any(row.errors for rows in self.formsets for row in rows.forms)

    def rows_fit(self) -> bool:
        """Check what the rows say together, once each is sound."""
        return True

    def filled(self, name: str = "") -> list[RowForm]:
        rows = self.more[name] if name else self.rows
        return [form for form in rows.forms if form.is_filled]

    def parts(self) -> dict[str, list[models.Model]]:
        told = {self.RELATED: self.filled()}
        told |= {name: self.filled(name) for name in self.more}
        return {name: [form.row() for form in rows] for name, rows in told.items()}


def with_counts(data: Any, name: str) -> Any:
    """What was sent; of rows left out of it, that there are none."""
    if data is None or f"{name}-TOTAL_FORMS" in data:
        return data
    sent = data.copy()
    sent.update({f"{name}-TOTAL_FORMS": "0", f"{name}-INITIAL_FORMS": "0"})
    return sent
