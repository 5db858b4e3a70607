"""A sheet of pictures of every page, for a person to look the whole product over.

Only when it is asked for: LOOKS=1 with a run of tests/browser writes .looks/index.html.
"""

import os
from html import escape

from tests.places import ROOT

WANTED = bool(os.environ.get("LOOKS"))
FOLDER = ROOT / ".looks"
HEAD = """<!doctype html><meta charset="utf-8"><title>Every page</title>
<style>
body { font: 14px system-ui; background: #ddd }
section { display: flex; gap: 12px; align-items: start; margin-bottom: 24px }
img { border: 1px solid #888; background: #fff }
</style>
"""


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
        shown = "".join(f'<img src="{escape(one)}" loading="lazy">' for one in pictures)
        told.append(f"<h2>{escape(name)}</h2><section>{shown}</section>")
    (FOLDER / "index.html").write_text("\n".join(told), encoding="utf-8")
