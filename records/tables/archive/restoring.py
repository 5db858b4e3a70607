"""A farm out of its archive, row by row as it was: all of it or nothing."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import IO, Any

from django.core.files import File
from django.db import DatabaseError, transaction
from django.utils.translation import gettext as _

from farm.models import Change, ChangeHead, Farm, User
from records.models import Attachment, Kind
from records.tables.archive.arriving import (
    ROWS_A_STATEMENT,
    Model,
    count_on,
    free,
    holds_something,
    let_in,
    person,
)
from records.tables.archive.contents import (
    ID,
    Kept,
    by_word,
    farm_table,
    kept,
    people_table,
    points,
)
from records.tables.archive.opening import FILES, Archive, ArchiveError
from records.tables.archive.reading import Row, values
from records.tables.archive.resealing import Seals
from records.tables.archive.witness import first_misfit
from records.tables.cells import Sort
from records.tables.columns import Column, key_field
from records.tables.layout import Table


@dataclass(frozen=True)
class Restored:
    farm: Farm
    rows: int
    # Rows have other numbers here, so their history had to be sealed anew.
    is_resealed: bool
    lost: list[str]


def restore_farm(
    source: IO[bytes], *, owner: str, today: dt.date, altered: bool = False
) -> Restored:
    """Read a farm back, and let the owner of this e-mail address in.

    The history must fit its seals, and every record must say what its history says
    last; ``altered`` lets records in that say otherwise.

    Raises
    ------
    ArchiveError
        With the reason; then nothing is restored, neither a row nor a file.
    """
    restoring = _Restoring(Archive(source))
    try:
        with transaction.atomic():
            restored = restoring.run()
            misfit = "" if altered else first_misfit(restored.farm)
            if misfit:
                raise ArchiveError(misfit)
            # Made last, lest a new person take the number of one in the archive.
            let_in(restored.farm, person(owner), today)
    except BaseException as error:
        restoring.forget_files()
        if not isinstance(error, DatabaseError):
            raise
        sentence = _("The tables refuse it. Are its records here already?")
        raise ArchiveError(sentence) from None
    return restored


@dataclass
class _Restoring:
    archive: Archive
    # By model: which number each row had and has, and which number each key has.
    numbers: dict[Model, dict[int, int]] = field(default_factory=dict)
    keyed: dict[Model, dict[str, int]] = field(default_factory=dict)
    saved: list[tuple[Any, str]] = field(default_factory=list)
    rows: int = 0

    def run(self) -> Restored:
        tables = sorted(kept(), key=lambda one: one.table.model is ChangeHead)
        self._check_tables(tables)
        self.words = by_word()
        self.farm = self._farm(tables)
        self._people()
        self.keyed[Kind] = dict(Kind.objects.filter(farm=None).values_list("slug", ID))
        for one in tables:
            self._table(one.table)
        count_on([Farm, User, *(one.table.model for one in tables)])
        lost = self.archive.manifest.lost
        return Restored(self.farm, self.rows, bool(self.seals.anew), lost)

    def forget_files(self) -> None:
        for storage, name in self.saved:
            storage.delete(name)

    def _check_tables(self, tables: list[Kept]) -> None:
        known = {one.member for one in tables} | {"farm.csv", "people.csv"}
        for name in self.archive.manifest.members:
            if name.endswith(".csv") and name not in known:
                sentence = _("“%s” comes from a newer program than this one.")
                raise ArchiveError(sentence % name)

    def _farm(self, tables: list[Kept]) -> Farm:
        rows = values(self.archive, farm_table())
        if len(rows) != 1:
            raise ArchiveError(_("An archive holds one farm."))
        self.told = rows[0]
        number = self.told.pop(ID)
        farm = Farm(**self.told)
        there = Farm.objects.filter(slug=farm.slug).first()
        if there is None:
            farm.pk = free([number], Farm).get(number)
        elif holds_something(there, tables):
            sentence = _("A farm with the short name “%s” and records is here already.")
            raise ArchiveError(sentence % farm.slug)
        else:
            there.memberships.all().delete()
            farm.pk = there.pk
        farm.save()
        self.seals = Seals(number, {})
        return farm

    def _people(self) -> None:
        """Known people are the same by e-mail; new ones cannot sign in as yet."""
        rows = values(self.archive, people_table())
        self.seals.people = {row["email"].lower(): row[ID] for row in rows}
        known = dict(User.objects.values_list("email", ID))
        new = [row[ID] for row in rows if row["email"].lower() not in known]
        numbers = free(new, User)
        self.keyed[User] = {}
        for row in rows:
            number, email = row.pop(ID), row.pop("email").lower()
            if email not in known:
                user = User(pk=numbers.get(number), email=email, **row)
                user.set_unusable_password()
                user.save(force_insert=True)
                known[email] = user.pk
            self.keyed[User][email] = known[email]

    def _table(self, table: Table) -> None:
        told = values(self.archive, table)
        rows = [self._row(table, one) for one in told]
        if table.model is Change:
            self.seals.fit(rows, told)
        if table.model is ChangeHead:
            self._head(rows)
            return
        numbers = free([row[ID] for row in told], table.model)
        later = [column for column in table.columns if column.to is table.model]
        for row, one in zip(rows, told, strict=True):
            row.pk = numbers.get(one[ID])
        table.model._default_manager.bulk_create(rows, batch_size=ROWS_A_STATEMENT)
        self._remember(table.model, rows, told)
        for column in later:
            self._link_among(column, rows, told)
        self.rows += len(rows)

    def _row(self, table: Table, told: Row) -> Any:
        row: Any = table.model()
        for column in table.columns:
            if column.name not in told or column.is_name or column.name == ID:
                continue
            value = told[column.name]
            if column.to is not None:
                among = column.to is table.model
                number = None if among else self._number(column, value)
                setattr(row, column.field.attname, number)
            elif column.sort is Sort.FILE:
                setattr(row, column.field.name, self._paper(column, value))
            else:
                setattr(row, column.field.name, value)
        if points(table.model):
            model = self.words.get(row.noun, Farm)
            row.object_id = self.numbers.get(model, {}).get(row.object_id, 0)
        if hasattr(row, "farm_id"):
            row.farm = self.farm
        if isinstance(row, Attachment):
            self._check_paper(told, row)
        return row

    def _check_paper(self, told: Row, row: Attachment) -> None:
        """A paper must be the one whose fingerprint was written down."""
        member = self.archive.manifest.members.get(f"{FILES}{told['file']}")
        if member is not None and member.sha256 != row.sha256:
            sentence = _("The file “%s” is not the one that was kept.")
            raise ArchiveError(sentence % told["file"][:80])

    def _number(self, column: Column, key: str | None) -> int | None:
        """The number here of the row a key names."""
        if not key:
            return None
        assert column.to is not None
        found = self.keyed.get(column.to, {}).get(key.lower())
        if found is None:
            sentence = _(
                "%(column)s names “%(key)s”, which is not here. "
                "Is the catalogue of kinds loaded?"
            )
            raise ArchiveError(sentence % {"column": column.name, "key": key[:80]})
        return found

    def _remember(self, model: Model, rows: Sequence[Any], told: Sequence[Row]) -> None:
        pairs = zip(rows, told, strict=True)
        self.numbers[model] = {one[ID]: row.pk for row, one in pairs}
        name = key_field(model)
        if name is not None:
            keys = self.keyed.setdefault(model, {})
            keys |= {str(getattr(row, name)).lower(): row.pk for row in rows}

    def _link_among(
        self, column: Column, rows: Sequence[Any], told: Sequence[Row]
    ) -> None:
        """Rows that name rows of their own table can do so once all are there."""
        linked = []
        for row, one in zip(rows, told, strict=True):
            number = self._number(column, one.get(column.name))
            if number is not None:
                setattr(row, column.field.attname, number)
                linked.append(row)
        manager: Any = column.field.model._default_manager
        manager.bulk_update(linked, [column.field.name], batch_size=ROWS_A_STATEMENT)

    def _head(self, rows: Sequence[ChangeHead]) -> None:
        self.seals.check_headed(len(rows))
        for row in rows:
            digest = self.seals.head(row.number, row.digest)
            told = {"number": row.number, "digest": digest}
            ChangeHead.objects.update_or_create(farm=self.farm, defaults=told)

    def _paper(self, column: Column, name: str) -> str:
        if not name or name in self.archive.manifest.lost:
            return name
        if f"{FILES}{name}" not in self.archive.manifest.members:
            raise ArchiveError(_("The file “%s” is missing.") % name[:80])
        storage: Any = getattr(column.field, "storage")  # noqa: B009
        with self.archive.file(f"{FILES}{name}") as stream:
            kept_as: str = storage.save(name, File(stream))
        self.saved.append((storage, kept_as))
        return kept_as
