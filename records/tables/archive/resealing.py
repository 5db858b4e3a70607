"""The history of a farm held against its seals, and sealed anew where it must be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from django.utils.translation import gettext as _

from farm.breaks import told as in_words
from farm.chain import NOTHING, SEALED, Break, Flaw, Walk, walk
from farm.models import Change
from records.tables.archive.opening import ArchiveError
from records.tables.archive.reading import Row


@dataclass
class Seals:
    """The numbers a history was sealed with, and the digests that took their place."""

    farm: int
    people: Mapping[str, int]
    anew: dict[str, str] = field(default_factory=dict)
    walked: Walk = Walk(0, NOTHING)

    def fit(self, changes: Sequence[Change], told: Sequence[Row]) -> None:
        """Refuse a history that does not hold; seal it anew if numbers are others."""
        before = [self._sealed_with(row) for row in told]
        entries = sorted(map(self._entry, told, before), key=lambda entry: entry[1])
        self.walked = walk(entries)
        if self.walked.broken:
            raise _broken(self.walked.broken)
        now = [(one.farm_id, one.by_id, one.object_id) for one in changes]
        if before == now:
            return
        last = NOTHING
        for change in sorted(changes, key=lambda change: change.number):
            old = change.digest
            change.prev, change.digest = last, ""
            last = self.anew[old] = change.digest = change.sealed()

    def head(self, number: int, digest: str) -> str:
        """The digest of the last change as it is now; it must be the last walked."""
        there = self.walked
        if number > there.entries:
            raise _broken(_at(Flaw.CUT_OFF, there.entries + 1, number, there.entries))
        if number < there.entries:
            raise _broken(_at(Flaw.NOT_COUNTED, number + 1, number, there.entries))
        if digest != there.digest:
            raise _broken(_at(Flaw.REWRITTEN, number, digest, there.digest))
        return self.anew.get(digest, digest)

    def check_headed(self, heads: int) -> None:
        """A history without the row that counts it was taken apart."""
        if self.walked.entries and not heads:
            raise _broken(_at(Flaw.NOT_COUNTED, 1, 0, self.walked.entries))

    def _sealed_with(self, row: Row) -> tuple[int, int, int]:
        return self.farm, self.people.get(str(row["by"]).lower(), 0), row["object_id"]

    def _entry(self, row: Row, numbers: tuple[int, int, int]) -> tuple[Any, ...]:
        sealed = dict(zip(("farm_id", "by_id", "object_id"), numbers, strict=True))
        return (*({**row, **sealed}[name] for name in SEALED), row["digest"])


def _at(flaw: Flaw, number: int, expected: object, found: object) -> Break:
    return Break(flaw, number, str(expected), str(found))


def _broken(flaw: Break) -> ArchiveError:
    sentence = _("The history in the archive does not fit its seals: %s")
    return ArchiveError(sentence % in_words(flaw))
