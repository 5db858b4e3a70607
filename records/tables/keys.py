"""The keys of a table's rows: their own, or ones that follow from the table."""

from __future__ import annotations

import hashlib
import json
import uuid
from dataclasses import dataclass, field
from typing import Any

from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _

from farm.models import Farm
from records.tables.cells import FormulaError, Sort, read, seen
from records.tables.intake import Sheet

LONGEST_WORD = 60


@dataclass
class Keys:
    """Which key each row of a table has, and which word stands for it."""

    stem: str
    by_row: dict[int, uuid.UUID] = field(default_factory=dict)
    taken: set[uuid.UUID] = field(default_factory=set)

    def give(self, number: int, raw: Any) -> None:
        """Find the key of a row, from its cell or else from its place."""
        key = self.named(raw) or self._made(f"row {number}")
        if key in self.taken:
            raise ValidationError(_("This key is there twice."))
        self.taken.add(key)
        self.by_row[number] = key

    def named(self, raw: Any) -> uuid.UUID | None:
        """The key a cell names; None for an empty cell."""
        if isinstance(raw, FormulaError):
            raise ValidationError(_("A formula stands here. Put its value there."))
        text = read(raw, Sort.KEY)
        if not text:
            return None
        try:
            return uuid.UUID(text)
        except ValueError:
            pass
        if len(text) > LONGEST_WORD:
            raise ValidationError(_("“%s” is too long for a key.") % seen(text))
        return self._made(f"word {text.casefold()}")

    def _made(self, what: str) -> uuid.UUID:
        return uuid.uuid5(uuid.NAMESPACE_OID, f"{self.stem} {what}")


def keys_of(sheet: Sheet, farm: Farm) -> Keys:
    """Keys that are the same whenever, and in whatever format, a table is loaded."""
    said = [
        [column.name for column in sheet.columns],
        [(n, {k: str(v) for k, v in cells.items()}) for n, cells in sheet.rows],
    ]
    digest = hashlib.sha256(json.dumps(said, sort_keys=True).encode()).hexdigest()
    return Keys(f"{farm.slug} {sheet.table.name} {digest}")
