"""The form every record is entered by."""

from __future__ import annotations

import datetime as dt
import uuid
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any, ClassVar, Generic, TypeVar

from django import forms
from django.core.exceptions import NON_FIELD_ERRORS, ValidationError
from django.db import models
from django.utils.translation import gettext_lazy as _

from farm.forms.beside import box_of
from farm.forms.measures import MeasureField
from farm.models import Farm, Record, User
from farm.names import honest
from farm.units import System
from farm.writing import write

if TYPE_CHECKING:
    from django.forms import ModelChoiceField as ModelChoiceField
    from django.forms import ModelForm as ModelForm
else:

    class ModelForm(forms.ModelForm):
        """A model form that may be subscripted, as its type stubs have it."""

        def __class_getitem__(cls, item: object) -> type:
            return cls

    class ModelChoiceField(forms.ModelChoiceField):
        """Likewise."""

        def __class_getitem__(cls, item: object) -> type:
            return cls


R = TypeVar("R", bound=Record)

LINES = {forms.TextInput}
# Earlier days are slips of the pen.
OLDEST = dt.date(1900, 1, 1)
# Later ones too, or a year written for “no end”.
FARTHEST = dt.date(2199, 12, 31)


class DateInput(forms.DateInput):
    input_type = "date"

    def __init__(self, **options: Any) -> None:
        super().__init__(format="%Y-%m-%d", **options)


class RecordForm(ModelForm[R], Generic[R]):
    """One record of one farm: choices are the farm's own, dates are not ahead."""

    # Days that tell of what happened, and so cannot lie in the future.
    HAPPENED: ClassVar[Sequence[str]] = ()

    client_key = forms.UUIDField(widget=forms.HiddenInput, required=False)

    def __init__(
        self, data: Any = None, *, farm: Farm, today: dt.date, **options: Any
    ) -> None:
        super().__init__(data, **options)
        self.farm, self.today = farm, today
        self.instance.farm = farm
        self.fields["client_key"].initial = uuid.uuid4()
        if farm.is_read_by_crew and self.instance.pk:
            for name in self.instance.PRIVATE:
                self.fields.pop(name, None)
        for name, field in self.fields.items():
            self._fit(name, field)

    def _fit(self, name: str, field: forms.Field) -> None:
        """Make a field speak the farm's units and offer only the farm's rows."""
        if isinstance(field, MeasureField):
            field.system = System(self.farm.units)
            field.kept = self.initial.get(name)
        if hasattr(field, "told_in"):
            field.told_in(self.farm.currency)
        if isinstance(field, forms.ModelChoiceField):
            field.queryset = offered(field.queryset, self.farm)
        if isinstance(field.widget, forms.Textarea):
            field.widget.attrs["rows"] = min(3, int(field.widget.attrs["rows"]))
        if isinstance(field, forms.DateField):
            field.widget = DateInput(attrs=field.widget.attrs)
            field.widget.is_required = field.required

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or self.cleaned_data
        self._clean_lines(cleaned)
        for name in self.HAPPENED:
            day = cleaned.get(name)
            if day and day > self.today:
                self.add_error(name, _("This day is still to come."))
        for name, day in list(cleaned.items()):
            if isinstance(day, dt.date) and day < OLDEST:
                self.add_error(name, _("This day lies too far back."))
            if isinstance(day, dt.date) and day > FARTHEST:
                self.add_error(name, _("This day lies too far ahead."))
        return cleaned

    def _clean_lines(self, cleaned: dict[str, Any]) -> None:
        """Names and numbers without the marks that cannot be seen."""
        for name, text in list(cleaned.items()):
            field = self.fields.get(name)
            if isinstance(text, str) and type(getattr(field, "widget", 0)) in LINES:
                cleaned[name] = honest(text)
                if text and not cleaned[name]:
                    self.add_error(name, _("Write something that can be seen."))

    def _post_clean(self) -> None:
        super()._post_clean()  # type: ignore[misc]
        key = self.cleaned_data.get("client_key")
        if key and self.instance.pk is None:
            self.instance.client_key = key
        self._put_beside()

    def _put_beside(self) -> None:
        """Tell a broken rule of the table beside the box that it is about."""
        loose = self.errors.pop(NON_FIELD_ERRORS, None)
        boxes = [box.name for box in self.visible_fields()]
        for error in loose.as_data() if loose else ():
            self.add_error(box_of(error, self._meta.model, boxes), error)

    def _get_validation_exclusions(self) -> set[str]:
        # Set by us, yet rules that name them must still be checked.
        left_out: set[str] = super()._get_validation_exclusions()  # type: ignore[misc]
        return left_out - {"farm", "voided_at"}

    def sent_before(self) -> R | None:
        """The record made already when this very page was sent the first time."""
        try:
            key = uuid.UUID(self.data.get(self.add_prefix("client_key"), ""))
        except ValueError:
            return None
        if self.instance.pk is not None:
            return None
        rows: models.Manager[Any] = self._meta.model._default_manager
        sent: R | None = rows.filter(farm=self.farm, client_key=key).first()
        return sent

    def parts(self) -> Mapping[str, Sequence[models.Model]]:
        """Rows that belong to the record, by related name."""
        return {}

    def record(self, *, by: User, now: dt.datetime) -> R:
        """Write the record down."""
        return write(self.instance, by=by, now=now, parts=self.parts())


def offered(rows: Any, farm: Farm) -> Any:
    """The rows of a choice that this farm may pick."""
    if hasattr(rows, "open_to"):
        return rows.open_to(farm).order_by("name")
    return rows.on(farm).live()


def refuse(message: Any, **params: Any) -> ValidationError:
    """A message with its values, ready to raise."""
    return ValidationError(message, params=params)
