"""A browser window whose pages come straight from Django, without a server."""

import asyncio
import mimetypes
import os
import shutil
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from django.contrib.staticfiles import finders
from django.db import transaction
from django.test import Client

HERE = "http://localhost"
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
]
# What a browser says of itself that Django reads.
PASSED_ON = {"origin", "referer", "accept-language"}


def playwright():
    """The driver, or a skip that says why; on a machine for tests it must be there."""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        return missing("The package playwright is not installed.")
    if CHROMIUM is None:
        return missing("No browser called chromium is installed.")
    return sync_playwright()


def missing(why):
    if os.environ.get("CI"):
        pytest.fail(why)
    pytest.skip(why)


@contextmanager
def outside():
    """Hide the loop of the browser's driver, in which Django speaks to no database."""
    loop = asyncio._get_running_loop()
    asyncio._set_running_loop(None)
    try:
        yield
    finally:
        asyncio._set_running_loop(loop)


class Window:
    """One tab; what it asks for is answered by the client that is signed in."""

    def __init__(self, browser):
        # Only the judge is let past the policy; its own breaches are still reported.
        self.context = browser.new_context(bypass_csp=True, has_touch=False)
        self.context.route("**/*", self.answer)
        self.page = self.context.new_page()
        self.devtools = self.context.new_cdp_session(self.page)
        self.client, self.keeps = Client(), False
        self.files, self.ready = {}, {}
        self.complaints = []
        self.page.on("console", self.heard)
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))

    def heard(self, message):
        if message.type in {"error", "warning"}:
            self.complaints.append(message.text)

    def sign_in(self, person, *, keeps=False):
        """Whose eyes we look through, and whether what is done stays done."""
        self.keeps = keeps
        self.client = Client(enforce_csrf_checks=True, raise_request_exception=False)
        if person is None:
            return
        with outside():
            self.client.force_login(person)

    def answer(self, route, request):
        parts = urlsplit(request.url)
        if parts.path.startswith("/static/"):
            return self.hand_out(route, parts.path.removeprefix("/static/"))
        address = parts.path + (f"?{parts.query}" if parts.query else "")
        found = self.ready.pop(address, None) or self.asked(
            request.method,
            address,
            request.post_data_buffer or b"",
            request.headers.get("content-type", ""),
            headers=dict(self.said(request)),
        )
        headers = dict(found.headers)
        body = b"".join(found)
        return route.fulfill(status=found.status_code, headers=headers, body=body)

    def asked(self, method, address, *sent, **more):
        """Django's answer; unless told to keep, what it did is undone."""
        with outside(), transaction.atomic():
            found = self.client.generic(
                method, address, *sent, SERVER_NAME="localhost", **more
            )
            if not self.keeps:
                transaction.set_rollback(True)
        return found

    def said(self, request):
        for name, value in request.headers.items():
            if name in PASSED_ON or name.startswith("hx-"):
                yield name, value

    def hand_out(self, route, name):
        if name not in self.files:
            found = finders.find(name)
            self.files[name] = Path(found).read_bytes() if found else None
        body = self.files[name]
        kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
        status = 404 if body is None else 200
        return route.fulfill(status=status, body=body or b"", content_type=kind)

    def wear(self, *, width, tall=800, touch=False, night=False):
        """Be a telephone or a desk, by day or by night."""
        self.page.set_viewport_size({"width": width, "height": tall})
        self.devtools.send("Emulation.setTouchEmulationEnabled", {"enabled": touch})
        self.page.emulate_media(color_scheme="dark" if night else "light")

    def go(self, path, found=None):
        """Open an address, or show there an answer that Django gave already."""
        self.complaints.clear()
        if found is not None:
            self.ready[path] = found
        return self.page.goto(HERE + path)
