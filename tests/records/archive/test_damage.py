"""An archive that is not as it was made is refused, and nothing of it is left."""

import csv
import hashlib
import io
import re
import shutil
import zipfile

import pytest
from django.conf import settings
from django.db import transaction
from hypothesis import HealthCheck, given
from hypothesis import settings as settings_
from hypothesis import strategies as st

from farm.models import Farm
from records.tables.archive import ArchiveError
from tests.factories import (
    FarmFactory,
    UserFactory,
)
from tests.records.archive.files import (
    PICTURE,
    archived,
    less,
    listing,
    manifest,
    members,
    nothing_is_here,
    numbers_come_again,
    owner_of,
    packed,
    refusal,
    replaced,
    restored,
    with_member,
    without,
)
from tests.world import furnished


# PostgreSQL goes on counting rows after a rollback, so a farm put back within one
@numbers_come_again
def test_a_history_that_does_not_fit_its_seals_is_not_sealed_anew(saved):
    furnished(FarmFactory(slug="hay-creek"), by=UserFactory())
    told = members(saved)
    told["changes.csv"] = told["changes.csv"].replace(b"=written twice", b"=mended")
    with pytest.raises(ArchiveError, match="does not fit its seals"):
        restored(packed(told))
    assert not Farm.objects.filter(slug="alder-hill").exists()


def test_a_history_that_was_rewritten_is_refused_at_its_entry(saved):
    told = members(saved)
    told["changes.csv"] = told["changes.csv"].replace(b"=written twice", b"=mended")
    assert re.search(r"entry 5 is not as it was sealed", refusal(packed(told)))


def test_a_history_with_an_entry_less_is_refused_where_it_stood(saved):
    rows = members(saved)["changes.csv"].splitlines(keepends=True)
    (at,) = [n for n, row in enumerate(rows) if b"=written twice" in row]
    told = {**members(saved), "changes.csv": b"".join(rows[:at] + rows[at + 1 :])}
    assert "entry 5 is missing" in refusal(packed(told))


def test_a_history_cut_off_at_its_end_is_refused(saved):
    rows = list(csv.reader(io.StringIO(members(saved)["changes.csv"].decode())))
    out = io.StringIO()
    csv.writer(out).writerows(rows[:-1])
    told = {**members(saved), "changes.csv": out.getvalue().encode()}
    sentence = refusal(packed(told))
    assert f"entry {len(rows) - 1} is missing" in sentence


def test_a_history_that_nothing_counts_is_refused(saved):
    assert "was added past the writer" in refusal(packed(less(saved, HEADS)))


HEADS = "change-head.csv"
# What stands in a table, what is put there instead, and what is said of it.
ALTERED = {
    "a name": (
        ("fields.csv", b"'=North", b"'=South"),
        "fields.csv, “=South”: name says “=South”, but its history says “=North”",
    ),
    "a number": (
        ("seed-lots.csv", b",007,", b",008,"),
        "seed-lots.csv, “.*008.*”: lot_number says “008”, .* says “007”",
    ),
    "a reason": (
        ("incidents.csv", b"'=written twice", b"another"),
        "incidents.csv, “.*”: its history says it was struck out because “=written tw",
    ),
    "a fingerprint": (
        ("attachments.csv", hashlib.sha256(PICTURE).hexdigest().encode(), b"0" * 64),
        "“attachments/9/tag.jpg” is not the one that was kept",
    ),
}


@pytest.mark.parametrize("what", ALTERED)
def test_a_record_altered_past_the_writer_is_refused_by_name(saved, what):
    (name, old, new), sentence = ALTERED[what]
    assert old in members(saved)[name]
    data = packed({**members(saved), name: members(saved)[name].replace(old, new)})
    assert re.search(sentence, refusal(data))


def test_a_paper_that_was_exchanged_is_refused(saved):
    told = {**members(saved), "files/attachments/9/tag.jpg": b"another picture"}
    assert "is not the one that was kept" in refusal(packed(told))


def test_a_record_taken_out_past_the_writer_is_refused(saved):
    """The bed that was written down last is gone, and nothing leans on it."""
    told = members(saved)
    rows = told["attachments.csv"].splitlines(keepends=True)
    told["attachments.csv"] = rows[0]
    assert re.search(
        r"attachments.csv: record \d+ of the history is missing", refusal(packed(told))
    )


def test_an_owner_who_knows_why_restores_altered_records_all_the_same(saved):
    fields = members(saved)["fields.csv"].replace(b"'=North", b"'=South")
    data = packed({**members(saved), "fields.csv": fields})
    farm = restored(data, owner=owner_of(saved), altered=True).farm
    assert farm.fields.filter(name="=South").exists()


