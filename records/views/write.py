"""Write down: what was done, where, and the few things that matter."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import WRITERS, FarmRequest, for_members, let
from farm.models import Farm
from records import acts
from records.acts import Act
from records.forms.seeds_once import SeedsOnceForm

GET_OR_POST = ["GET", "HEAD", "POST"]


@require_GET
@for_members(*WRITERS)
def choose_act(request: FarmRequest, farm: Farm) -> HttpResponse:
    found = (acts.again(act, farm, request.user) for act in acts.ACTS)
    page = {"farm": farm, "acts": acts.ACTS, "again": [one for one in found if one]}
    return render(request, "records/write.html", page)


@require_http_methods(GET_OR_POST)
@for_members(*WRITERS)
def write_act(request: FarmRequest, farm: Farm, act: str) -> HttpResponse:
    """First what and where; then a row a place; then all of it is saved, or none."""
    named = act_named(act)
    let(request, named.noun.writers)
    if request.method == "POST" and acts.sent_before(named, farm, request.POST):
        return redirect("records:list", farm.slug, named.noun_slug)
    if request.method == "POST":
        return save_rows(request, farm, named)
    seeds = seeds_form(request, farm, named)
    chosen = chosen_places(request, farm, named)
    if chosen and (seeds is None or seeds.is_valid()):
        return show_rows(request, farm, named, chosen, seeds)
    return choose_places(request, farm, named, seeds)


def act_named(slug: str) -> Act:
    try:
        return acts.BY_ACT[slug]
    except KeyError:
        raise Http404 from None


def chosen_places(request: FarmRequest, farm: Farm, act: Act) -> list[Any]:
    typed = request.POST if request.method == "POST" else request.GET
    asked = set(typed.getlist("place"))
    today = farm.today(timezone.now())
    return [one for one in acts.places(act, farm, today=today) if str(one.pk) in asked]


def seeds_form(request: FarmRequest, farm: Farm, act: Act) -> SeedsOnceForm | None:
    if not act.sows:
        return None
    asked = request.GET if "go" in request.GET else None
    last = acts.last_values(act, farm, request.user)
    return SeedsOnceForm(asked, farm=farm, initial=last)


def choose_places(
    request: FarmRequest, farm: Farm, act: Act, seeds: SeedsOnceForm | None
) -> HttpResponse:
    today, words = farm.today(timezone.now()), request.GET.get("words", "")
    page = {
        "farm": farm,
        "act": act,
        "seeds": seeds,
        "places": acts.places(act, farm, today=today, words=words),
        "words": words,
        "asked": set(request.GET.getlist("place")),
        "none_chosen": "go" in request.GET and not request.GET.getlist("place"),
    }
    return render(request, "records/write_where.html", page)


def show_rows(
    request: FarmRequest,
    farm: Farm,
    act: Act,
    chosen: list[Any],
    seeds: SeedsOnceForm | None,
) -> HttpResponse:
    today = farm.today(timezone.now())
    told = acts.last_values(act, farm, request.user)
    told |= {"done_by": str(request.user), act.noun.model.DATE_FIELD: today}
    told |= seeds.told() if seeds else {}
    sheet = acts.sheet(act, farm, chosen, today=today, initial=told)
    page = {"farm": farm, "act": act, "sheet": sheet, "back": request.GET.urlencode()}
    return render(request, "records/write_rows.html", page)


def save_rows(request: FarmRequest, farm: Farm, act: Act) -> HttpResponse:
    chosen = chosen_places(request, farm, act)
    sheet = acts.sheet(
        act, farm, chosen, today=farm.today(timezone.now()), typed=request.POST
    )
    if sheet.is_valid():
        written = sheet.record(by=request.user, now=timezone.now())
        if written is not None:
            messages.success(request, told(len(written), acts.rates(written, farm)))
            return redirect("records:list", farm.slug, act.noun_slug)
    page = {"farm": farm, "act": act, "sheet": sheet}
    return render(request, "records/write_rows.html", page)


def told(count: int, rates: list[str]) -> str:
    words = ngettext("%(n)s record written down.", "%(n)s records written down.", count)
    return f"{words % {'n': count}} {'; '.join(rates[:12])}".strip()
