"""The folder for the data, and the key in it."""

import errno
import os
import stat
from pathlib import Path

import pytest

from farm.setup import place
from farm.setup.errors import SetupError


def test_the_data_folder_is_the_one_that_was_named(tmp_path):
    assert place.data_folder({"FARM_DATA": str(tmp_path)}) == tmp_path


def test_each_checkout_has_a_data_folder_of_its_own_outside_itself(tmp_path):
    one, two = (place.data_folder({}, tmp_path / name) for name in ("one", "two"))
    assert one != two
    assert tmp_path not in one.parents


def test_a_relative_xdg_data_home_is_ignored():
    """XDG Base Directory Specification: relative paths are invalid, ignore them."""
    home = Path("/home/ana")
    usual = home / ".local" / "share" / "cover-between"
    assert place.personal_place({"XDG_DATA_HOME": "here"}, home, "linux") == usual
    assert place.personal_place({}, home, "linux") == usual


def test_an_absolute_xdg_data_home_is_used():
    said = place.personal_place({"XDG_DATA_HOME": "/srv"}, Path("/root"), "linux")
    assert said == Path("/srv/cover-between")


@pytest.mark.parametrize(
    ("platform", "folder"),
    [("darwin", "Library/Application Support"), ("win32", "AppData/Local")],
)
def test_other_systems_keep_the_data_where_they_keep_such_things(platform, folder):
    home = Path("/home/ana")
    assert place.personal_place({}, home, platform) == home / folder / "cover-between"


def test_a_folder_that_takes_no_files_is_named_with_the_reason(tmp_path, monkeypatch):
    def refuse(*_, **__):
        raise OSError(errno.EROFS, "Read-only file system")

    monkeypatch.setattr(Path, "mkdir", refuse)
    with pytest.raises(SetupError, match="That disk is read-only") as stopped:
        place.made(tmp_path / "farm")
    assert str(tmp_path / "farm") in str(stopped.value)
    assert "FARM_DATA=" in str(stopped.value)


def test_a_file_in_the_way_of_the_folder_is_said(tmp_path):
    (tmp_path / "file").touch()
    with pytest.raises(SetupError, match="a file, not a folder"):
        place.made(tmp_path / "file" / "farm")


def test_a_full_disk_is_called_full(tmp_path):
    error = OSError(errno.ENOSPC, "No space left on device")
    assert "The disk is full" in str(place.unwritable(tmp_path, error))


def test_the_secret_key_is_made_once_and_kept(tmp_path):
    first = place.secret_key(tmp_path)
    assert len(first) >= 50
    assert place.secret_key(tmp_path) == first
    assert [path.name for path in tmp_path.iterdir()] == [place.KEY_FILE]


@pytest.mark.skipif(os.name != "posix", reason="no such file modes here")
def test_the_secret_key_can_be_read_by_its_owner_only(tmp_path):
    place.secret_key(tmp_path)
    assert stat.S_IMODE((tmp_path / place.KEY_FILE).stat().st_mode) == 0o600


@pytest.mark.parametrize("remains", [b"", b"short", b"\xff" * 80])
def test_a_damaged_secret_key_is_not_used(tmp_path, remains):
    (tmp_path / place.KEY_FILE).write_bytes(remains)
    with pytest.raises(SetupError, match="is damaged"):
        place.secret_key(tmp_path)
