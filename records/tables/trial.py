"""From uploaded files to what they would do, and from there into the records."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from django.db import transaction

from farm.models import ChangeHead, Farm, User
from records.nouns import Noun
from records.reading import holding
from records.tables.aside import has_copies, on_a_copy
from records.tables.cells import FormulaError, as_text
from records.tables.intake import Sheet, sheets_in
from records.tables.layout import Table, tables_of
from records.tables.loading import Outcome, Verdict, load

ROWS_SHOWN = 10
Files = Mapping[str, tuple[str, bytes]]
Sheets = Mapping[str, Sheet]


@dataclass(frozen=True)
class Trial:
    """What files hold and what becomes of it."""

    noun: Noun
    sheet: Sheet
    outcome: Outcome
    # Hidden boxes that fetch the files again, by table.
    held: dict[str, str]

    @property
    def counts(self) -> dict[str, int]:
        return {str(verdict): self.outcome.count(verdict) for verdict in Verdict}

    @property
    def headers(self) -> list[str]:
        return [column.header for column in self.sheet.columns]

    @property
    def first_rows(self) -> list[tuple[int, str, list[str]]]:
        """The first rows as read, each with what becomes of it."""
        verdicts = self.outcome.verdicts
        return [
            (
                number,
                str(verdicts.get(number, "")),
                [_shown(cells[column.name]) for column in self.sheet.columns],
            )
            for number, cells in self.sheet.rows[:ROWS_SHOWN]
        ]


def titles(noun: Noun) -> dict[str, str]:
    """What each table of a noun is called in words."""
    return {table.name: table.title for table in tables_of(noun)}


def try_out(
    noun: Noun, files: Files, *, farm: Farm, by: User, now: dt.datetime, keep: bool
) -> Trial:
    """Load files, to keep what they say or only to see it.

    Raises
    ------
    ValidationError
        Where a file cannot be read at all.
    """
    tables = tables_of(noun)
    sheets = sheets_in(((name, data) for name, (_, data) in files.items()), tables)
    told = {"farm": farm, "by": by, "now": now}
    outcome = _kept(noun, sheets, **told) if keep else _tried(noun, sheets, **told)
    return Trial(noun, sheets[tables[0].name], outcome, _held(files, farm))


def _tried(noun: Noun, sheets: Sheets, **told: Any) -> Outcome:
    with on_a_copy():
        return load(noun, sheets, **told, keep=False)


def _kept(noun: Noun, sheets: Sheets, **told: Any) -> Outcome:
    """Written down, with the checks before the one writer's lock is taken.

    Rows found sound on a copy are sound as long as nobody has written since.
    """
    if not has_copies():
        return load(noun, sheets, **told, keep=True)
    stood = _last_change(told["farm"])
    tried = _tried(noun, sheets, **told)
    if tried.faults:
        return tried
    with transaction.atomic():
        is_sound = _last_change(told["farm"]) == stood
        return load(noun, sheets, **told, keep=True, is_sound=is_sound)


def _last_change(farm: Farm) -> tuple[int, str] | None:
    heads = ChangeHead._default_manager.filter(farm=farm)
    return heads.values_list("number", "digest").first()


def again(noun: Noun, typed: Mapping[str, Any], farm: Farm) -> Files | None:
    """The files set aside, or None where they are gone."""
    files: dict[str, tuple[str, bytes]] = {}
    for table in tables_of(noun):
        word = typed.get(box(table), "")
        if not word:
            continue
        found = holding.fetch(word, farm_id=farm.pk)
        if found is None:
            return None
        files[table.name] = (found[1], found[0])
    return files if tables_of(noun)[0].name in files else None


def box(table: Table) -> str:
    return f"held-{table.name}"


def _held(files: Files, farm: Farm) -> dict[str, str]:
    return {
        f"held-{name}": holding.hold(data, name=told, farm_id=farm.pk)
        for name, (told, data) in files.items()
    }


def _shown(raw: Any) -> str:
    if isinstance(raw, FormulaError):
        return "="
    text = as_text(raw)
    return text if len(text) <= 60 else f"{text[:60]}…"
