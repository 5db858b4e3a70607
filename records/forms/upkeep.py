"""Counts, clean-outs, incidents and training."""

from __future__ import annotations

from typing import Any, ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import FoundMassField
from records.models import CleanOut, Incident, StockCount, Training

TALL: dict[str, int] = {"rows": 3}


class StockCountForm(RecordForm[StockCount]):
    HAPPENED = ("counted_on",)

    mass_kg = FoundMassField(
        label=_("Weight found"), help_text=_("“0” where nothing is left.")
    )

    class Meta:
        model = StockCount
        fields = [
            "counted_on",
            "seed_lot",
            "harvest_lot",
            "product",
            "mass_kg",
            "done_by",
            "notes",
        ]


class CleanOutForm(RecordForm[CleanOut]):
    HAPPENED = ("cleaned_on",)

    class Meta:
        model = CleanOut
        fields = [
            "equipment",
            "cleaned_on",
            "held_before",
            "method",
            "done_by",
            "notes",
        ]


class IncidentForm(RecordForm[Incident]):
    HAPPENED = ("noticed_on",)

    class Meta:
        model = Incident
        fields = [
            "noticed_on",
            "what",
            "field",
            "account",
            "done_about_it",
            "told_to",
            "done_by",
            "notes",
        ]
        widgets: ClassVar = {
            "account": forms.Textarea(attrs=TALL),
            "done_about_it": forms.Textarea(attrs=TALL),
        }


class TrainingForm(RecordForm[Training]):
    HAPPENED = ("trained_on",)

    class Meta:
        model = Training
        fields = [
            "trained_on",
            "person",
            "subject",
            "topic",
            "trainer",
            "valid_until",
            "notes",
        ]
        help_texts: ClassVar = {
            "person": _("As it is written under “done by”."),
            "valid_until": _("Where it runs out on another day than a rule says."),
        }

    def __init__(self, data: Any = None, **options: Any) -> None:
        super().__init__(data, **options)
        if self.instance.pk is None:
            # Rules go by it, so it is chosen and not left as it came.
            self.initial["subject"] = ""
            subject: Any = self.fields["subject"]
            subject.choices = [("", "—"), *Training.Subject.choices]
