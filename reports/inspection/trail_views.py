"""The way of a lot, and what came in against what went out."""

from __future__ import annotations

import datetime as dt

from django.http import Http404, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import FarmRequest, for_members
from farm.models import Farm
from reports.calc.shapes.basics import Span
from reports.inspection.forms import PeriodForm
from reports.papers.trace import balance_paper, choice_paper, trace_paper


@require_GET
@for_members()
def choose(request: FarmRequest, farm: Farm) -> HttpResponse:
    today, words = farm.today(timezone.now()), request.GET.get("words", "")
    page = choice_paper(farm, today=today, words=words)
    return render(request, "reports/trace_choose.html", page)


@require_GET
@for_members()
def trace(request: FarmRequest, farm: Farm, of: str, pk: int) -> HttpResponse:
    page = trace_paper(farm, of, pk, today=farm.today(timezone.now()))
    if page is None:
        raise Http404
    return render(request, "reports/trace.html", page)


@require_GET
@for_members()
def balances(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    period = Span(*farm.season(year))
    asked = PeriodForm(request.GET if "first" in request.GET else None)
    if asked.is_valid():
        period = Span(asked.cleaned_data["first"], asked.cleaned_data["last"])
    if farm.period is not None and not _within(period, farm.period):
        raise Http404
    page = balance_paper(farm, period, today=farm.today(timezone.now()))
    form = asked if asked.is_bound else PeriodForm(initial=vars_of(period))
    page |= {"form": form, "year": year}
    return render(request, "reports/balances.html", page)


def vars_of(period: Span) -> dict[str, object]:
    """A period as a form begins with it."""
    return {"first": period.first, "last": period.last}


def _within(asked: Span, period: tuple[dt.date, dt.date]) -> bool:
    return period[0] <= asked.first and asked.last <= period[1]
