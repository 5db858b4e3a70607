"""The test run itself: it touches no farm's data and leaves this machine alone."""

import os
import socket
from pathlib import Path

import pytest
from django.conf import settings
from django.contrib.auth.hashers import make_password

from tests.apart import FOLDER


def test_the_data_of_a_test_run_lies_in_a_folder_of_its_own():
    assert os.environ["FARM_DATA"] == FOLDER
    assert Path(FOLDER) == settings.DATA_DIR
    assert Path(settings.MEDIA_ROOT).is_relative_to(FOLDER)


def test_a_test_that_reaches_for_the_network_is_stopped():
    """192.0.2.0/24 belongs to no machine: RFC 5737."""
    with (
        socket.socket() as outward,
        pytest.raises(RuntimeError, match="reached for the network"),
    ):
        outward.connect(("192.0.2.1", 80))


def test_this_machine_may_still_be_spoken_to():
    with socket.socket() as server, socket.socket() as client:
        server.bind(("127.0.0.1", 0))
        server.listen()
        client.connect(server.getsockname())


def test_passwords_are_quick_here():
    assert make_password("earth").startswith("md5$")
