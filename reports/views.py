"""The season report as a page and as paper, the land as a map, and a field's page."""

from __future__ import annotations

from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import MANAGERS, FarmRequest, for_members, may
from farm.models import Farm
from reports.inspection.print_views import long_paper, pdf_answer
from reports.ledger.years import season_years
from reports.papers.acts import every_act
from reports.papers.appendix import assumption_lines, every_source
from reports.papers.field import field_paper
from reports.papers.land import map_paper
from reports.papers.season import season_paper
from reports.pdf import PdfUnavailableError
from reports.prints.season import is_long, print_season


@require_GET
@for_members()
def seasons(request: FarmRequest, farm: Farm) -> HttpResponse:
    years = season_years(farm, today=farm.today(timezone.now()))
    page = {"farm": farm, "years": [year for year in years if farm.opens(year)]}
    return render(request, "reports/seasons.html", page)


@require_GET
@for_members()
def season(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    paper = season_paper(farm, year, today=farm.today(timezone.now()))
    return render(request, "reports/season.html", paper)


@require_GET
@for_members()
def season_pdf(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    paper = season_paper(farm, year, today=farm.today(timezone.now()))
    if is_long(paper):
        return long_paper(request, farm, year, paper="season")
    try:
        printed = print_season(paper)
    except PdfUnavailableError as error:
        page = {"farm": farm, "year": year, "remedy": error.remedy}
        return render(request, "reports/no_pdf.html", page, status=503)
    return pdf_answer(printed, f"{farm.slug}-season-{year}")


@require_GET
@for_members()
def sources(request: FarmRequest, farm: Farm) -> HttpResponse:
    page = {"farm": farm, "sources": every_source()}
    return render(request, "reports/sources.html", page)


@require_GET
@for_members()
def assumptions(request: FarmRequest, farm: Farm) -> HttpResponse:
    lines = list(assumption_lines(farm))
    page = {"farm": farm, "lines": lines, "acts": every_act()}
    page["may_write"] = may(request, MANAGERS)
    return render(request, "reports/assumptions.html", page)


@require_GET
@for_members()
def land_map(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    last = today if farm.period is None else min(today, farm.period[1])
    paper = map_paper(farm, today=last)
    return render(request, "reports/map.html", paper)


@require_GET
@for_members()
def field(request: FarmRequest, farm: Farm, pk: int) -> HttpResponse:
    if farm.period is not None:
        return redirect("records:page", farm.slug, "fields", pk)
    today, asked = farm.today(timezone.now()), request.GET.get("year", "")
    paper = field_paper(farm, pk, asked=asked, today=today)
    if paper is None:
        raise Http404
    return render(request, "reports/field.html", paper)
