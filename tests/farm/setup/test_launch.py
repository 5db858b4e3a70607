"""From a bare checkout to a farm that runs: the half that needs only Python."""

import ast
import io
import re
import sys
import tomllib
from pathlib import Path

import pytest

from farm.setup import launch, native, packages, place
from farm.setup.errors import SetupError
from farm.setup.steps import Steps

MANAGE = place.CHECKOUT / "manage.py"


def test_a_python_too_old_is_told_so_before_anything_else(monkeypatch):
    monkeypatch.setattr(sys, "version_info", (3, 6, 9))
    with pytest.raises(SystemExit) as stopped:
        exec(compile(MANAGE.read_text(), "manage.py", "exec"), {"__name__": "manage"})
    assert "needs Python 3.11 or newer; this is Python 3.6." in str(stopped.value)


def test_manage_py_can_be_read_by_a_python_of_long_ago():
    tree = ast.parse(MANAGE.read_text("ascii"), feature_version=(3, 4))
    assert not [node for node in ast.walk(tree) if isinstance(node, ast.JoinedStr)]


def test_the_python_asked_for_is_the_one_the_project_file_asks_for():
    project = tomllib.loads((place.CHECKOUT / "pyproject.toml").read_text())["project"]
    (asked,) = re.findall(r"version_info < \((\d+), (\d+)\)", MANAGE.read_text())
    assert project["requires-python"] == f">={'.'.join(asked)}"


@pytest.mark.parametrize("path", sorted(Path(launch.__file__).parent.glob("*.py")))
def test_the_set_up_needs_nothing_but_the_standard_library(path):
    allowed = {*sys.stdlib_module_names, "farm"}
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            assert {alias.name.split(".")[0] for alias in node.names} <= allowed
        if isinstance(node, ast.ImportFrom):
            assert str(node.module).split(".")[0] in allowed
            assert not str(node.module).startswith("farm") or "setup" in node.module


def test_each_system_is_told_the_one_line_that_helps():
    def only(name):
        return lambda asked: name if asked == name else None

    assert native.advice("linux", only("apt-get")).startswith("sudo apt-get install")
    assert native.advice("linux", only("dnf")).startswith("sudo dnf install")
    assert native.advice("darwin", only(None)) == "brew install pango"
    assert "MSYS2" in native.advice("win32", only(None))
    assert "Pango" in native.advice("linux", only(None))


def test_missing_libraries_do_not_stop_the_set_up(monkeypatch, tmp_path):
    monkeypatch.setattr(native, "present", lambda: False)
    monkeypatch.setattr(native, "may_install", lambda: False)
    monkeypatch.setattr(packages, "ensure", lambda *_: False)
    monkeypatch.setenv("FARM_DATA", str(tmp_path))
    out = io.StringIO()
    launch._set_up(Steps(4, out=out))
    assert "4/4 Libraries for the printed report … missing; no PDF until" in (
        out.getvalue()
    )


def test_an_interrupted_set_up_ends_without_a_listing_of_code(monkeypatch, capsys):
    def interrupt(_):
        raise KeyboardInterrupt

    monkeypatch.setattr(launch, "_dispatch", interrupt)
    assert launch.main(["manage.py", "start"]) == 130
    assert capsys.readouterr().err == "\nStopped.\n"


def test_a_step_that_fails_is_closed_before_the_reason_is_given():
    out = io.StringIO()
    with pytest.raises(SetupError), Steps(2, out=out).step("Folder"):
        raise SetupError("no")
    assert out.getvalue() == "1/2 Folder … stopped\n"
