"""The history of a farm restored where rows have other numbers than they had."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from django.utils.translation import gettext_lazy as _

from farm.chain import NOTHING, SEALED, walk
from farm.models import Change
from records.tables.archive.opening import ArchiveError
from records.tables.archive.reading import Row

BROKEN = _("The history in the archive does not fit its seals.")


@dataclass
class Seals:
    """The numbers a history was sealed with, and the digests that took their place."""

    farm: int
    people: Mapping[str, int]
    anew: dict[str, str] = field(default_factory=dict)

    def fit(self, changes: Sequence[Change], told: Sequence[Row]) -> None:
        """Seal changes anew if any number they are sealed with is another now."""
        before = [self._sealed_with(row) for row in told]
        now = [(one.farm_id, one.by_id, one.object_id) for one in changes]
        if before == now:
            return
        entries = sorted(map(self._entry, told, before), key=lambda entry: entry[1])
        if walk(entries).broken:
            raise ArchiveError(BROKEN)
        last = NOTHING
        for change in sorted(changes, key=lambda change: change.number):
            old = change.digest
            change.prev, change.digest = last, ""
            last = self.anew[old] = change.digest = change.sealed()

    def head(self, digest: str) -> str:
        """The digest of the last change, as it is now."""
        if self.anew and digest not in self.anew:
            raise ArchiveError(BROKEN)
        return self.anew.get(digest, digest)

    def _sealed_with(self, row: Row) -> tuple[int, int, int]:
        return self.farm, self.people[row["by"].lower()], row["object_id"]

    def _entry(self, row: Row, numbers: tuple[int, int, int]) -> tuple[Any, ...]:
        sealed = dict(zip(("farm_id", "by_id", "object_id"), numbers, strict=True))
        return (*({**row, **sealed}[name] for name in SEALED), row["digest"])
