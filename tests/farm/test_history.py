"""Changes are sealed into a chain, and the tables refuse to lose or rewrite a row."""

import datetime as dt
import io

import pytest
from django.apps import apps
from django.core.management import CommandError, call_command
from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from farm.chain import NOTHING, SEALED, Flaw, seal, walk
from farm.guards import guarded, trigger_name
from farm.history import verified
from farm.models import Change, ChangeHead, Record
from farm.writing import void, write
from tests.factories import FieldFactory

NOON = dt.datetime(2026, 6, 1, 12, tzinfo=dt.UTC)


def entry(number, prev, **other):
    told = dict.fromkeys(SEALED, "")
    told |= {"number": number, "prev": prev, "at": NOON, "before": {}, "after": {}}
    return told | other


def columns(told):
    return (*(told[name] for name in SEALED), seal(told))


def chain(length):
    rows, last = [], NOTHING
    for number in range(1, length + 1):
        rows.append(columns(entry(number, last)))
        last = rows[-1][-1]
    return rows


def test_a_whole_chain_is_walked_to_its_last_digest():
    rows = chain(3)
    walked = walk(rows)
    assert (walked.entries, walked.digest, walked.broken) == (3, rows[-1][-1], None)


def test_a_row_taken_out_is_named():
    rows = chain(4)
    del rows[1]
    broken = walk(rows).broken
    assert (broken.flaw, broken.number) == (Flaw.MISSING, 2)


def test_a_row_written_over_is_named():
    rows = chain(3)
    forged = entry(2, rows[0][-1], label="another")
    rows[1] = (*(forged[name] for name in SEALED), rows[1][-1])
    broken = walk(rows).broken
    assert (broken.flaw, broken.number) == (Flaw.REWRITTEN, 2)


def test_a_row_sealed_anew_no_longer_leads_to_the_next():
    rows = chain(3)
    rows[1] = columns(entry(2, rows[0][-1], label="another"))
    broken = walk(rows).broken
    assert (broken.flaw, broken.number) == (Flaw.OTHER_BEFORE, 3)


def written(world, name, **other):
    field = FieldFactory.build(farm=world.farm, name=name, written_by=None, **other)
    field.written_at = None
    return write(field, by=world.owner, now=timezone.now())


@pytest.mark.django_db
def test_writing_mending_and_voiding_lengthen_one_chain(world):
    before = verified(world.farm).entries
    field = written(world, "Sealed")
    field.notes = "stony"
    write(field, by=world.crew, now=timezone.now())
    void(field, by=world.owner, now=timezone.now(), reason="twice")
    walked = verified(world.farm)
    assert walked.broken is None
    assert walked.entries == before + 3
    head = ChangeHead.objects.get(farm=world.farm)
    assert (head.number, head.digest) == (walked.entries, walked.digest)


@pytest.mark.django_db
def test_the_command_tells_an_unbroken_history_and_names_a_broken_one(world):
    written(world, "Sealed")
    out = io.StringIO()
    call_command("verify_history", world.farm.slug, stdout=out)
    assert "unbroken" in out.getvalue()
    ChangeHead.objects.filter(farm=world.farm).update(number=99)
    with pytest.raises(CommandError, match="broken"):
        call_command("verify_history", world.farm.slug, stdout=out)
    assert "entry 2 is missing" in out.getvalue() or "99" in out.getvalue()


@pytest.mark.django_db
@pytest.mark.parametrize("act", ["update", "delete"])
def test_the_table_of_changes_refuses_to_rewrite_or_lose_a_row(world, act):
    written(world, "Sealed")
    rows = Change.objects.filter(farm=world.farm)
    with pytest.raises(DatabaseError, match="only ever added"), transaction.atomic():
        rows.update(label="other") if act == "update" else rows._raw_delete("default")


@pytest.mark.django_db
def test_the_table_of_a_record_refuses_to_lose_a_row(world):
    field = written(world, "Sealed")
    with pytest.raises(DatabaseError, match="never deleted"), transaction.atomic():
        field.delete()


@pytest.mark.django_db
def test_every_table_of_records_has_its_guard():
    standing = guarded(connection)
    records = [model for model in apps.get_models() if issubclass(model, Record)]
    missing = [
        model._meta.db_table
        for model in records
        if trigger_name(model._meta.db_table, "delete") not in standing
    ]
    assert missing == []
