"""What every test stands on: the cast, quick passwords, and no way out to the net."""

import functools
import ipaddress
import pickle
import socket

import pytest
from django.conf import settings
from django.db import transaction
from django.test import Client

from tests.sweeping import let_tests_sweep
from tests.world import make_world

# Commands, not tests: they would build their farms when they are read.
collect_ignore = ["bench"]
PLAIN_FILES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"},
}


# Begun first, or one worker would end alone with them.
LONG = (
    "tests/test_access.py",
    "tests/browser/",
    "tests/test_inspector.py",
    "tests/farm/test_two_writers.py",
    "tests/reports/test_demo_faults.py",
    "tests/reports/test_p",
    "tests/reports/test_season_paper.py",
    "tests/records/demo/",
    "tests/records/tables/",
    "tests/test_",
)


def pytest_collection_modifyitems(items):
    items.sort(key=lambda one: not one.nodeid.startswith(LONG))


def pytest_configure():
    # Safe passwords are slow on purpose, and nobody collects files for a test.
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
    settings.STORAGES = PLAIN_FILES
    let_tests_sweep()
    for name in ("connect", "connect_ex", "sendto"):
        setattr(socket.socket, name, only_here(getattr(socket.socket, name)))


def only_here(call):
    """Let a socket speak to this machine only."""

    @functools.wraps(call)
    def guarded(self, *args):
        # A datagram socket that is only connected has sent nothing yet.
        silent = self.type == socket.SOCK_DGRAM and call.__name__ == "connect"
        if self.family != socket.AF_UNIX and not silent and not is_here(args[-1]):
            raise RuntimeError(f"A test reached for the network: {args[-1]}")
        return call(self, *args)

    return guarded


def is_here(address):
    host = address[0]
    try:
        return host == "localhost" or ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


@pytest.fixture(scope="module")
def cast(django_db_setup, django_db_blocker):
    """The cast, made once for a file of tests and struck with its last one."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_world()
        transaction.set_rollback(True)


@pytest.fixture(scope="module")
def cast_as_made(cast):
    """The cast as bytes, of which a copy is made six times as fast."""
    return pickle.dumps(cast)


@pytest.fixture
def world(cast_as_made, db):
    """The cast as it was made; what a test writes is undone after it.

    A test that needs rows really committed calls ``make_world`` itself.
    """
    return pickle.loads(cast_as_made)


@pytest.fixture
def as_person():
    """Sign a person in; nobody is a visitor."""

    def signed_in(person):
        client = Client()
        if person is not None:
            client.force_login(person)
        return client

    return signed_in


@pytest.fixture
def owner_client(world, as_person):
    return as_person(world.owner)
