"""Reading rows of the years that matter, and noting each as an entry."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from farm.models import Farm, Record
from records.nouns import BY_MODEL
from reports.calc.shapes.books import Entry
from reports.ledger.dossier.kinds import Flags, flags_of


@dataclass
class Reading:
    """One farm, the days read, and the entries noted on the way."""

    farm: Farm
    since: dt.date
    until: dt.date
    entries: list[Entry] = field(default_factory=list)
    nouns: dict[str, tuple[str, str]] = field(default_factory=dict)

    @cached_property
    def flags(self) -> Flags:
        """What is said of kinds by yes or no."""
        return flags_of(self.farm)

    def live(self, model: type[Record]) -> Any:
        """Rows that stand, whatever their day."""
        rows: Any = model._default_manager
        return rows.on(self.farm).live().order_by("pk")

    def dated(self, model: type[Record]) -> Any:
        """Rows that stand and happened within the days read."""
        days = {f"{model.DATE_FIELD}__range": (self.since, self.until)}
        return self.live(model).filter(**days)

    def note(self, row: Any, label: str, field_id: int | None = None) -> None:
        """Note when a row happened and when it was written down."""
        if row.happened_on is None:
            return
        slug, title = self._noun(row._meta.model_name)
        self.entries.append(
            Entry(
                noun=slug,
                id=row.pk,
                label=f"{title}: {label}",
                on=row.happened_on,
                written_on=self.written_on(row),
                done_by=row.done_by,
                field_id=field_id,
            )
        )

    def _noun(self, model: str) -> tuple[str, str]:
        """Its word in addresses and on paper, which is translated once."""
        if model not in self.nouns:
            noun = BY_MODEL[model]
            self.nouns[model] = noun.slug, noun.title.capitalize()
        return self.nouns[model]

    def written_on(self, row: Any) -> dt.date:
        """The farm's own date on which a row was written down."""
        return self.farm.today(row.written_at)