DAMAGE = {
    "nothing": (lambda data: b"", "damaged"),
    "no zip": (lambda data: b"fields,plantings\r\n", "damaged"),
    "cut short": (lambda data: data[: len(data) // 2], "damaged"),
    "a bit turned": (lambda data: turned(data, within(data)), "damaged"),
    "no manifest": (lambda data: without(data, "manifest.json"), "manifest"),
    "a member less": (
        lambda data: packed(less(data, "fields.csv"), manifest=manifest(data)),
        "“fields.csv” is missing",
    ),
    "a member more": (
        lambda data: packed(
            {**members(data), "more.csv": b"x"}, manifest=manifest(data)
        ),
        "“more.csv” is not told of",
    ),
    "another version": (
        lambda data: packed(members(data), manifest=listing({}, version=2)),
        "version 2; this one reads 1",
    ),
    "another thing": (
        lambda data: packed(members(data), manifest={"what": "a pattern"}),
        "no sound manifest",
    ),
    "a list for a manifest": (
        lambda data: packed(members(data), manifest=[1]),
        "no sound manifest",
    ),
    "members of no kind": (
        lambda data: packed(members(data), manifest=listing({}, members=7)),
        "no sound manifest",
    ),
    "a table changed": (
        lambda data: packed(
            {**members(data), "fields.csv": b"id"}, manifest=manifest(data)
        ),
        "“fields.csv” is damaged: its checksum does not fit",
    ),
    "a way out": (lambda data: with_member(data, "../../etc/cron.d/x"), "no place"),
    "a way out below": (lambda data: with_member(data, "files/../../x"), "no place"),
    "a path from the root": (lambda data: with_member(data, "/etc/passwd"), "no place"),
    "a drive": (lambda data: with_member(data, "files/C:\\x"), "no place"),
    "a newer table": (
        lambda data: with_member(data, "drones.csv"),
        "“drones.csv” comes from a newer program",
    ),
    "a newer column": (
        lambda data: with_member(data, "irrigations.csv", b"id,depth\r\n"),
        "irrigations.csv, row 1, depth: This table has no such column.",
    ),
    "a word for a number": (
        lambda data: replaced(data, "irrigations.csv", b",12,", b",much,"),
        r"irrigations.csv, row 2, water_mm \[mm\]: “much” is not a number",
    ),
    "a role nobody has": (
        lambda data: replaced(data, "memberships.csv", b",owner,", b",king,"),
        "memberships.csv, row 2, role: .*does not fit",
    ),
    "a field that is not there": (
        lambda data: replaced(data, "fields.csv", b"\r\n", b"", rows=True),
        "which is not here",
    ),
    "two farms": (
        lambda data: replaced(data, "farm.csv", b"\r\n", b"\r\n", twice=True),
        "holds one farm",
    ),
    "no paper": (
        lambda data: packed(less(data, "files/attachments/9/tag.jpg")),
        "“attachments/9/tag.jpg” is missing",
    ),
    "what the tables refuse": (
        lambda data: replaced(data, "plantings-lines.csv", b",1\r\n", b",-1\r\n"),
        "tables refuse",
    ),
}


def turned(data, at):
    return data[:at] + bytes([data[at] ^ 0xFF]) + data[at + 1 :]


def within(data):
    """A place in the midst of what is packed, not beside it."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        member = archive.getinfo("fields.csv")
    return member.header_offset + 60 + member.compress_size // 2


@pytest.mark.parametrize("how", DAMAGE)
def test_a_damaged_archive_is_refused_with_a_reason_and_leaves_nothing(saved, how):
    damage, reason = DAMAGE[how]
    assert re.search(reason, refusal(damage(saved)))


def test_an_archive_with_a_member_twice_is_refused(saved):
    out = io.BytesIO(saved)
    with zipfile.ZipFile(out, "a") as archive, pytest.warns(UserWarning):
        archive.writestr("fields.csv", b"id\r\n")
    assert "twice" in refusal(out.getvalue())


def test_an_archive_that_unpacks_to_far_too_much_is_refused_unread(saved):
    """129 MiB of spaces take 130 kB: nobody unpacks them to find out."""
    bomb = packed({"fields.csv": b" " * (129 * 1024**2)}, manifest={})
    assert len(bomb) < 200_000
    assert "larger than any table" in refusal(bomb)


@numbers_come_again
@settings_(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(at=st.integers(0, 1 << 30), how=st.sampled_from(["turn", "cut", "drop"]))
def test_however_it_is_damaged_it_is_refused_or_is_still_the_same(saved, at, how):
    at %= len(saved)
    data = {
        "turn": turned(saved, at),
        "cut": saved[:at],
        "drop": saved[:at] + saved[at + 1 :],
    }[how]
    shutil.rmtree(settings.MEDIA_ROOT, ignore_errors=True)
    with transaction.atomic():
        try:
            farm = restored(data, owner=owner_of(saved)).farm
        except ArchiveError:
            is_same = nothing_is_here()
        else:
            is_same = less(archived(farm), "manifest.json") == less(
                saved, "manifest.json"
            )
        transaction.set_rollback(True)
    assert is_same
