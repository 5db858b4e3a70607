"""Home, the farm's page and its people."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods

from farm import households
from farm.access import MANAGERS, OWNERS, FarmRequest, for_members, may
from farm.forms import FarmForm, PersonForm
from farm.models import Farm

GET_OR_POST = ["GET", "HEAD", "POST"]
LOOKS_SHOWN = 200


@require_GET
def home(request: FarmRequest) -> HttpResponse:
    farms = Farm.objects.of(request.user, today=timezone.localdate()).order_by("name")
    return render(request, "farm/home.html", {"farms": farms})


@require_GET
def password_changed(request: HttpRequest) -> HttpResponse:
    messages.success(request, _("Your password is changed."))
    return redirect("home")


@require_http_methods(GET_OR_POST)
def farm_new(request: FarmRequest) -> HttpResponse:
    form = FarmForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        farm = households.found(
            form.save(commit=False), owner=request.user, today=timezone.localdate()
        )
        messages.success(request, _("The farm is set up. Write down its fields next."))
        return redirect("farm", slug=farm.slug)
    return render(request, "farm/farm_form.html", {"form": form})


@require_GET
@for_members()
def farm_page(request: FarmRequest, farm: Farm) -> HttpResponse:
    fields = farm.fields.live().order_by("name")
    page = {
        "farm": farm,
        "fields": fields,
        "area_m2": sum(field.area_m2 for field in fields if field.parent_id is None),
        "year": farm.season_year(farm.today(timezone.now())),
        "may_edit": may(request, MANAGERS),
        "may_invite": may(request, OWNERS),
    }
    return render(request, "farm/farm.html", page)


@require_http_methods(GET_OR_POST)
@for_members(*MANAGERS)
def farm_edit(request: FarmRequest, farm: Farm) -> HttpResponse:
    form = FarmForm(request.POST or None, instance=farm)
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, _("Saved."))
        return redirect("farm", slug=farm.slug)
    return render(request, "farm/farm_form.html", {"form": form, "farm": farm})


@require_http_methods(GET_OR_POST)
@for_members(*OWNERS)
def people(request: FarmRequest, farm: Farm) -> HttpResponse:
    today, welcome = timezone.localdate(), None
    form = PersonForm(request.POST or None, farm=farm, today=today)
    if request.method == "POST" and form.is_valid():
        welcome = households.add(farm, today=today, **form.cleaned_data)
        form = PersonForm(farm=farm, today=today)
    members = farm.memberships.select_related("user").order_by("since", "pk")
    looks = farm.looks.select_related("by").order_by("-at", "-pk")[:LOOKS_SHOWN]
    page = {
        "farm": farm,
        "form": form,
        "members": members,
        "welcome": welcome,
        "looks": looks,
    }
    return render(request, "farm/people.html", page)
