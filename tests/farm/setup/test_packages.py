"""The environment and its packages; nothing is really installed here."""

import errno
import tomllib
from pathlib import Path

import pytest

from farm.setup import packages, place
from farm.setup.errors import SetupError


@pytest.fixture
def installer(monkeypatch):
    """An installer that only notes what it was asked, and makes what would be made."""
    asked = []

    def run(command, _failure, environment):
        asked.append(command)
        if command[2] == "venv":
            python = packages.python(environment)
            python.parent.mkdir(parents=True)
            python.touch()
            (environment / "pyvenv.cfg").write_text("version = 3.11.7\n")
            (environment / "lib/python3.11/site-packages/pip").mkdir(parents=True)

    monkeypatch.setattr(packages, "_run", run)
    return asked


def contents(folder):
    return {
        path: (path.stat().st_mtime_ns, path.is_file() and path.read_bytes())
        for path in folder.rglob("*")
    }


def test_a_second_run_changes_nothing(tmp_path, installer):
    environment = tmp_path / ".venv"
    assert packages.ensure(environment=environment)
    before, asked = contents(tmp_path), len(installer)
    assert not packages.ensure(environment=environment)
    assert (contents(tmp_path), len(installer)) == (before, asked)


def test_only_what_the_project_file_names_is_installed(tmp_path, installer):
    packages.ensure(environment=tmp_path / ".venv")
    project = tomllib.loads((place.CHECKOUT / "pyproject.toml").read_text())["project"]
    assert installer[-1][-len(project["dependencies"]) :] == project["dependencies"]
    assert "." not in installer[-1]


def test_whoever_can_test_can_serve_without_installing_again(tmp_path, installer):
    packages.ensure("test", environment=tmp_path / ".venv")
    assert not packages.ensure(environment=tmp_path / ".venv")


def test_whoever_can_serve_must_still_install_to_test(tmp_path, installer):
    packages.ensure(environment=tmp_path / ".venv")
    assert packages.ensure("test", environment=tmp_path / ".venv")


def test_another_list_or_another_python_needs_another_installation(tmp_path):
    config = tmp_path / "pyvenv.cfg"
    config.write_text("version = 3.11.7\n")
    one = packages.stamp(["django~=5.2.0", "numpy"], tmp_path)
    assert packages.stamp(["numpy", "django~=5.2.0"], tmp_path) == one
    assert packages.stamp(["numpy", "django~=6.0.0"], tmp_path) != one
    config.write_text("version = 3.12.1\n")
    assert packages.stamp(["django~=5.2.0", "numpy"], tmp_path) != one


def test_an_installation_that_was_cut_off_is_taken_up_again(tmp_path, installer):
    environment = tmp_path / ".venv"
    packages.make(environment)
    assert not packages.current(packages.wanted(), environment)
    assert packages.ensure(environment=environment)
    assert [command[2] for command in installer] == ["venv", "pip"]


def test_a_folder_that_is_no_environment_is_left_alone(tmp_path, installer):
    (tmp_path / ".venv").mkdir()
    (tmp_path / ".venv" / "mine").touch()
    with pytest.raises(SetupError, match="is not a Python environment"):
        packages.ensure(environment=tmp_path / ".venv")
    assert installer == []


def test_a_checkout_that_takes_no_files_is_named(tmp_path, monkeypatch, installer):
    def refuse(*_, **__):
        raise OSError(errno.EROFS, "Read-only file system")

    monkeypatch.setattr(Path, "touch", refuse)
    with pytest.raises(SetupError, match="read-only") as stopped:
        packages.ensure(environment=tmp_path / ".venv")
    assert str(tmp_path / ".venv") in str(stopped.value)
    assert "FARM_DATA" not in str(stopped.value)


def test_a_python_without_environments_says_what_to_install(
    tmp_path, monkeypatch, installer
):
    monkeypatch.setattr(packages.importlib.util, "find_spec", lambda _: None)
    with pytest.raises(SetupError, match=r"apt-get install python3\.\d+-venv"):
        packages.ensure(environment=tmp_path / ".venv")


@pytest.mark.parametrize(
    ("output", "advice"),
    [
        ("OSError: [Errno 28] No space left on device", "is full"),
        ("Temporary failure in name resolution", "on line"),
        ("[Errno 30] Read-only file system", "read-only"),
        ("error: metadata-generation-failed", "start afresh"),
    ],
)
def test_a_failed_installation_says_what_to_try(tmp_path, output, advice):
    said = packages.explain("It failed", f"first\n\nERROR: {output}", tmp_path)
    assert advice in said
    assert f"| ERROR: {output}" in said
    assert "first" not in said
