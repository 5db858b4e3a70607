"""Suppliers, contractors, machines and stores."""

from __future__ import annotations

from typing import ClassVar

from django import forms
from django.utils.translation import gettext_lazy as _

from farm.forms.base import RecordForm
from farm.forms.measures import LengthField
from records.forms.money import MoneyByWeightField, MoneyField
from records.models import Equipment, Supplier


class SupplierForm(RecordForm[Supplier]):
    HAPPENED = ("verified_on",)

    freight = MoneyField(label=_("Freight for an order"), required=False)
    freight_by_weight = MoneyByWeightField(label=_("Freight by weight"), required=False)
    least_order = MoneyField(label=_("Least order, money"), required=False)

    class Meta:
        model = Supplier
        fields = [
            "name",
            "part",
            "address",
            "certificate",
            "certificate_until",
            "verified_on",
            "verified_how",
            "licence",
            "freight",
            "freight_by_weight",
            "least_order",
            "notes",
        ]
        widgets: ClassVar = {"address": forms.Textarea(attrs={"rows": 3})}
        help_texts: ClassVar = {
            "licence": _("The days it holds are kept among applicators’ licences."),
        }


class EquipmentForm(RecordForm[Equipment]):
    width_m = LengthField(label=_("Working width"), required=False)
    row_width_m = LengthField(label=_("Row spacing"), required=False)

    class Meta:
        model = Equipment
        fields = ["name", "part", "width_m", "row_width_m", "rows", "setting", "notes"]
