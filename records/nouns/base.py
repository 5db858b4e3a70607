"""What a noun is: a form, a list, and who may write it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _
from django_filters import FilterSet

from farm.access import WRITERS
from farm.forms import RecordForm
from farm.models import Record, Role
from records.models import Planting

Told = Callable[[Any], Any]


@dataclass(frozen=True)
class Column:
    """One column of a list: what it is called, what it shows, how it is measured."""

    label: str | Promise
    told: Told
    measure: str = ""


@dataclass(frozen=True)
class Noun:
    slug: str
    model: type[Record]
    form: type[RecordForm[Any]]
    filter: type[FilterSet]
    columns: tuple[Column, ...]
    order: tuple[str, ...]
    related: tuple[str, ...] = ()
    prefetch: tuple[str, ...] = ()
    # Adds to the rows what the list shows and the table does not hold.
    reckoned: Told = lambda rows: rows
    writers: frozenset[Role] = field(default=WRITERS)
    cautions: tuple[str, ...] = ()
    # Named address where a new one begins, when that is not a form of its own.
    begins_at: str = ""
    # What that address must hand over before the form of one's own can open.
    begins_with: str = ""

    @property
    def title(self) -> str:
        return str(self.model._meta.verbose_name)

    @property
    def titles(self) -> str:
        return str(self.model._meta.verbose_name_plural)

    def rows(self) -> Any:
        """Every row with what its list shows, in a fixed number of queries."""
        rows = self.reckoned(self.model._default_manager.all())
        return rows.select_related("farm", *self.related).prefetch_related(
            *self.prefetch
        )


def kinds_of(planting: Planting) -> str:
    return " + ".join(str(line.kind) for line in planting.lines.all())


def start_of(planting: Planting) -> Any:
    return planting.sown_on or planting.planned_on


PLANTING = Column(_("planting"), lambda row: row.planting.field)
WHAT = Column(_("kind"), lambda row: kinds_of(row.planting))
AREA = Column(_("area"), lambda row: row.area_m2, "area")
