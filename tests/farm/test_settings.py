"""Settings: safe when nothing is said, and nonsense stops the start."""

import os
import runpy
import subprocess
import sys

import pytest
from django.core.exceptions import ImproperlyConfigured

from farm.setup import place


@pytest.fixture
def settings_with(monkeypatch, tmp_path):
    def load(**environ):
        for name in ("DATABASE_URL", "DEBUG", "EMAIL_URL", "ORIGIN", "SECRET_KEY"):
            monkeypatch.delenv(name, raising=False)
        monkeypatch.setenv("FARM_DATA", str(tmp_path))
        for name, value in environ.items():
            monkeypatch.setenv(name, value)
        return runpy.run_path(str(place.CHECKOUT / "farm" / "settings.py"))

    return load


def test_when_nothing_is_said_the_farm_is_in_one_file_and_safe(settings_with, tmp_path):
    settings = settings_with()
    database = settings["DATABASES"]["default"]
    assert database["NAME"] == tmp_path / "db.sqlite3"
    assert database["OPTIONS"]["transaction_mode"] == "IMMEDIATE"
    assert settings["DEBUG"] is False
    assert settings["SECURE_SSL_REDIRECT"] is False
    assert settings["SECRET_KEY"] == (tmp_path / "secret-key").read_text()


def test_a_database_url_moves_the_farm_to_a_server(settings_with):
    settings = settings_with(DATABASE_URL="postgres://farm@localhost/farm")
    assert settings["DATABASES"]["default"]["ENGINE"].endswith("postgresql")


@pytest.mark.parametrize(
    "environ",
    [
        {"DATABASE_URL": "nonsense"},
        {"ORIGIN": "nonsense"},
        {"EMAIL_URL": "nonsense"},
        {"DEBUG": "perhaps"},
        {"TIME_ZONE": "Mars/Olympus"},
        {"TIME_ZONE": "../etc"},
    ],
)
def test_nonsense_in_the_environment_stops_the_start(settings_with, environ):
    with pytest.raises(ImproperlyConfigured, match=next(iter(environ))):
        settings_with(**environ)


def test_behind_an_https_address_every_check_for_deployment_is_met(tmp_path):
    said = subprocess.run(
        [
            sys.executable,
            place.CHECKOUT / "manage.py",
            "check",
            "--deploy",
            "--fail-level",
            "WARNING",
        ],
        env={
            **os.environ,
            "FARM_DATA": str(tmp_path),
            "ORIGIN": "https://farm.example.org",
        },
        capture_output=True,
        text=True,
    )
    assert (said.returncode, said.stderr) == (0, "")
