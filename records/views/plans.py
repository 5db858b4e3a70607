"""Plan one planting from a gap, or the season on a sheet."""

from __future__ import annotations

import datetime as dt
from typing import Any

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_http_methods

from farm.access import WRITERS, FarmRequest, for_members
from farm.models import Farm, Record
from records.forms import DutyForm, plan_sheet
from records.forms.plans import PlanForm
from records.links import page_of
from records.nouns import BY_SLUG
from records.planning import plan
from records.tidings import warnings

GET_OR_POST = ["GET", "HEAD", "POST"]
MOVES = {"later": 7, "sooner": -7}


@require_http_methods(GET_OR_POST)
@for_members(*WRITERS)
def plan_one(request: FarmRequest, farm: Farm) -> HttpResponse:
    """A planned planting and its duties, at one press."""
    today = farm.today(timezone.now())
    initial = {name: value for name, value in request.GET.items() if value}
    form = PlanForm(request.POST or None, farm=farm, today=today, initial=initial)
    if request.method == "POST" and form.is_valid():
        row = plan([form.planned()], farm, by=request.user, now=timezone.now())[0]
        messages.success(request, _("Planned, with its duties."))
        return redirect(page_of(row, BY_SLUG["plantings"], farm, request))
    return render(request, "records/plan_one.html", {"farm": farm, "form": form})


@require_http_methods(GET_OR_POST)
@for_members(*WRITERS)
def duty_one(request: FarmRequest, farm: Farm) -> HttpResponse:
    """A window made a duty at one press; once, however often it is pressed."""
    today = farm.today(timezone.now())
    form = DutyForm(request.POST or None, farm=farm, today=today)
    if request.method != "POST" or not form.is_valid():
        page = {"farm": farm, "noun": BY_SLUG["duties"], "form": form}
        return render(request, "records/form.html", {**page, "row": form.instance})
    if form.open_twin() is None:
        row = form.record(by=request.user, now=timezone.now())
        messages.success(request, _("It is a duty now."))
        warned(request, row)
    else:
        messages.success(request, _("It is a duty already."))
    return redirect(f"{reverse('reports:now', args=[farm.slug])}{kept_day(request)}")


def warned(request: FarmRequest, row: Record) -> None:
    """Say what is worth a second look."""
    for warning in warnings(row):
        messages.warning(request, warning)


def kept_day(request: FarmRequest) -> str:
    """The day the page was looked at from, and the place of the duties on it."""
    try:
        asked = dt.date.fromisoformat(request.POST.get("on", ""))
    except ValueError:
        return "#duties"
    return f"?on={asked}#duties"


@require_http_methods(GET_OR_POST)
@for_members(*WRITERS)
def plan_season(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    """The season's plans as rows: moved, copied, added to, and saved together."""
    if request.method == "POST":
        return sent(request, farm, year)
    rows = list(plan_sheet.planned_rows(farm, year))
    if "copy" in request.GET:
        rows += plan_sheet.copied_rows(farm, year)
    today = farm.today(timezone.now())
    return shown(request, farm, year, plan_sheet.sheet(farm, today=today, initial=rows))


def sent(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    today, asked = farm.today(timezone.now()), request.POST.get("do", "save")
    typed: Any = request.POST
    if asked in MOVES:
        typed = plan_sheet.moved(typed, MOVES[asked])
    if asked == "more":
        typed = plan_sheet.with_more(typed)
    rows = plan_sheet.sheet(farm, today=today, data=typed)
    if asked == "save" and rows.is_valid():
        count = plan_sheet.save(rows, by=request.user, now=timezone.now())
        messages.success(request, told(count))
        return redirect("records:plan", farm.slug, year)
    return shown(request, farm, year, rows, checked=asked == "save")


def shown(
    request: FarmRequest, farm: Farm, year: int, rows: Any, *, checked: bool = False
) -> HttpResponse:
    page = {"farm": farm, "year": year, "rows": rows, "checked": checked}
    return render(request, "records/plan_season.html", page)


def told(count: int) -> str:
    words = ngettext("%(n)s plan written down.", "%(n)s plans written down.", count)
    return words % {"n": count}
