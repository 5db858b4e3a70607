"""Tables into records: all rows or none, and the same table never twice."""

from __future__ import annotations

import datetime as dt
import uuid
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Any

from django.core.exceptions import ValidationError
from django.db import DatabaseError, transaction
from django.utils.translation import gettext as _

from farm.models import Change, Farm, Record, User
from farm.writing import note, void, write
from records.forms.void import VoidForm
from records.nouns import Noun
from records.tables import odd
from records.tables.cells import Plain
from records.tables.columns import KEY, VOIDED
from records.tables.faults import Fault, column_of, faults_of
from records.tables.filling import Filling, content
from records.tables.intake import Sheet
from records.tables.keys import keys_of
from records.tables.layout import near, tables_of
from records.tables.links import Links
from records.tables.parts import PartRows, Told
from records.tables.rules import misfits

MOST_FAULTS = 100
KEYS_A_FETCH = 500


class Verdict(StrEnum):
    NEW = "new"
    CHANGED = "changed"
    SAME = "same"


@dataclass
class Outcome:
    """What became of every row, or would; with faults, nothing was saved."""

    verdicts: dict[int, Verdict] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def count(self, verdict: Verdict) -> int:
        return Counter(self.verdicts.values())[verdict]


def load(
    noun: Noun,
    sheets: Mapping[str, Sheet],
    *,
    farm: Farm,
    by: User,
    now: dt.datetime,
    keep: bool,
    is_sound: bool = False,
) -> Outcome:
    """Write down every row that is new or changed; without ``keep``, only try it.

    Rows that are known to be sound are left to the rules of the tables alone.
    """
    with transaction.atomic():
        loading = _Loading(noun, sheets, farm=farm, by=by, now=now)
        loading.is_sound = is_sound
        outcome = loading.run()
        if outcome.faults or not keep:
            transaction.set_rollback(True)
    return outcome


def links_of(row: Record) -> set[str]:
    """The fields whose check asks the database."""
    return {field.name for field in row._meta.fields if field.is_relation}


class _Loading:
    is_sound = False

    def __init__(
        self,
        noun: Noun,
        sheets: Mapping[str, Sheet],
        *,
        farm: Farm,
        by: User,
        now: dt.datetime,
    ) -> None:
        self.noun, self.farm, self.by, self.now = noun, farm, by, now
        self.main, *parts = tables_of(noun)
        self.sheet = sheets[self.main.name]
        self.keys = keys_of(self.sheet, farm)
        self.filling = Filling(self.main, Links(farm), self.keys)
        self.out = Outcome()
        self._give_keys()
        self.parts = PartRows(parts, sheets, self.filling)
        for sheet in sheets.values():
            self.out.faults += sheet.faults
        self.out.faults += self.parts.faults

    def run(self) -> Outcome:
        self.known = self._known()
        waiting = [one for one in self.sheet.rows if one[0] in self.keys.by_row]
        while waiting and len(self.out.faults) < MOST_FAULTS:
            unwritten = {self.keys.by_row[number] for number, _cells in waiting}
            ready = [
                one for one in waiting if not self.filling.own_links(one[1]) & unwritten
            ]
            # Rows that name each other in a circle are tried, and found wanting.
            for number, cells in ready or waiting:
                if len(self.out.faults) < MOST_FAULTS:
                    self._take(number, cells)
            done = {number for number, _cells in ready or waiting}
            waiting = [one for one in waiting if one[0] not in done]
        return self.out

    def _give_keys(self) -> None:
        for number, cells in self.sheet.rows:
            try:
                self.keys.give(number, cells.get(KEY))
            except ValidationError as error:
                self._blame(number, error, column=KEY)

    def _known(self) -> dict[uuid.UUID, Record]:
        """The farm's records that rows of the table tell of."""
        keys = list(self.keys.taken)
        rows = self.noun.model._default_manager.filter(farm=self.farm)
        found: dict[uuid.UUID, Record] = {}
        for at in range(0, len(keys), KEYS_A_FETCH):
            some = rows.filter(client_key__in=keys[at : at + KEYS_A_FETCH])
            for row in some.select_related(*near(self.noun.model)):
                found[row.client_key] = row
        return found

    def _take(self, number: int, cells: dict[str, Any]) -> None:
        key = self.keys.by_row[number]
        row = self.known.get(key) or self.noun.model(
            farm=self.farm, client_key=key, written_by=self.by, written_at=self.now
        )
        before = self._as_told(row)
        faults = list(self.filling.fill(self.main, row, number, cells))
        parts = self.parts.of(row, faults)
        self.out.faults += faults
        if faults:
            return
        try:
            verdict = self._settle(number, cells, row, before, parts)
            self.out.verdicts[number] = verdict
        except ValidationError as error:
            self._blame(number, error)
        except DatabaseError:
            sentence = _("The tables refuse this row: something in it cannot be.")
            self.out.faults.append(Fault(self.main.name, number, "", sentence))

    def _as_told(self, row: Record) -> list[Plain]:
        if row.pk is None:
            return []
        return [column.tell(row) for column in content(self.main)]

    def _settle(
        self,
        number: int,
        cells: dict[str, Any],
        row: Any,
        before: list[Plain],
        parts: Told,
    ) -> Verdict:
        """Write the row down if it says anything new."""
        odd.fill(row)
        reason = self.filling.reason(cells, row)
        if row.pk is None:
            self._write_new(number, row, parts, reason)
            return Verdict.NEW
        is_same = before == self._as_told(row) and self.parts.are_kept(row, parts)
        if row.voided_at and not (is_same and reason == row.void_reason):
            raise ValidationError({VOIDED: _("What is voided stays as it is.")})
        if is_same and reason == row.void_reason:
            return Verdict.SAME
        if not is_same:
            self._write(number, row, parts)
        if reason:
            self._strike(row, reason)
        return Verdict.CHANGED

    def _write_new(self, number: int, row: Any, parts: Told, reason: str) -> None:
        if not reason:
            self._write(number, row, parts)
            return
        row.voided_by, row.voided_at, row.void_reason = self.by, self.now, reason
        self._write(number, row, parts)
        verb = Change.Verb.VOIDED
        note(row, verb=verb, by=self.by, now=self.now, reason=reason)

    def _write(self, number: int, row: Record, parts: Told) -> None:
        if self.is_sound:
            row.clean_fields(exclude=links_of(row))
        else:
            row.full_clean()
        write(row, by=self.by, now=self.now, parts=parts)
        self.filling.links.add(row)
        if row.voided_at is None and not self.is_sound:
            self._hold_to_rules(number, row)

    def _strike(self, row: Record, reason: str) -> None:
        form = VoidForm({"reason": reason}, row=row)
        if not form.is_valid():
            sentences = [error for errors in form.errors.values() for error in errors]
            raise ValidationError({VOIDED: sentences})
        void(row, by=self.by, now=self.now, reason=reason)

    def _hold_to_rules(self, number: int, row: Record) -> None:
        today = self.farm.today(self.now)
        for part, name, sentence in misfits(self.noun, self.main, row, today=today):
            place = self.parts.place(row, part) if part is not None else None
            table, at = place or (self.main, number)
            column = column_of(table, name)
            self.out.faults.append(Fault(table.name, at, column, sentence))

    def _blame(self, number: int, error: ValidationError, *, column: str = "") -> None:
        self.out.faults += faults_of(self.main, number, error, column=column)
