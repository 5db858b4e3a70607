"""What is written down of something new, or of something no longer used."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.utils.translation import gettext as _
from django.utils.translation import ngettext_lazy

from farm import units
from farm.models import Field
from farm.templatetags.days import day_said
from farm.unit_words import measure_said
from farm.units import System
from reports.calc.shapes.changes import Part, Use

SOWN: Any = ngettext_lazy("%(n)d planting", "%(n)d plantings", "n")
COUNTED: Mapping[Part, Any] = {
    Part.LAND: SOWN,
    Part.KINDS: SOWN,
    Part.SOWINGS: SOWN,
    Part.INPUTS: ngettext_lazy("%(n)d application", "%(n)d applications", "n"),
    Part.ENDINGS: ngettext_lazy("%(n)d stand ended", "%(n)d stands ended", "n"),
    Part.SHEETS: ngettext_lazy("laid once", "laid %(n)d times", "n"),
    Part.SUPPLIERS: ngettext_lazy("%(n)d seed lot", "%(n)d seed lots", "n"),
    Part.PEOPLE: ngettext_lazy("%(n)d record", "%(n)d records", "n"),
}


def use_said(part: Part, use: Use, system: System) -> str:
    """How often, how much in all, and from which day, or since when a status holds."""
    first, much = whole(day_said(use.first, "j M Y")), ", ".join(_measures(use, system))
    if part is Part.STATUS:
        status = Field.Status(use.status).label
        told = _("%(status)s since %(day)s") % {"status": status, "day": first}
        return f"{told}; {much}" if much else told
    times = str(COUNTED[part] % {"n": use.times})
    began = _("first on %(day)s") if use.times > 1 else _("on %(day)s")
    return "; ".join(filter(None, (f"{times}, {began % {'day': first}}", much)))


def _measures(use: Use, system: System) -> list[str]:
    """Area, mass and volume where there is one."""
    told = (
        (use.area_m2, units.write_area),
        (use.mass_kg, units.write_mass),
        (use.volume_m3, units.write_volume),
    )
    return [whole(measure_said(write(value, system))) for value, write in told if value]


def whole(words: str) -> str:
    """A number and its unit stay on one line."""
    return words.replace(" ", "\N{NO-BREAK SPACE}")
