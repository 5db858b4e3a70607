"""A table is tried on a copy, so that nobody has to wait while it is looked at."""

import datetime as dt

import pytest
from django.db import connection

from farm.writing import write
from records.nouns import BY_SLUG
from records.tables import trial
from records.tables.aside import on_a_copy
from tests.world import make_world

NOW = dt.datetime(2026, 11, 25, 9, 30, tzinfo=dt.UTC)
FIELDS = BY_SLUG["fields"]


@pytest.mark.django_db(transaction=True)
def test_a_trial_of_a_table_does_not_hold_the_writers_lock():
    """Another connection writes while the rows are tried on a copy."""
    world = make_world()
    rows = "\r\n".join(f"Piece {n},field,900,organic" for n in range(3))
    files = {"fields": ("f.csv", f"name,kind,area_m2,status\r\n{rows}".encode())}
    told = {"farm": world.farm, "by": world.owner, "now": NOW, "keep": False}
    tried = trial.try_out(FIELDS, files, **told)
    assert (tried.counts["new"], tried.outcome.faults) == (3, [])
    assert FIELDS.model.objects.filter(farm=world.farm).count() == 1
    kept = trial.try_out(FIELDS, files, **{**told, "keep": True})
    assert (kept.counts["new"], kept.outcome.faults) == (3, [])
    assert kept.outcome.verdicts == tried.outcome.verdicts
    assert FIELDS.model.objects.filter(farm=world.farm).count() == 4
    if connection.vendor == "sqlite":
        with on_a_copy():
            assert connection.settings_dict["NAME"].endswith("copy.sqlite3")
            FIELDS.model.objects.filter(farm=world.farm).update(notes="on the copy")
    assert not FIELDS.model.objects.filter(notes="on the copy").exists()


@pytest.mark.django_db(transaction=True)
def test_what_was_written_between_the_checks_and_the_saving_is_checked_against(
    monkeypatch,
):
    """A name taken meanwhile is told as it is told at any other time."""
    if connection.vendor != "sqlite":
        pytest.skip("Elsewhere a table is checked and saved in one transaction.")
    world = make_world()
    files = {
        "fields": ("f.csv", b"name,kind,area_m2,status\r\nPiece,field,900,organic")
    }
    told = {"farm": world.farm, "by": world.owner, "now": NOW, "keep": True}
    tried = trial._tried

    def meanwhile(*rows, **more):
        outcome = tried(*rows, **more)
        piece = FIELDS.model(
            farm=world.farm, name="Piece", kind="field", area_m2=1, status="organic"
        )
        write(piece, by=world.owner, now=NOW)
        return outcome

    monkeypatch.setattr(trial, "_tried", meanwhile)
    (fault,) = trial.try_out(FIELDS, files, **told).outcome.faults
    assert (fault.row, fault.column) == (2, "name")
    assert FIELDS.model.objects.filter(name="Piece").count() == 1
