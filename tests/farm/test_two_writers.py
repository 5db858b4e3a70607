"""Two people who write at the same time lengthen one chain, on either database."""

import os
import subprocess
import sys
import threading

import pytest
from django.db import close_old_connections, connection, connections
from django.utils import timezone

from farm.guards import guarded
from farm.history import verified
from farm.models import Change, ChangeHead, Farm, User
from farm.writing import write
from tests.factories import FieldFactory
from tests.places import ROOT
from tests.world import make_world

FIELDS_EACH = 15
WRITE_FIELDS = f"""
import sys
import django
django.setup()
from tests.farm.test_two_writers import write_fields
write_fields("alder-hill", sys.argv[1], {FIELDS_EACH})
"""
VERIFY = """
import django
django.setup()
from farm.models import Farm
from farm.history import verified
print(verified(Farm.objects.get(slug="alder-hill")))
"""


def write_fields(slug, name, count):
    farm, user = Farm.objects.get(slug=slug), User.objects.order_by("pk")[0]
    for number in range(count):
        field = FieldFactory.build(farm=farm, name=f"{name} {number}", written_by=None)
        write(field, by=user, now=timezone.now())


def in_a_thread(faults, *told):
    close_old_connections()
    try:
        write_fields(*told)
    except Exception as error:
        faults.append(error)
    finally:
        connections.close_all()


@pytest.mark.django_db(transaction=True)
def test_two_threads_on_postgresql_do_not_fork_the_chain():
    if connection.vendor != "postgresql":
        pytest.skip("A database in memory has room for one writer only.")
    farm = make_world().farm
    before = verified(farm).entries
    faults = []
    writers = [
        threading.Thread(
            target=in_a_thread, args=(faults, farm.slug, name, FIELDS_EACH)
        )
        for name in ("Left", "Right")
    ]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join(timeout=60)
    walked = verified(farm)
    assert faults == []
    assert walked.broken is None
    assert walked.entries == before + 2 * FIELDS_EACH


@pytest.mark.django_db(transaction=True)
def test_two_processes_on_sqlite_do_not_fork_the_chain(tmp_path):
    """They write to a copy of the tables that this test stands on."""
    if connection.vendor != "sqlite":
        pytest.skip("The tables here cannot be copied into a file.")
    before = verified(make_world().farm).entries
    (tmp_path / "db.sqlite3").write_bytes(connection.connection.serialize())

    def run(*told):
        return subprocess.Popen(
            [sys.executable, *told],
            cwd=ROOT,
            env=apart,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )

    apart = {k: v for k, v in os.environ.items() if k != "DATABASE_URL"}
    apart |= {"FARM_DATA": str(tmp_path), "DJANGO_SETTINGS_MODULE": "farm.settings"}
    apart["PYTHONPATH"] = str(ROOT)
    writers = [run("-c", WRITE_FIELDS, name) for name in ("Left", "Right")]
    for writer in writers:
        assert writer.wait(120) == 0, writer.stdout.read()
    walked, _ = run("-c", VERIFY).communicate(timeout=60)
    assert f"entries={before + 2 * FIELDS_EACH}" in walked
    assert "broken=None" in walked


@pytest.mark.django_db(transaction=True)
@pytest.mark.parametrize("time", ["first", "second"])
def test_what_a_test_commits_is_swept_out_and_the_guards_stand_again(time):
    assert Change.objects.count() == ChangeHead.objects.count() == 0
    assert "keep_farm_change_delete" in guarded(connection)
    write_fields(make_world().farm.slug, time, 1)
