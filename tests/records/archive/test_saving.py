"""A farm put into one file: what is in it, and who may have it."""

import io
import json
import re

import pytest
from django.apps import apps
from django.core.management import CommandError, call_command
from django.urls import reverse

from farm.models import Farm, Invitation, User
from records.models.calendars import CalendarAddress
from records.tables.archive import save_farm
from records.tables.archive.contents import kept
from tests.factories import (
    AttachmentFactory,
)
from tests.records.archive.files import (
    NOW,
    OUTLINE,
    archived,
    manifest,
    members,
    numbers_come_again,
)


# PostgreSQL goes on counting rows after a rollback, so a farm put back within one
def test_no_record_is_left_out_of_the_archive(saved):
    """Every model that has a farm, but for the keys to it and to calendars."""
    told = {one.table.model for one in kept()}
    owned = {
        model
        for model in apps.get_models()
        if any(field.related_model is Farm for field in model._meta.concrete_fields)
    }
    assert owned - told == {CalendarAddress, Invitation}
    assert {row["rows"] for row in manifest(saved)["members"].values() if "rows" in row}
    tables = {name for name in members(saved) if name.endswith(".csv")}
    assert tables == {"farm.csv", "people.csv"} | {one.member for one in kept()}


def test_no_table_of_the_archive_holds_what_cannot_be_carried():
    """A day set by the clock, or a link of many to many, would come back another."""
    for one in kept():
        assert not one.table.model._meta.many_to_many
        for field in one.table.model._meta.concrete_fields:
            assert not getattr(field, "auto_now", False)
            assert not getattr(field, "auto_now_add", False)


def test_the_outlines_are_a_map_as_rfc_7946_has_it(saved):
    """RFC 7946, sections 3.1.6 and 4: longitude first, no crs, rings closed."""
    told = json.loads(members(saved)["fields.geojson"])
    (feature,) = told["features"]
    assert (told["type"], feature["type"]) == ("FeatureCollection", "Feature")
    assert "crs" not in told
    assert feature["geometry"] == OUTLINE
    assert feature["properties"]["name"] == "=North"


def test_the_same_farm_is_saved_to_the_same_bytes(world):
    assert archived(world.farm) == archived(world.farm)


def test_a_neighbours_records_are_not_in_it(world):
    told = b"".join(members(archived(world.farm)).values()).decode()
    for row in world.theirs.records.values():
        assert str(row.client_key) not in told
    assert world.stranger.email not in told


def test_a_paper_whose_file_is_gone_is_told_of_and_does_not_stop_the_rest(world):
    paper = AttachmentFactory(farm=world.farm)
    paper.file.storage.delete(paper.file.name)
    out = io.BytesIO()
    told = save_farm(world.farm, out, now=NOW)
    assert told.lost == [paper.file.name]
    assert manifest(out.getvalue())["lost"] == [paper.file.name]


def test_the_owner_saves_the_farm_from_its_page(world, as_person):
    client = as_person(world.owner)
    address = reverse("records:archive", args=[world.farm.slug])
    assert b"The whole farm in one file" in client.get(address).content
    answer = client.post(address)
    data = b"".join(answer.streaming_content)
    assert re.search(
        r'filename="alder-hill-\d{4}-\d\d-\d\d.zip"',
        answer.headers["Content-Disposition"],
    )
    assert "fields.csv" in members(data)
    for person in (world.manager, world.crew, world.inspector):
        assert as_person(person).post(address).status_code == 403


@numbers_come_again
def test_the_commands_save_and_restore(saved, tmp_path, capsys):
    kept_as = tmp_path / "in.zip"
    kept_as.write_bytes(saved)
    call_command("restore_farm", kept_as, owner="anna@example.org")
    told = capsys.readouterr().out
    assert "Alder Hill is restored" in told
    password = re.search(r"with the password (\S+)", told)[1]
    assert User.objects.get(email="anna@example.org").check_password(password)
    target = tmp_path / "out.zip"
    call_command("save_farm", "alder-hill", output=target)
    assert target.stat().st_mode & 0o777 == 0o600
    before, after = members(saved), members(target.read_bytes())
    differ = {name for name in before if before[name] != after[name]}
    assert differ == {"manifest.json", "people.csv", "memberships.csv"}
    with pytest.raises(CommandError, match="is there already"):
        call_command("save_farm", "alder-hill", output=target)


def test_the_commands_say_plainly_what_is_wrong(db, tmp_path):
    with pytest.raises(CommandError, match="No farm has the short name"):
        call_command("save_farm", "nowhere", output=tmp_path / "x.zip")
    with pytest.raises(CommandError, match="cannot be read"):
        call_command("restore_farm", tmp_path / "none.zip", owner="a@example.org")
    (tmp_path / "no.zip").write_text("no")
    with pytest.raises(CommandError, match="damaged or not one"):
        call_command("restore_farm", tmp_path / "no.zip", owner="a@example.org")
    assert not User.objects.exists()
