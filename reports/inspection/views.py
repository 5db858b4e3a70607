"""Findings, and what else an inspector asks for."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from farm.access import MANAGERS, FarmRequest, for_members, may
from farm.models import Farm
from reports.ledger.kept_findings import Why
from reports.papers.changes import changes_paper
from reports.papers.findings import findings_paper
from reports.papers.findings_history import history_part, keep_findings
from reports.papers.post import post_paper
from reports.papers.ruling import rules_paper


@require_GET
@for_members()
def findings_now(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    last = today if farm.period is None else min(today, farm.period[1])
    return redirect("reports:findings", farm.slug, farm.season_year(last))


@require_GET
@for_members()
def findings(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    today = farm.today(timezone.now())
    paper = findings_paper(farm, year, today=today, by=request.GET.get("by", ""))
    paper["may_write"] = may(request, MANAGERS)
    paper |= history_part(farm, year, paper["groups"])
    return render(request, "reports/findings.html", paper)


@require_POST
@for_members(*MANAGERS)
def findings_keep(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    """Keep the list of today, to see later what came and what went."""
    by, now = request.user, timezone.now()
    keep_findings(farm, year, today=farm.today(now), why=Why.ASKED, by=by, now=now)
    messages.success(request, _("Kept. What comes and goes is told from here on."))
    return redirect("reports:findings", farm.slug, year)


@require_GET
@for_members()
def changes_now(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    last = today if farm.period is None else min(today, farm.period[1])
    return redirect("reports:changes-since", farm.slug, farm.season_year(last))


@require_GET
@for_members()
def changes_since(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    page = changes_paper(farm, year, today=farm.today(timezone.now()))
    page["may_write"] = may(request, MANAGERS)
    return render(request, "reports/changes_since.html", page)


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
