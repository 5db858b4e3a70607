"""Forms with rows under them: the lines of a mix, the frames of a sample."""

from __future__ import annotations

from typing import Any, ClassVar, TypeVar

from django import forms
from django.db import models
from django.forms.formsets import BaseFormSet

from farm.forms.base import RecordForm, offered
from farm.forms.measures import MeasureField
from farm.models import Farm, Record
from farm.units import System

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
            if isinstance(field, forms.ModelChoiceField):
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

    def __init__(self, data: Any = None, *, farm: Farm, **options: Any) -> None:
        super().__init__(data, farm=farm, **options)
        kept = []
        if self.instance.pk:
            kept = [
                self.as_initial(row)
                for row in getattr(self.instance, self.RELATED).order_by("pk")
            ]
        self.rows = self.ROWS(
            data,
            prefix=self.add_prefix(self.RELATED),
            initial=kept or (options.get("initial") or {}).get(self.RELATED),
            form_kwargs={"farm": farm},
        )

    def as_initial(self, row: Any) -> dict[str, Any]:
        """What the boxes of a kept row show."""
        raise NotImplementedError

    def is_valid(self) -> bool:
        rows_are_valid = self.rows.is_valid()
        return super().is_valid() and rows_are_valid and self.rows_fit()

    def rows_fit(self) -> bool:
        """Check what the rows say together, once each is sound."""
        return True

    def filled(self) -> list[RowForm]:
        return [form for form in self.rows.forms if form.is_filled]

    def parts(self) -> dict[str, list[models.Model]]:
        return {self.RELATED: [form.row() for form in self.filled()]}
