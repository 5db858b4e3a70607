"""Nothing a person types makes the printer open a file or a connection.

Watched from below: Python itself reports every file opened and every connection.
"""

import sys
from urllib.parse import quote

import pytest

from reports.pdf import to_pdf

CSS = "@page { size: A4 }"
WATCHED = {"open", "socket.connect", "socket.getaddrinfo", "subprocess.Popen"}
seen = []
watching = []


def note(event, args):
    if watching and event in WATCHED:
        seen.append((event, str(args[:2])))


sys.addaudithook(note)


@pytest.fixture
def canary(tmp_path):
    path = tmp_path / "canary.svg"
    path.write_text("<svg xmlns='http://www.w3.org/2000/svg'><text>CANARY</text></svg>")
    # The engine and its fonts are opened once, before anybody watches.
    to_pdf("<html lang=en><title>x</title><p>x</p>", css=CSS)
    seen.clear()
    watching.append(True)
    yield path
    watching.clear()


def drawing(inside):
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9" '
        f'xmlns:xlink="http://www.w3.org/1999/xlink">{inside}</svg>'
    )
    return f'<img src="data:image/svg+xml,{quote(svg)}" alt="">'


@pytest.mark.parametrize(
    "inside",
    [
        '<image href="{url}" width="9" height="9"/>',
        '<image xlink:href="{url}" width="9" height="9"/>',
        '<use href="{url}#a"/>',
        '<style>@import url("{url}");</style>',
        '<rect width="9" height="9" fill="url({url}#a)"/>',
        '<script href="{url}"/>',
        "<foreignObject><iframe src='{url}'/></foreignObject>",
    ],
)
@pytest.mark.parametrize("way", ["file", "net", "both in the page"])
def test_a_drawing_that_points_outside_is_printed_without_it(inside, way, canary):
    url = "http://127.0.0.1:9/x.svg" if way == "net" else canary.as_uri()
    body = inside.format(url=url)
    hostile = f"<svg>{body}</svg>" if "page" in way else drawing(body)
    assert to_pdf(f"<html lang=en><title>x</title>{hostile}<p>kept</p>", css=CSS)
    assert [one for one in seen if "canary" in one[1] or one[0] != "open"] == []


@pytest.mark.parametrize(
    "entity",
    [
        '<!DOCTYPE svg [<!ENTITY e SYSTEM "{url}">]>',
        '<!DOCTYPE svg SYSTEM "{url}">',
        '<?xml-stylesheet href="{url}"?>',
    ],
)
def test_an_entity_of_a_drawing_is_not_fetched(entity, canary):
    svg = entity.format(url=canary.as_uri())
    svg += '<svg xmlns="http://www.w3.org/2000/svg"><text>&e;</text></svg>'
    page = f'<img src="data:image/svg+xml,{quote(svg)}" alt=""><p>kept</p>'
    assert to_pdf(f"<html lang=en><title>x</title>{page}", css=CSS)
    assert [one for one in seen if "canary" in one[1] or one[0] != "open"] == []


def test_the_watch_itself_sees_a_file_that_is_opened(canary):
    canary.read_text()
    assert any("canary" in told for _event, told in seen)
