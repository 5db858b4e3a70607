"""A browser, a window of it, and a judge for each file of tests."""

from contextlib import contextmanager

import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse

from tests.browser import sheet
from tests.browser.judging import Judge
from tests.browser.window import CHROMIUM, QUIET, Window, outside, playwright


@pytest.fixture(scope="module")
def db(cast, django_db_blocker):
    """The cast's rows for a file of tests; its name tells pytest to make tables."""
    with django_db_blocker.unblock():
        yield


@pytest.fixture(scope="module")
def window(db):
    """Looks at the cast's farm; the browser is gone before the cast is."""
    with playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        yield Window(browser)
        browser.close()


@pytest.fixture(scope="module")
def judge(window):
    yield Judge(window)
    sheet.bind()


@contextmanager
def visiting(person):
    """A client whose doings are undone."""
    with outside(), transaction.atomic():
        client = Client(raise_request_exception=False)
        if person:
            client.force_login(person)
        yield client
        transaction.set_rollback(True)


@pytest.fixture(scope="module")
def shown(judge):
    """What is wrong with the answer this person gets, and its status."""

    def faults(person, name, *told, sent=None):
        path = reverse(name, args=told)
        with visiting(person) as client:
            found = client.get(path) if sent is None else client.post(path, sent)
        judge.window.sign_in(person)
        words = " ".join([name, *map(str, told[1:]), str(found.status_code)])
        return found.status_code, judge.faults(path, found, name=words)

    return faults
