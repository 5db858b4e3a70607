"""A browser and a window of it for each file of tests."""

import pytest

from tests.browser.window import CHROMIUM, QUIET, Window, playwright


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
