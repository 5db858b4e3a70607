"""Pages and papers about seed: what is needed, ordered, received and left."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET

from farm.access import MANAGERS, WRITERS, FarmRequest, for_members, may
from farm.models import Farm
from farm.units import System
from reports.csv_sheet import csv_answer
from reports.forms.calibration import CatchForm
from reports.forms.how_much import HowMuchForm
from reports.forms.seed import OrderForm, SowingForm
from reports.forms.sown import boxes_of
from reports.ledger.assumptions import own_assumptions
from reports.ledger.orders import order_facts
from reports.ledger.seed import supplier_names
from reports.papers.calibration import calibration_paper
from reports.papers.how_much import how_much_paper
from reports.papers.order_sheet import HEADER, order_paper, order_rows
from reports.papers.seed_books import seed_books_paper
from reports.papers.seed_order import seed_order_paper
from reports.papers.seed_sheets import sowing_paper
from reports.pdf import PdfUnavailableError, print_paper


@require_GET
@for_members()
def seed(request: FarmRequest, farm: Farm) -> HttpResponse:
    year = farm.season_year(farm.today(timezone.now()))
    return render(request, "reports/seed.html", {"farm": farm, "year": year})


@require_GET
@for_members()
def seed_balance(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    page = seed_books_paper(farm, year, today=farm.today(timezone.now()))
    return render(request, "reports/seed_books.html", page)


@require_GET
@for_members()
def seed_order(request: FarmRequest, farm: Farm) -> HttpResponse:
    today = farm.today(timezone.now())
    form = OrderForm(
        request.GET,
        today=today,
        overage=own_assumptions(farm)["seed_overage"],
        suppliers=supplier_names(farm),
    )
    page = {"farm": farm, "form": form, "may_write": may(request, MANAGERS)}
    if form.is_valid():
        page |= seed_order_paper(farm, form)
    return render(request, "reports/seed_order.html", page)


@require_GET
@for_members()
def how_much(request: FarmRequest, farm: Farm) -> HttpResponse:
    form = HowMuchForm(
        request.GET or None,
        farm=farm,
        today=farm.today(timezone.now()),
        overage=own_assumptions(farm)["seed_overage"],
    )
    page: dict[str, Any] = {"farm": farm, "form": form}
    if form.is_valid():
        page = how_much_paper(farm, form)
    return render(request, "reports/how_much.html", page)


@require_GET
@for_members()
def calibration(request: FarmRequest, farm: Farm) -> HttpResponse:
    form = CatchForm(request.GET or None, system=System(farm.units))
    page = calibration_paper(farm, form, today=farm.today(timezone.now()))
    page["may_write"] = may(request, WRITERS)
    return render(request, "reports/calibration.html", page)


@require_GET
@for_members()
def sowing(request: FarmRequest, farm: Farm) -> HttpResponse:
    page = sowing_page(request, farm)
    page["query"] = request.GET.urlencode()
    today = farm.today(timezone.now())
    if may(request, WRITERS) and "loaded" in page:
        page["boxes"] = boxes_of(farm, page["loaded"], today=today)
    return render(request, "reports/sowing_sheet.html", page)


@require_GET
@for_members()
def sowing_pdf(request: FarmRequest, farm: Farm) -> HttpResponse:
    page = sowing_page(request, farm)
    return printed(request, "sowing_sheet_print", page, f"{farm.slug}-sowing")


@require_GET
@for_members()
def labels_pdf(request: FarmRequest, farm: Farm) -> HttpResponse:
    page = sowing_page(request, farm)
    return printed(request, "labels_print", page, f"{farm.slug}-seed-labels")


def sowing_page(request: FarmRequest, farm: Farm) -> dict[str, Any]:
    """The days asked for; none of them where what was asked makes no sense."""
    today = farm.today(timezone.now())
    overage = own_assumptions(farm)["seed_overage"]
    system = System(farm.units)
    form = SowingForm(request.GET, today=today, overage=overage, system=system)
    if form.is_valid():
        return sowing_paper(farm, form, today=today)
    return {"farm": farm, "form": form, "printed_on": today}


@require_GET
@for_members()
def order(request: FarmRequest, farm: Farm, pk: int) -> HttpResponse:
    page = order_paper(farm, pk, today=farm.today(timezone.now()))
    page["may_write"] = may(request, MANAGERS)
    return render(request, "reports/order.html", page)


@require_GET
@for_members()
def order_pdf(request: FarmRequest, farm: Farm, pk: int) -> HttpResponse:
    page = order_paper(farm, pk, today=farm.today(timezone.now()))
    return printed(request, "order_print", page, f"{farm.slug}-order-{pk}")


@require_GET
@for_members()
def order_csv(request: FarmRequest, farm: Farm, pk: int) -> HttpResponse:
    rows = order_rows(order_facts(farm, pk), farm.currency)
    return csv_answer(f"{farm.slug}-order-{pk}", HEADER, rows)


def printed(
    request: FarmRequest, paper: str, page: Mapping[str, Any], name: str
) -> HttpResponse:
    """The paper as PDF, or the page that says what is missing to print it."""
    try:
        made = print_paper(paper, page)
    except PdfUnavailableError as error:
        told = {"farm": page["farm"], "remedy": error.remedy}
        return render(request, "reports/no_pdf.html", told, status=503)
    headers = {"Content-Disposition": f'inline; filename="{name}.pdf"'}
    return HttpResponse(made, "application/pdf", headers=headers)
