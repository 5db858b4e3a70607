"""A sheet of pictures of every page, for a person to look the whole product over.

Only when it is asked for: LOOKS=1 with a run of tests/browser writes .looks/index.html.
"""

import os
from html import escape
from urllib.parse import quote

from tests.places import ROOT

WANTED = bool(os.environ.get("LOOKS"))
FOLDER = ROOT / ".looks"
HEAD = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Every page</title>
<style>
body { font: 14px/1.4 system-ui; margin: 24px; background: #e4e4e0; color: #222 }
main { display: grid; grid-template-columns: repeat(auto-fill, 484px); gap: 24px 20px }
section { background: #fff; padding: 10px; border: 1px solid #bbb }
h2 { font-size: 14px; margin: 0 0 8px; overflow-wrap: anywhere }
div { display: flex; gap: 8px; align-items: start }
a { display: block; height: 320px; overflow: hidden; border: 1px solid #999 }
img { display: block }
.phone { width: 144px } .phone img { width: 144px }
.desk { width: 306px } .desk img { width: 306px }
</style>
<h1>Every page</h1>
<p>On a telephone of 360 px and at a desk of 1280 px. A press shows the whole page.</p>
<main>
"""
SHOWN = '<a class="{look}" href="{at}"><img src="{at}" alt="{look}" loading="lazy"></a>'
LOOKS = {"360": "phone", "wide": "desk"}


def keep(window, name, look):
    """A picture of the page as it is worn now."""
    if WANTED:
        FOLDER.mkdir(exist_ok=True)
        plain = name.replace(":", " ").replace("/", " ")
        path = FOLDER / f"{plain} -- {look}.jpg"
        window.page.screenshot(path=path, full_page=True, type="jpeg", quality=60)


def bind():
    """One page of all pictures there are, page by page."""
    if not WANTED:
        return
    pages = {}
    for path in sorted(FOLDER.glob("*.jpg")):
        pages.setdefault(path.name.rpartition(" -- ")[0], []).append(path.name)
    told = [HEAD]
    for name, pictures in pages.items():
        shown = "".join(map(picture, pictures))
        told.append(f"<section><h2>{escape(name)}</h2><div>{shown}</div></section>")
    (FOLDER / "index.html").write_text("\n".join(told), encoding="utf-8")


def picture(name):
    look = name.rpartition(" -- ")[2].partition(".")[0]
    return SHOWN.format(look=LOOKS[look], at=escape(quote(name)))
