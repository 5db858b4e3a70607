"""The half of the start that needs the database."""

import errno
import io
import re
from types import SimpleNamespace

import pytest
from django.core.management import call_command
from django.db import OperationalError

from farm.management.commands import start
from farm.models import User
from farm.setup.errors import SetupError


@pytest.mark.django_db
def test_the_first_owner_gets_a_password_that_works_and_is_shown_once():
    owner, told = start.first_owner(None)
    (password,) = re.findall(r"with the password (\S+)", told)
    assert owner.email == "owner@localhost"
    assert owner.check_password(password)
    assert start.first_owner(None) == (owner, "owner@localhost")


@pytest.mark.django_db
def test_the_owner_may_be_named_and_is_found_again_in_capitals():
    owner, _ = start.first_owner("ana@example.org")
    assert start.first_owner("Ana@Example.org") == (owner, "ana@example.org")


@pytest.mark.django_db
def test_a_second_owner_is_not_made_by_a_second_start():
    start.first_owner("ana@example.org")
    with pytest.raises(SetupError, match="Nobody here signs in as ben@example.org"):
        start.first_owner("ben@example.org")
    assert User.objects.count() == 1


@pytest.mark.django_db
def test_an_owner_without_an_address_is_refused():
    with pytest.raises(SetupError, match="cannot be used as an address"):
        start.first_owner("ana")


@pytest.mark.django_db
def test_nobody_is_asked_about_the_demo_farm_when_nobody_is_there(monkeypatch):
    monkeypatch.setattr("sys.stdin", io.StringIO("y\n"))
    assert start.wants_demo(None) is False
    assert start.wants_demo(True) is True


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("answer", "wanted"), [("y", True), (" YES ", True), ("", False), ("n", False)]
)
def test_the_demo_farm_is_loaded_only_after_a_yes(monkeypatch, answer, wanted):
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda _: answer)
    assert start.wants_demo(None) is wanted


@pytest.mark.django_db
def test_tables_that_are_up_to_date_are_left_alone():
    assert start.migrate() == "unchanged"


def test_page_files_are_collected_once(settings, tmp_path, monkeypatch):
    asked = []
    monkeypatch.setattr(start, "call_command", lambda name, **_: asked.append(name))
    settings.STATIC_ROOT = tmp_path
    assert [start.collect(), start.collect()] == ["collected", "unchanged"]
    assert asked == ["collectstatic"]


@pytest.mark.parametrize(
    ("vendor", "reason", "advice"),
    [
        ("sqlite", "database or disk is full", "Is there room on the disk"),
        ("sqlite", "attempt to write a readonly database", "may you write in"),
        ("postgresql", "connection failed: refused\nmore", "DATABASE_URL"),
    ],
)
def test_what_a_database_refuses_is_said_in_a_sentence(
    monkeypatch, vendor, reason, advice
):
    monkeypatch.setattr(start, "connection", SimpleNamespace(vendor=vendor))
    with pytest.raises(SetupError, match=advice) as stopped, start.plainly():
        raise OperationalError(reason)
    assert "more" not in str(stopped.value)


def test_a_full_disk_is_said_with_the_file_that_found_no_room():
    with (
        pytest.raises(SetupError, match="The disk is full") as stopped,
        start.plainly(),
    ):
        raise OSError(errno.ENOSPC, "No space left on device", "/srv/static")
    assert "Cannot write in /srv/static." in str(stopped.value)


def test_a_fault_of_the_program_itself_is_not_blamed_on_the_disk():
    with pytest.raises(FileNotFoundError), start.plainly():
        raise FileNotFoundError(errno.ENOENT, "No such file", "crops.json")


def test_the_port_is_looked_at_again_before_serving(monkeypatch):
    told = []
    monkeypatch.setattr(start, "prepare", lambda *_: None)
    monkeypatch.setattr(start.listen, "require_free", lambda *to: told.append(to))
    monkeypatch.setattr(start.serving, "serve", lambda *to: told.append(to[:2]))
    monkeypatch.setattr(start.os, "umask", lambda _: None)
    call_command("start", port=8123)
    assert told == [("127.0.0.1", 8123)] * 2
