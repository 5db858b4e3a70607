"""A browser driven from a thread of its own, and a server that can lose an answer."""

import os
import shutil
import socket
import threading
from concurrent.futures import ThreadPoolExecutor

from django.http import HttpResponse
from playwright.sync_api import sync_playwright

CHROMIUM = shutil.which("chromium")
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-dev-shm-usage",
]
SCREENSHOTS = os.environ.get("SCREENSHOTS", "")


class Far:
    """Something of the browser's, used from the test's thread.

    The browser's library keeps a loop running in its thread, and Django would look
    for its tables in that loop's place instead of the test's.
    """

    def __init__(self, thread, thing):
        self._thread, self._thing = thread, thing

    def __getattr__(self, name):
        value = self._thread.submit(getattr, self._thing, name).result()
        if not callable(value):
            return self._wrapped(value)

        def call(*told, **more):
            plain = [getattr(one, "_thing", one) for one in told]
            return self._wrapped(self._thread.submit(value, *plain, **more).result())

        return call

    def _wrapped(self, value):
        if isinstance(value, list):
            return [self._wrapped(one) for one in value]
        ours = type(value).__module__.startswith("playwright")
        return Far(self._thread, value) if ours else value


def open_browser():
    """A browser, and how to close it."""
    thread = ThreadPoolExecutor(1)
    maker = thread.submit(sync_playwright().start).result()
    browser = thread.submit(
        maker.chromium.launch, executable_path=CHROMIUM, args=FLAGS
    ).result()

    def close():
        thread.submit(browser.close).result()
        thread.submit(maker.stop).result()
        thread.shutdown()

    return Far(thread, browser), close


class Server:
    """What stands between the browser and the views while a test runs."""

    turn = threading.Lock()
    # Where the server is killed when something is sent: "before" or "after" saving.
    dies = ""
    dead = False

    @classmethod
    def rises(cls):
        cls.dies, cls.dead = "", False


def one_at_a_time(answer):
    """One request after another: in tests all threads share one connection."""

    def through(request):
        with Server.turn:
            sends = request.method == "POST" and Server.dies
            if Server.dead or sends == "before":
                return broken(request)
            response = answer(request)
        return broken(request) if sends else response

    return through


def broken(request):
    """No answer at all: the line is cut under it, as when a server is killed."""
    Server.dead = True
    line = request.environ["wsgi.input"]._read.__self__.raw._sock
    line.shutdown(socket.SHUT_RDWR)
    return HttpResponse()
