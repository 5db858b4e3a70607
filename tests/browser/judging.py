"""What is found wrong with a page: by axe-core, and by looking for ourselves."""

import importlib.util
import re
from functools import cache
from pathlib import Path

from tests.browser import sheet

WCAG_22_AA = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
# What colours alone decide, for the night.
OF_COLOUR = ["color-contrast", "link-in-text-block"]

JUDGE = """
async (only) => {
  const found = await axe.run(document, {
    runOnly: only, resultTypes: ["violations"], preload: false,
  });
  return found.violations.flatMap((one) => one.nodes.slice(0, 4).map((node) =>
    `${one.id}: ${node.html.slice(0, 160)} ${node.failureSummary.slice(0, 240)}`));
}
"""
# A page must not be wider than the screen; only a box that scrolls by itself may.
WIDER = """
() => {
  const room = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= room) return [];
  const boxes = (element) => element.closest(".wide, .scroll, .unseen, .skip");
  return ["wider than the screen: " + [...document.body.querySelectorAll("*")]
    .filter((one) => one.getBoundingClientRect().right > room + 1 && !boxes(one))
    .slice(0, 3).map((one) => one.outerHTML.slice(0, 120)).join(" | ")];
}
"""
# Everything to press or fill in is reached by Tab, in the order of the page, and
# shows it. The start page of a browser counts as keyboard use, so focus() shows too.
UNSEEN_FOCUS = """
() => {
  const wanted = "a[href], button, input, select, textarea, summary, [tabindex]";
  const shown = (one) => one.checkVisibility({visibilityProperty: true}) &&
    !one.disabled && one.type !== "hidden";
  const told = (why, one) => `${why}: ${one.outerHTML.slice(0, 160)}`;
  const faults = [], known = new Set();
  for (const one of document.querySelectorAll(wanted)) {
    const look = [one, one.parentElement].map((of) => of.tagName + of.className);
    if (one.tabIndex === 0 && known.has(look + one.type)) continue;
    if (shown(one)) known.add(look + one.type);
    if (one.tabIndex > 0) faults.push(told("out of order", one));
    if (!shown(one) || one.matches("main, [role=alert]")) continue;
    if (one.tabIndex < 0) { faults.push(told("not reached by Tab", one)); continue; }
    const before = getComputedStyle(one).outlineStyle;
    one.focus();
    const style = getComputedStyle(one);
    if (document.activeElement !== one) faults.push(told("takes no focus", one));
    else if (style.outlineStyle === before || parseFloat(style.outlineWidth) < 2)
      faults.push(told("focus is not seen", one));
  }
  document.activeElement?.blur();
  scrollTo(0, 0);
  return faults.slice(0, 6);
}
"""
# Of rows, entries and strokes that are alike, a few are judged for all.
THIN = """
() => {
  const many = "tbody tr, li, option, dl > div, svg *:not(title, desc, defs, defs *)";
  const look = (one) => one.tagName + (one.getAttribute("class") ?? "");
  const told = new Map();
  for (const one of document.querySelectorAll(many)) {
    if (!one.isConnected) continue;
    const of = told.get(one.parentElement) ?? new Map();
    told.set(one.parentElement, of);
    const key = [one, ...one.querySelectorAll("*")].map(look).join();
    of.set(key, (of.get(key) ?? 0) + 1);
    if (of.get(key) > 3) one.remove();
  }
}
"""


@cache
def axe():
    found = importlib.util.find_spec("axe_playwright_python")
    return (Path(found.origin).parent / "axe.min.js").read_text(encoding="utf-8")


TAG = re.compile(r"<([a-z][a-z0-9]*)([^>]*)>")
TOLD = re.compile(r'\s(class|type|role|[a-z-]+)(?:="([^"]*)")?')
# What is filled in makes no other page of it.
FILLED = {"value", "checked", "selected", "open"}
NAMED = re.compile(r'\sclass="[^"]*"')
SPOKEN = {"class", "type", "role"}


def shape(html):
    """The tags of a page without what they hold: two alike break the same rules."""
    return frozenset(
        (
            tag,
            *sorted(
                (n, v if n in SPOKEN else "")
                for n, v in TOLD.findall(rest)
                if n not in FILLED
            ),
        )
        for tag, rest in TAG.findall(html)
        if tag != "option"
    )


class Judge:
    """Looks a page over at two widths and by night; a shape seen before is known."""

    def __init__(self, window):
        self.window, self.seen, self.by_night = window, set(), set()

    def faults(self, path, found=None, *, name="page"):
        """What is wrong at an address, or with an answer shown there."""
        if found is not None:
            known = shape(found.content.decode())
            if known in self.seen:
                return self.only_shown(path, found, name)
            self.seen.add(known)
        self.window.wear(width=360, touch=True)
        answer = self.window.go(path, found)
        page = self.window.page
        told = page.evaluate(WIDER) + page.evaluate(UNSEEN_FOCUS)
        sheet.keep(self.window, name, "360")
        self.window.wear(width=1280)
        told += page.evaluate(WIDER)
        sheet.keep(self.window, name, "wide")
        page.evaluate(THIN)
        page.evaluate(axe())
        told += self.breaches("1280 px", WCAG_22_AA)
        self.window.wear(width=360, touch=True)
        told += self.breaches("360 px by day", WCAG_22_AA)
        if self.is_new_by_night(page.content()):
            self.window.wear(width=360, touch=True, night=True)
            told += self.breaches("360 px by night", OF_COLOUR, kind="rule")
        # The browser itself complains of every answer that is a refusal.
        return told + (self.window.complaints if answer.ok else [])

    def only_shown(self, path, found, name):
        """Nothing is wrong with a page like one that was judged; it has its picture."""
        if sheet.WANTED:
            self.window.wear(width=360, touch=True)
            self.window.go(path, found)
            sheet.keep(self.window, name, "360")
            self.window.wear(width=1280)
            sheet.keep(self.window, name, "wide")
        return []

    def is_new_by_night(self, html):
        """Drawings are looked at by night, and one of each kind of thing."""
        kinds = {tag + "".join(NAMED.findall(rest)) for tag, rest in TAG.findall(html)}
        is_new = "<figure" in html or not kinds <= self.by_night
        self.by_night |= kinds
        return is_new

    def breaches(self, where, values, *, kind="tag"):
        found = self.window.page.evaluate(JUDGE, {"type": kind, "values": values})
        return [f"{where}: {one}" for one in found]
