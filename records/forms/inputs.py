"""Input products, and putting them on."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.core.validators import MaxValueValidator
from django.utils.translation import gettext_lazy as _

from farm import units
from farm.forms.base import RecordForm
from farm.forms.measures import AreaField, misread
from farm.units import System, Trouble, UnitError
from records.forms.choices import PlantingChoice
from records.models import Application, InputProduct, Planting

# Units a weight or a volume may be typed in.
AMOUNTS = "lb, oz, ton, kg, g, gal, qt, L"


class AmountField(forms.Field):
    """A weight or a volume as typed; says which of the two it was."""

    def to_python(self, value: Any) -> Any:
        text = str(value or "").strip()
        if not text:
            return None
        try:
            return Application.Measure.MASS, units.parse_mass(text)
        except UnitError as as_mass:
            if as_mass.reason is not Trouble.UNKNOWN_UNIT:
                raise misread(as_mass, text, AMOUNTS) from as_mass
        try:
            return Application.Measure.VOLUME, units.parse_volume(text)
        except UnitError as as_volume:
            raise misread(as_volume, text, AMOUNTS) from as_volume

    def has_changed(self, initial: Any, data: Any) -> bool:
        # Held against the text that was shown, not against what it means.
        return str(initial or "").strip() != str(data or "").strip()


class InputProductForm(RecordForm[InputProduct]):
    # No label asks for more than a year, or ten: what is above is a slip of the pen.
    LONGEST: ClassVar = {"reentry_hours": 8784, "preharvest_days": 3660}

    def __init__(self, data: Any = None, **options: Any) -> None:
        super().__init__(data, **options)
        for name, most in self.LONGEST.items():
            self.fields[name].validators.append(MaxValueValidator(most))

    class Meta:
        model = InputProduct
        fields = [
            "name",
            "maker",
            "type",
            "nitrogen_percent",
            "phosphate_percent",
            "potash_percent",
            "approval",
            "approved_on",
            "approved_until",
            "restricted_use",
            "registration",
            "reentry_hours",
            "preharvest_days",
            "plant_back_months",
            "notes",
        ]


class ApplicationForm(RecordForm[Application]):
    HAPPENED = ("applied_on", "worked_in_on")

    area_m2 = AreaField(
        label=_("Area"), required=False, help_text=_("Leave empty for the whole field.")
    )
    planting = PlantingChoice(label=_("Planting"), required=False)
    amount = AmountField(
        label=_("Amount"), help_text=_("A weight or a volume, such as 400 lb or 3 gal.")
    )

    class Meta:
        model = Application
        fields = [
            "product",
            "product_lot",
            "field",
            "planting",
            "area_m2",
            "amount",
            "applied_on",
            "started_at",
            "finished_at",
            "method",
            "applicator_licence",
            "target",
            "weather",
            "equipment",
            "worked_in_on",
            "posted_on",
            "posted_time",
            "done_by",
            "notes",
        ]
        widgets: ClassVar = {
            "started_at": forms.TimeInput(attrs={"type": "time"}),
            "finished_at": forms.TimeInput(attrs={"type": "time"}),
            "posted_time": forms.TimeInput(attrs={"type": "time"}),
        }
        help_texts: ClassVar = {
            "applicator_licence": _(
                "Its number. For restricted use it is held against the licences "
                "written down."
            ),
        }

    field_order = Meta.fields

    def __init__(self, data: Any = None, **options: Any) -> None:
        row, farm = options.get("instance"), options["farm"]
        if row is not None and row.pk:
            typed = amount_text(row, System(farm.units))
            options["initial"] = {"amount": typed, **(options.get("initial") or {})}
        super().__init__(data, **options)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        field, area = cleaned.get("field"), cleaned.get("area_m2")
        if field and area is None and "area_m2" not in self.errors:
            cleaned["area_m2"] = area = field.area_m2
        if field and area and area > field.area_m2 * 1.005:
            self.add_error("area_m2", _("This is more than the field has."))
        planting: Planting | None = cleaned.get("planting")
        if planting and field and planting.field_id != field.pk:
            self.add_error("planting", _("This planting is on another field."))
        day, worked = cleaned.get("applied_on"), cleaned.get("worked_in_on")
        if day and worked and worked < day:
            self.add_error("worked_in_on", _("It was worked in before it was applied."))
        if cleaned.get("amount"):
            self.instance.measure, self.instance.amount_si = self._amount(cleaned)
        return cleaned

    def _amount(self, cleaned: dict[str, Any]) -> tuple[str, float]:
        """Untouched text keeps the exact amount that was written down."""
        row = self.instance
        if row.pk and "amount" not in self.changed_data:
            return row.measure, row.amount_si
        measure, amount = cleaned["amount"]
        return measure, amount


def amount_text(row: Application, system: System) -> str:
    """The amount as it reads in the farm's units."""
    if row.measure == Application.Measure.VOLUME:
        return str(units.write_volume(row.amount_si, system))
    return str(units.write_mass(row.amount_si, system))
