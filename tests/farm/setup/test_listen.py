"""The address to serve on."""

import socket

import pytest

from farm.setup import launch, listen, options, serving
from farm.setup.errors import SetupError


@pytest.fixture
def taken():
    with socket.socket() as server:
        server.bind(("127.0.0.1", 0))
        server.listen()
        yield server.getsockname()[1]


def test_a_port_that_is_taken_is_said_and_a_free_one_named(taken):
    with pytest.raises(SetupError, match=f"Port {taken} is taken") as stopped:
        listen.require_free("127.0.0.1", taken)
    free = int(str(stopped.value).split()[-1])
    listen.require_free("127.0.0.1", free)


def test_a_taken_port_is_found_out_before_anything_is_set_up(
    taken, monkeypatch, capsys
):
    monkeypatch.setattr(launch, "_set_up", lambda *_: pytest.fail("set up"))
    monkeypatch.delenv(launch.READY, raising=False)
    assert launch.main(["manage.py", "start", "--port", str(taken)]) == 1
    assert "is taken by another program" in capsys.readouterr().err


def test_an_address_of_another_machine_is_refused():
    """192.0.2.0/24 belongs to no machine: RFC 5737."""
    with pytest.raises(SetupError, match="no address 192.0.2.1"):
        listen.require_free("192.0.2.1", 8000)


@pytest.mark.parametrize("text", ["0", "65536", "80a", "-1", ""])
def test_what_is_no_port_is_refused_with_the_usage(text, capsys):
    with pytest.raises(SystemExit) as stopped:
        options.read([f"--port={text}"])
    assert stopped.value.code == 2
    assert "a number from 1 to 65535" in capsys.readouterr().err


def test_the_demo_farm_is_asked_about_unless_something_is_said():
    assert options.read([]).demo is None
    assert options.read(["--demo"]).demo is True
    assert options.read(["--no-demo"]).demo is False


def test_an_address_is_written_as_a_browser_takes_it():
    assert listen.url("127.0.0.1", 8000) == "http://127.0.0.1:8000/"
    assert listen.url("::1", 8000) == "http://[::1]:8000/"


def test_the_server_suits_the_system():
    assert "gunicorn" in serving.command("::1", 8000, "linux")
    assert "[::1]:8000" in serving.command("::1", 8000, "linux")
    assert "waitress" in serving.command("127.0.0.1", 8000, "win32")
