"""Pages that look ahead: now, a stand, its residue, gaps, sowing, plans, the week."""

from __future__ import annotations

from typing import Any

from django.http import Http404, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import WRITERS, FarmRequest, for_members, may
from farm.models import Farm
from reports.papers.acts import acts_paper
from reports.papers.ahead import asked_day
from reports.papers.gaps import gaps_paper
from reports.papers.hindsight import hindsight_paper
from reports.papers.now import now_paper
from reports.papers.plans import check_paper, turned_paper
from reports.papers.residue import residue_paper
from reports.papers.sowing import asked_chance, sowing_paper
from reports.papers.stand import stand_paper
from reports.papers.week import week_paper
from reports.pdf import PdfUnavailableError, print_paper


@require_GET
@for_members()
def now(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    on = asked_day(request.GET.get("on", ""), today)
    by_field = request.GET.get("by") == "field"
    paper = now_paper(farm, on=on, today=today, me=request.user, by_field=by_field)
    return render(request, "reports/now.html", told(request, paper))


@require_GET
@for_members()
def stand(request: FarmRequest, farm: Farm, planting: int) -> HttpResponse:
    on = asked_day(request.GET.get("on", ""), farm.today(timezone.now()))
    paper = found(stand_paper(farm, planting, on=on))
    return render(request, "reports/stand.html", told(request, paper))


@require_GET
@for_members()
def residue(request: FarmRequest, farm: Farm, planting: int) -> HttpResponse:
    on = asked_day(request.GET.get("on", ""), farm.today(timezone.now()))
    asked = {name: request.GET.get(name, "") for name in ("end", "wish")}
    paper = found(residue_paper(farm, planting, on=on, **asked))
    return render(request, "reports/residue.html", told(request, paper))


@require_GET
@for_members()
def gaps(request: FarmRequest, farm: Farm) -> HttpResponse:
    on = asked_day(request.GET.get("on", ""), farm.today(timezone.now()))
    paper = gaps_paper(farm, on=on, asked=request.GET.dict())
    return render(request, "reports/gaps.html", told(request, paper))


@require_GET
@for_members()
def sowing(request: FarmRequest, farm: Farm, kind: str) -> HttpResponse:
    on = asked_day(request.GET.get("on", ""), farm.today(timezone.now()))
    wanted = asked_chance(request.GET.get("chance", ""))
    paper = found(sowing_paper(farm, kind, on=on, wanted=wanted))
    return render(request, "reports/sowing.html", told(request, paper))


@require_GET
@for_members()
def hindsight(request: FarmRequest, farm: Farm) -> HttpResponse:
    paper = hindsight_paper(farm, today=farm.today(timezone.now()))
    return render(request, "reports/hindsight.html", paper)


@require_GET
@for_members()
def turned(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    paper = turned_paper(farm, year, today=farm.today(timezone.now()))
    return render(request, "reports/turned.html", paper)


@require_GET
@for_members()
def plan_check(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    paper = check_paper(farm, request.GET.dict(), today=today)
    return render(request, "reports/_plan_check.html", paper)


@require_GET
@for_members()
def acts(request: FarmRequest, farm: Farm) -> HttpResponse:
    """The cautions for what a form is about to write down: a fragment of its page."""
    today = farm.today(timezone.now())
    paper = acts_paper(farm, request.GET, today=today)
    return render(request, "reports/_acts.html", paper)


@require_GET
@for_members()
def week(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    on = asked_day(request.GET.get("on", ""), today)
    try:
        printed = print_paper("week_print", week_paper(farm, on=on, today=today))
    except PdfUnavailableError as error:
        page = {"farm": farm, "year": on.year, "remedy": error.remedy}
        return render(request, "reports/no_pdf.html", page, status=503)
    name = f'inline; filename="{farm.slug}-week-{on}.pdf"'
    headers = {"Content-Disposition": name}
    return HttpResponse(printed, "application/pdf", headers=headers)


def found(paper: dict[str, Any] | None) -> dict[str, Any]:
    if paper is None:
        raise Http404
    return paper


def told(request: FarmRequest, paper: dict[str, Any]) -> dict[str, Any]:
    """A page with whether its reader may write, and the day asked for kept on."""
    asked = request.GET.get("on", "")
    return {
        **paper,
        "may_write": may(request, WRITERS),
        "keep": f"?on={paper['on']}" if asked else "",
        "keep_too": f"&on={paper['on']}" if asked else "",
    }
