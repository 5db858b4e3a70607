"""Which page somebody looked at, told from its address."""

from __future__ import annotations

from collections.abc import Mapping
from urllib.parse import urlsplit

from django.urls import Resolver404, resolve
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from records.nouns import BY_SLUG

SAID: Mapping[str, Promise] = {
    "farm": _("The farm’s page"),
    "leave": _("Leaving the farm"),
    "records:attachment": _("A picture or paper"),
    "records:attachment-small": _("A picture, small"),
    "records:changes": _("Who changed what, and when"),
    "records:list": _("List: %(titles)s"),
    "records:page": _("One %(title)s, number %(pk)s"),
    "records:table-csv": _("Table, as text: %(titles)s"),
    "records:table-xlsx": _("Workbook: %(titles)s"),
    "reports:assumptions": _("Assumptions"),
    "reports:balances": _("Balances %(year)s"),
    "reports:changes-since": _("Changes in %(year)s"),
    "reports:field": _("Every season of field %(pk)s"),
    "reports:findings": _("Findings %(year)s"),
    "reports:map": _("The land as a map"),
    "reports:packet": _("Papers for certification %(year)s"),
    "reports:packet-pdf": _("Papers for certification %(year)s, printed"),
    "reports:print": _("A print under way"),
    "reports:print-file": _("A printed file"),
    "reports:prints": _("Long papers"),
    "reports:rules": _("Rules put to the books"),
    "reports:season": _("Season report %(year)s"),
    "reports:season-pdf": _("Season report %(year)s, printed"),
    "reports:seasons": _("Season reports"),
    "reports:sources": _("Sources"),
    "reports:trace": _("The way of one %(title)s, number %(pk)s"),
    "reports:trace-choose": _("Trace a lot"),
    "reports:verify": _("Is this file ours?"),
}


def look_said(path: str) -> str:
    """A page by its name; by its address where it has none."""
    try:
        found = resolve(urlsplit(path).path)
    except Resolver404:
        return path
    noun = BY_SLUG.get(found.kwargs.get("noun") or found.kwargs.get("of") or "")
    titles = {"title": noun.title, "titles": noun.titles} if noun else {}
    try:
        return str(SAID[found.view_name]) % (found.kwargs | titles)
    except KeyError:
        return path
