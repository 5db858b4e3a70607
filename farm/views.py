"""Home, and the farm's page."""

from __future__ import annotations

import datetime as dt

from django.contrib import messages
from django.contrib.auth.decorators import login_not_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.templatetags.static import static
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods

from farm import households
from farm.access import MANAGERS, OWNERS, FarmRequest, for_members, may
from farm.forms import FarmForm
from farm.models import Farm

GET_OR_POST = ["GET", "HEAD", "POST"]


@require_GET
def home(request: FarmRequest) -> HttpResponse:
    now = timezone.now()
    farms = Farm.objects.entered_by(request.user, now=now)
    shut = list(Farm.objects.shut_to(request.user, now=now))
    return render(request, "farm/home.html", {"farms": farms, "shut": shut})


@require_GET
@login_not_required
def icon(request: HttpRequest) -> HttpResponse:
    """Some browsers ask for it here, whatever the pages say."""
    return redirect(static("farm/icon.svg"))


@require_GET
def password_changed(request: HttpRequest) -> HttpResponse:
    messages.success(request, _("Your password is changed."))
    return redirect("home")


@require_http_methods(GET_OR_POST)
def farm_new(request: FarmRequest) -> HttpResponse:
    form = FarmForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        farm = households.found(
            form.save(commit=False), owner=request.user, now=timezone.now()
        )
        messages.success(request, _("The farm is set up. Write down its fields next."))
        return redirect("farm", slug=farm.slug)
    return render(request, "farm/farm_form.html", {"form": form})


@require_GET
@for_members()
def farm_page(request: FarmRequest, farm: Farm) -> HttpResponse:
    if farm.period is not None:
        return opened_page(request, farm)
    fields = farm.fields.live().order_by("name")
    page = {
        "farm": farm,
        "fields": fields,
        "area_m2": sum(field.area_m2 for field in fields if field.parent_id is None),
        "year": farm.season_year(farm.today(timezone.now())),
        "may_edit": may(request, MANAGERS),
        "may_carry_away": may(request, OWNERS),
    }
    return render(request, "farm/farm.html", page)


def opened_page(request: FarmRequest, farm: Farm) -> HttpResponse:
    """Where an inspector begins: the seasons opened to them, and the records."""
    first, last = request.membership.period or (dt.date.min, dt.date.max)
    years = range(farm.season_year(last), farm.season_year(first) - 1, -1)
    page = {"farm": farm, "first": first, "last": last}
    page["years"] = [year for year in years if farm.opens(year)]
    return render(request, "farm/opened.html", page)


@require_http_methods(GET_OR_POST)
@for_members(*MANAGERS)
def farm_edit(request: FarmRequest, farm: Farm) -> HttpResponse:
    own = Farm.objects.get(pk=farm.pk)
    form = FarmForm(request.POST or None, instance=own)
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, _("Saved."))
        return redirect("farm", slug=farm.slug)
    return render(request, "farm/farm_form.html", {"form": form, "farm": farm})
