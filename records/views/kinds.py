"""The catalogue of kinds, the farm's own kinds and its own figures."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.utils.text import slugify
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import MANAGERS, FarmRequest, for_members, may
from farm.models import Farm
from records import catalogue
from records.forms import FarmFigureForm, KindForm
from records.models import FarmFigure, Kind

GET_OR_POST = ["GET", "HEAD", "POST"]


@require_GET
@for_members()
def kind_list(request: FarmRequest, farm: Farm) -> HttpResponse:
    rows = Kind.objects.open_to(farm).order_by("name")
    page = {
        "farm": farm,
        "covers": rows.exclude(use=Kind.Use.CASH),
        "cash": rows.filter(use=Kind.Use.CASH),
        "may_write": may(request, MANAGERS),
    }
    return render(request, "records/kinds.html", page)


@require_http_methods(GET_OR_POST)
@for_members(*MANAGERS)
def kind_new(request: FarmRequest, farm: Farm) -> HttpResponse:
    form = KindForm(request.POST or None, farm=farm)
    if request.method == "POST" and form.is_valid():
        kind = form.save(commit=False)
        kind.farm = farm
        kind.slug = f"{farm.slug[:28]}--{slugify(kind.name)[:28]}"
        kind.save()
        messages.success(request, _("The kind is on the farm’s list."))
        return redirect("records:kind", farm.slug, kind.slug)
    return render(request, "records/kind_form.html", {"farm": farm, "form": form})


@require_GET
@for_members()
def kind_page(request: FarmRequest, farm: Farm, kind: str) -> HttpResponse:
    found = get_object_or_404(Kind.objects.open_to(farm), slug=kind)
    page = {
        "farm": farm,
        "kind": found,
        "figures": catalogue.figures_of(found, farm),
        "may_write": may(request, MANAGERS),
    }
    return render(request, "records/kind.html", page)


@require_http_methods(GET_OR_POST)
@for_members(*MANAGERS)
def own_figure(request: FarmRequest, farm: Farm, kind: str) -> HttpResponse:
    """Overrule one figure: which one, in which unit, the address says."""
    found = get_object_or_404(Kind.objects.open_to(farm), slug=kind)
    asked = catalogue.asked_for(found, request.GET)
    row = catalogue.own_figure_of(found, farm, asked) or FarmFigure(
        attribute=asked.attribute, stage=asked.stage, unit=asked.unit
    )
    today = farm.today(timezone.now())
    form = FarmFigureForm(
        request.POST or None, farm=farm, today=today, kind=found, instance=row
    )
    if request.method == "POST" and form.is_valid():
        form.record(by=request.user, now=timezone.now())
        messages.success(request, _("The farm’s own figure now stands."))
        return redirect("records:kind", farm.slug, found.slug)
    page = {"farm": farm, "kind": found, "asked": asked, "form": form}
    return render(request, "records/own_figure.html", page)
