"""Which addresses are pages to look at, and with whose eyes."""

from tests.addresses import addresses
from tests.browser.window import outside

VISITORS = {"sign-in", "come-in", "password-forgotten", "password-sent", "password-new"}
# A print of the packet takes its time, and is looked at as paper elsewhere.
FILES = ("-pdf", "-csv", "-xlsx", "-file", "reports:week")
# What sends on to another page, and is no page itself.
PASS_ON = {
    "icon",
    "start",
    "sign-in-second",
    "password-changed",
    "records:attachment-small",
    "records:new own-figures",
    "records:new own-assumptions",
    "records:new stations",
    "records:new certifier-numbers",
    "records:new finding-replies",
    "records:new changes-told",
    "reports:findings-now",
    "reports:changes-now",
}


def addresses_of(wanted):
    """The addresses of these rooms that are not files by their name."""
    return [
        one
        for one in addresses()
        if wanted(one.name.rpartition(":")[0]) and not one.name.endswith(FILES)
    ]


def page_at(window, cast, one):
    """The page at an address, as the one who may most sees it, or nothing."""
    window.sign_in(None if one.name in VISITORS else cast.owner)
    with outside():
        path = one.at(cast.ours)
    found = window.asked("GET", path)
    status = found.status_code
    assert status in {200, 405} or (status == 302 and str(one) in PASS_ON)
    # Parts of pages, which are fetched into others, are looked at there.
    is_whole = not found.streaming and found.content.startswith(b"<!doctype html>")
    return (path, found) if status == 200 and is_whole else None
