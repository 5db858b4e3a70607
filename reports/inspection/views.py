"""Findings, and what else an inspector asks for."""

from __future__ import annotations

from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import MANAGERS, FarmRequest, for_members, may
from farm.models import Farm
from reports.papers.findings import findings_paper
from reports.papers.post import post_paper
from reports.papers.ruling import rules_paper


@require_GET
@for_members()
def findings_now(request: FarmRequest, farm: Farm) -> HttpResponse:
    year = farm.season_year(farm.today(timezone.now()))
    return redirect("reports:findings", farm.slug, year)


@require_GET
@for_members()
def findings(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    today = farm.today(timezone.now())
    paper = findings_paper(farm, year, today=today, by=request.GET.get("by", ""))
    paper["may_write"] = may(request, MANAGERS)
    return render(request, "reports/findings.html", paper)


@require_GET
@for_members()
def post(request: FarmRequest, farm: Farm) -> HttpResponse:
    return render(request, "reports/post.html", post_paper(farm, now=timezone.now()))


@require_GET
@for_members()
def rules(request: FarmRequest, farm: Farm) -> HttpResponse:
    page = rules_paper(farm, today=farm.today(timezone.now()))
    page["may_write"] = may(request, MANAGERS)
    return render(request, "reports/rules.html", page)
