"""Form fields that read what people type with a unit, and keep SI."""

from __future__ import annotations

from functools import partial
from typing import Any, ClassVar

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from farm import units
from farm.unit_words import measure_said, unit_said
from farm.units import System, Trouble, UnitError

# Sentences for each way a measure can be misread.
TROUBLES = {
    Trouble.NO_NUMBER: _("No number was found in “%(rest)s”."),
    Trouble.NO_UNIT: _("“%(understood)s” has no unit. Add one of: %(known)s."),
    Trouble.UNKNOWN_UNIT: _(
        "“%(understood)s” was understood, “%(rest)s” is not a unit used here. "
        "Use one of: %(known)s."
    ),
    Trouble.NOT_UNDERSTOOD: _(
        "“%(understood)s” was understood, but not “%(rest)s” after it."
    ),
    Trouble.NOT_POSITIVE: _("It must be more than nothing; “%(understood)s” is not."),
    Trouble.NEGATIVE: _("It cannot be less than nothing; “%(understood)s” is."),
    Trouble.NO_AREA: _(
        "“%(understood)s” does not say on how much land. Write it like 50 lb/ac."
    ),
    Trouble.AMBIGUOUS_NUMBER: _(
        "“%(rest)s” can be read in two ways. Write it without the thousands mark."
    ),
    Trouble.TOO_LONG: _("This is too long to be a measure."),
    Trouble.TOO_LARGE: _("“%(understood)s” is larger than any farm."),
}
MOST_LETTERS = 60
OTHER_TROUBLE = _("“%(understood)s” could not be read.")


class MeasureField(forms.Field):
    """Typed text with a unit, as SI; what was typed stays in the box."""

    read: ClassVar[Any]
    written: ClassVar[Any]
    default_units: ClassVar[dict[System, str]]

    def __init__(self, *, system: System = System.US, **options: Any) -> None:
        self.system = system
        self.kept: float | None = None
        super().__init__(**options)
        self.widget.attrs.setdefault("autocomplete", "off")
        self.widget.attrs.setdefault("maxlength", MOST_LETTERS)

    def prepare_value(self, value: Any) -> Any:
        if isinstance(value, (int, float)):
            return measure_said(type(self).written(float(value), self.system))
        return value

    def to_python(self, value: Any) -> Any:
        text = str(value or "").strip()
        if not text:
            return None
        if self.kept is not None and text == self.prepare_value(self.kept):
            # Untouched: rounding for show must not change what was written down.
            return self.kept
        try:
            default = self.default_units[self.system]
            return type(self).read(text, default_unit=default)
        except UnitError as error:
            raise misread(error, text) from error


def misread(error: UnitError, text: str, known: str = "") -> ValidationError:
    """What of a measure was understood, what was not, and what could stand there."""
    params = {
        "understood": error.understood or text,
        "rest": error.rest or text,
        "known": known or ", ".join(map(unit_said, error.known[:12])),
    }
    message = TROUBLES.get(error.reason, OTHER_TROUBLE)
    return ValidationError(message, code=error.reason.value, params=params)


class AreaField(MeasureField):
    read = staticmethod(units.parse_area)
    written = staticmethod(units.write_area)
    default_units: ClassVar = {System.US: "ac", System.METRIC: "ha"}


class LengthField(MeasureField):
    read = staticmethod(units.parse_length)
    written = staticmethod(units.write_length)
    default_units: ClassVar = {System.US: "ft", System.METRIC: "m"}


class DepthField(MeasureField):
    read = staticmethod(units.parse_depth)
    written = staticmethod(units.write_depth)
    default_units: ClassVar = {System.US: "in", System.METRIC: "cm"}


class MassField(MeasureField):
    read = staticmethod(units.parse_mass)
    written = staticmethod(units.write_mass)
    default_units: ClassVar = {System.US: "lb", System.METRIC: "kg"}


class FoundMassField(MassField):
    """What was weighed of a stock, which may be nothing."""

    read = staticmethod(partial(units.parse_mass, zero_ok=True))


class RateField(MeasureField):
    read = staticmethod(units.parse_rate)
    written = staticmethod(units.write_rate)
    default_units: ClassVar = {System.US: "lb/ac", System.METRIC: "kg/ha"}


class RainField(MeasureField):
    read = staticmethod(units.parse_rain)
    written = staticmethod(units.write_rain)
    default_units: ClassVar = {System.US: "in", System.METRIC: "mm"}


class TempField(MeasureField):
    read = staticmethod(units.parse_temp)
    written = staticmethod(units.write_temp)
    default_units: ClassVar = {System.US: "F", System.METRIC: "C"}


class PercentField(forms.DecimalField):
    """A percentage as typed, a share of one as kept."""

    def __init__(self, **options: Any) -> None:
        options.setdefault("min_value", 0)
        options.setdefault("max_value", 100)
        super().__init__(**options)

    def prepare_value(self, value: Any) -> Any:
        if isinstance(value, float):
            return f"{value * 100:.6f}".rstrip("0").rstrip(".")
        return value

    def to_python(self, value: Any) -> Any:
        text = str(value).strip().removesuffix("%").strip() if value else value
        return super().to_python(text)

    def clean(self, value: Any) -> Any:
        percent = super().clean(value)
        return None if percent is None else float(percent) / 100
