"""Changes are sealed into a chain, and the tables refuse to lose or rewrite a row."""

import datetime as dt
import hashlib
import io
import json

import pytest
from django.apps import apps
from django.core.management import CommandError, call_command
from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from farm.chain import NOTHING, SEALED, Flaw, canonical, seal, walk
from farm.guards import guarded, trigger_name
from farm.history import verified
from farm.models import Change, ChangeHead, Record
from farm.writing import void, write
from reports.calc.shapes.basics import Span
from reports.ledger import season_register
from tests.factories import FieldFactory
from tests.sweeping import unguarded

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


@pytest.mark.parametrize(
    ("read", "canonically"),
    [
        # The published test data of RFC 8785 (JSON Canonicalization Scheme), which its
        # authors keep at github.com/cyberphone/json-canonicalization, testdata.
        (
            '{"peach": "This sorting order", "péché": "is wrong according to French",'
            ' "pêche": "but canonicalization MUST", "sin": "ingnore locale"}',
            '{"peach":"This sorting order","péché":"is wrong according to French",'
            '"pêche":"but canonicalization MUST","sin":"ingnore locale"}',
        ),
        (
            '{"1": {"f": {"f": "hi", "F": 5}, "\\n": 56}, "10": {}, "": "empty",'
            ' "a": {}, "111": [{}], "A": {}}',
            '{"":"empty","1":{"\\n":56,"f":{"F":5,"f":"hi"}},"10":{},'
            '"111":[{}],"A":{},"a":{}}',
        ),
    ],
)
def test_an_entry_is_written_as_rfc_8785_has_it(read, canonically):
    assert canonical(json.loads(read)) == canonically


def test_a_seal_can_be_reckoned_without_this_program():
    told = entry(1, NOTHING, farm_id=7, label="North")
    text = (
        '{"after":{},"at":"2026-06-01T12:00:00.000000+00:00","before":{},"by_id":"",'
        '"farm_id":7,"label":"North","noun":"","number":1,"object_id":"","prev":"",'
        '"reason":"","verb":""}'
    )
    assert seal(told) == hashlib.sha256(text.encode()).hexdigest()


def test_a_moment_is_sealed_as_it_is_however_its_zone_is_written():
    chicago = NOON.astimezone(dt.timezone(-dt.timedelta(hours=5)))
    assert seal(entry(1, NOTHING, at=chicago)) == seal(entry(1, NOTHING))


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
    assert "entry 2 is missing: 99 were written, 1 stand" in out.getvalue()


def tampered(statement, *values):
    """Somebody at the database itself, who has first taken the guards down."""
    with unguarded(), connection.cursor() as cursor:
        cursor.execute(statement, values)


@pytest.fixture
def three(world):
    return [written(world, f"Sealed {number}") for number in range(3)]


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("statement", "flaw", "number"),
    [
        ("UPDATE farm_change SET label = 'other' WHERE number = 2", "REWRITTEN", 2),
        ("UPDATE farm_change SET reason = 'x' WHERE number = 1", "REWRITTEN", 1),
        ("UPDATE farm_change SET object_id = 0 WHERE number = 3", "REWRITTEN", 3),
        ("DELETE FROM farm_change WHERE number = 1", "MISSING", 1),
        ("DELETE FROM farm_change WHERE number = 3", "CUT_OFF", 3),
        ("DELETE FROM farm_change", "CUT_OFF", 1),
        ("UPDATE farm_changehead SET number = 2", "NOT_COUNTED", 3),
        ("UPDATE farm_changehead SET digest = 'x'", "REWRITTEN", 3),
        ("UPDATE farm_change SET prev = 'x' WHERE number = 2", "OTHER_BEFORE", 2),
    ],
)
def test_the_first_break_of_a_tampered_history_is_named(
    world, three, statement, flaw, number
):
    assert verified(world.farm).broken is None
    tampered(statement)
    broken = verified(world.farm).broken
    assert (broken.flaw, broken.number) == (Flaw[flaw], number)
    out = io.StringIO()
    with pytest.raises(CommandError) as stopped:
        call_command("verify_history", world.farm.slug, stdout=out)
    assert stopped.value.returncode == 1
    assert f"{world.farm.slug}: entry {number} " in out.getvalue()


@pytest.mark.django_db
def test_another_farms_history_is_whole_when_ours_is_broken(world, three):
    tampered("UPDATE farm_change SET label = 'other'")
    out = io.StringIO()
    with pytest.raises(CommandError, match=r"broken: alder-hill\.$"):
        call_command("verify_history", stdout=out)
    assert "birch-flat: 0 entries, unbroken" in out.getvalue()


@pytest.mark.django_db
def test_a_digest_printed_on_paper_leads_to_its_entry(world, three):
    digest = Change.objects.get(farm=world.farm, number=2).digest
    out = io.StringIO()
    call_command("verify_history", digest=digest, stdout=out)
    assert "alder-hill: Entry 2: " in out.getvalue()
    assert "Owner wrote Sealed 1" in out.getvalue()
    with pytest.raises(CommandError, match="No entry has this digest"):
        call_command("verify_history", digest="0" * 64, stdout=out)


@pytest.mark.django_db
def test_the_season_report_prints_the_last_digest(world, three):
    whole_year = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
    register = season_register(world.farm, whole_year)
    walked = verified(world.farm)
    assert (register.entry, register.digest) == (walked.entries, walked.digest)
    empty = season_register(world.theirs.farm, whole_year)
    assert (empty.entry, empty.digest) == (0, "")


@pytest.mark.django_db
def test_a_farm_that_is_not_there_cannot_be_verified():
    with pytest.raises(CommandError, match="No farm has the short name"):
        call_command("verify_history", "nowhere")


@pytest.mark.django_db
def test_a_void_that_comes_second_leaves_the_first_as_it_was(world):
    field = written(world, "Sealed")
    same = type(field).objects.get(pk=field.pk)
    void(field, by=world.owner, now=NOON, reason="sold")
    void(same, by=world.crew, now=NOON, reason="again")
    kept = type(field).objects.get(pk=field.pk)
    assert (kept.void_reason, kept.voided_by) == ("sold", world.owner)
    assert Change.objects.filter(verb="voided").count() == 1


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


@pytest.mark.django_db
def test_a_table_refuses_to_lose_any_record_there_is(world):
    for noun, row in world.ours.records.items():
        with pytest.raises(DatabaseError, match="never deleted"), transaction.atomic():
            type(row).objects.filter(pk=row.pk)._raw_delete("default")
        assert type(row).objects.filter(pk=row.pk).exists(), noun


@pytest.mark.django_db
def test_the_rows_under_a_record_may_change_with_it(world):
    planting = world.ours["plantings"]
    write(planting, by=world.owner, now=NOON, parts={"lines": []})
    assert not planting.lines.exists()


@pytest.mark.django_db
def test_postgresql_refuses_to_empty_a_table_at_once(world):
    if connection.vendor != "postgresql":
        pytest.skip("SQLite knows no TRUNCATE.")
    for table in ("farm_change", "farm_changehead", "records_planting"):
        with pytest.raises(DatabaseError), transaction.atomic():
            connection.cursor().execute(f"TRUNCATE {table} CASCADE")
