"""What a noun is: a form, a list, and who may write it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from django.db.models import F
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from farm.access import EVERYONE, WRITERS
from farm.forms import RecordForm
from farm.models import Farm, Record, Role
from records.filters.base import RecordFilter
from records.models import Planting

Told = Callable[[Any], Any]


@dataclass(frozen=True)
class Column:
    """One column of a list: what it is called, what it shows, how it is measured."""

    label: str | Promise
    # A field by its name, or what a function makes of the row.
    told: str | Told
    measure: str = ""
    # By what rows are put in this column's order, where its name does not tell.
    by: str = ""

    def tell(self, row: Any) -> Any:
        if not isinstance(self.told, str):
            return self.told(row)
        said = getattr(row, f"get_{self.told}_display", None)
        return said() if said else getattr(row, self.told)

    @property
    def path(self) -> str:
        """By what the database can sort, or nothing where it cannot."""
        return self.by or (self.told if isinstance(self.told, str) else "")


@dataclass(frozen=True)
class Noun:
    slug: str
    model: type[Record]
    form: type[RecordForm[Any]]
    filter: type[RecordFilter]
    columns: tuple[Column, ...]
    order: tuple[str, ...]
    related: tuple[str, ...] = ()
    prefetch: tuple[str, ...] = ()
    # Adds to the rows what the list shows and the table does not hold.
    reckoned: Told = lambda rows: rows
    writers: frozenset[Role] = field(default=WRITERS)
    readers: frozenset[Role] = field(default=EVERYONE)
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

    @property
    def paths(self) -> dict[str, str]:
        """What a list can be sorted by: the label of each column by its path."""
        return {one.path: str(one.label) for one in self.columns if one.path}

    def narrowed(self, asked: Any, farm: Farm, rows: Any) -> Any:
        """Rows as they are asked for, with the form that asks."""
        return self.filter(asked, farm=farm, queryset=rows, sorts=self.paths)

    def in_order(self, narrowed: Any) -> Any:
        """Its rows by the column asked for, and as this noun is told else."""
        rows = narrowed.qs
        asked = narrowed.form.cleaned_data.get("sort")
        return rows.order_by(*sorted_by(asked), *self.order)


def sorted_by(asked: str | None) -> list[Any]:
    """Whatever a row does not tell comes last, both ways."""
    if not asked:
        return []
    path = F(asked.removeprefix("-"))
    falls = asked.startswith("-")
    return [path.desc(nulls_last=True) if falls else path.asc(nulls_last=True)]


def kinds_of(planting: Planting) -> str:
    return " + ".join(str(line.kind) for line in planting.lines.all())


def start_of(planting: Planting) -> Any:
    return planting.sown_on or planting.planned_on


PLANTING = Column(
    _("planting"), lambda row: row.planting.field, by="planting__field__name"
)
WHAT = Column(_("kind"), lambda row: kinds_of(row.planting))
AREA = Column(_("area"), "area_m2", "area")
