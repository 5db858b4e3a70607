"""Kinds of the farm's own, and figures that overrule the catalogue's."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import ModelForm, RecordForm
from farm.models import Farm
from records.figures import YES_NO
from records.models import FarmFigure, Kind

ANSWERS = [("1.0", _("yes")), ("0.0", _("no"))]


class KindForm(ModelForm[Kind]):
    class Meta:
        model = Kind
        fields = ["name", "name_es", "botanical", "family", "use", "group", "season"]

    def __init__(self, data: Any = None, *, farm: Farm, **options: Any) -> None:
        super().__init__(data, **options)
        self.farm = farm

    def clean_name(self) -> str:
        name: str = self.cleaned_data["name"].strip()
        others = Kind.objects.open_to(self.farm).exclude(pk=self.instance.pk)
        if others.filter(name__iexact=name).exists():
            raise forms.ValidationError(_("The list already has this kind."))
        return name


class FarmFigureForm(RecordForm[FarmFigure]):
    """A figure of the farm's own: attribute, stage and unit come from the kind."""

    class Meta:
        model = FarmFigure
        fields = ["low", "high", "reason"]

    def __init__(self, data: Any = None, *, kind: Kind, **options: Any) -> None:
        super().__init__(data, **options)
        self.instance.kind = kind
        if self.instance.unit == YES_NO:
            del self.fields["high"]
            self.fields["low"] = forms.TypedChoiceField(
                label=_("What holds"), choices=ANSWERS, coerce=float
            )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if self.instance.unit == YES_NO and "low" in cleaned:
            self.instance.high = cleaned["low"]
        low, high = cleaned.get("low"), cleaned.get("high")
        if low is not None and high is not None and high < low:
            self.add_error("high", _("The second figure is below the first."))
        return cleaned
