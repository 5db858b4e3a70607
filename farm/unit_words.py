"""The units of measures as they are said in the language of the page."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.units import Written

# Units that every grower writes alike (lb, ac, kg, ha, °F) are not among them.
# Whatever stands here can be typed into a form, too.
UNITS: Mapping[str, Promise] = {
    "ft": _("ft"),
    "in": _("in"),
    "mi": _("mi"),
    "yd": _("yd"),
    "sq ft": _("sq ft"),
    "per sq ft": _("per sq ft"),
    "per m²": _("per m²"),
    "oz/100 sq ft": _("oz/100 sq ft"),
    "hectares": _("hectares"),
    "sq m": _("sq m"),
    "sq yd": _("sq yd"),
    "sq in": _("sq in"),
    "cu yd": _("cu yd"),
    "cu ft": _("cu ft"),
}


def unit_said(unit: str) -> str:
    """Name a unit."""
    return str(UNITS.get(unit, unit))


def measure_said(measure: Written | str) -> str:
    """Write a number with its unit; what is in words already stays so."""
    if isinstance(measure, str):
        return measure
    return f"{measure.number} {unit_said(measure.unit)}"
