"""A list, a page, an entry form and a void, the same for every noun."""

from __future__ import annotations

from functools import partial
from typing import Any

from django.contrib import messages
from django.core.paginator import Paginator
from django.db import transaction
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import WRITERS, FarmRequest, for_members, let, may
from farm.models import Farm, Record
from farm.writing import void
from records import guesses, links, tidings, undoing
from records.forms.void import VoidForm
from records.lot_standing import standings
from records.nouns import BY_SLUG, Noun

GET_OR_POST = ["GET", "HEAD", "POST"]
ROWS_A_PAGE = 50


def noun_named(slug: str) -> Noun:
    try:
        return BY_SLUG[slug]
    except KeyError:
        raise Http404 from None


def noun_for(request: FarmRequest, slug: str) -> Noun:
    """The noun of that name, for those who may read it."""
    named = noun_named(slug)
    let(request, named.readers)
    return named


def one(farm: Farm, noun: Noun, pk: int) -> Any:
    found = noun.rows().seen_on(farm).filter(pk=pk).first()
    if found is None:
        raise Http404
    found.farm.is_read_by_crew = farm.is_read_by_crew
    return found


@require_GET
@for_members()
def record_list(request: FarmRequest, farm: Farm, noun: str) -> HttpResponse:
    named = noun_for(request, noun)
    rows = named.rows().seen_on(farm)
    narrowed = named.narrowed(request.GET, farm, rows)
    found = named.in_order(narrowed)
    page = {
        "farm": farm,
        "noun": named,
        "filter": narrowed,
        "filtered": narrowed.is_narrowed,
        "page_obj": Paginator(found, ROWS_A_PAGE).get_page(request.GET.get("page")),
        "may_write": may(request, named.writers),
    }
    return render(request, "records/list.html", page)


@require_http_methods(GET_OR_POST)
@for_members()
def record_new(request: FarmRequest, farm: Farm, noun: str) -> HttpResponse:
    named = noun_named(noun)
    let(request, named.writers)
    if named.begins_at and not request.GET.get(named.begins_with):
        return redirect(named.begins_at, farm.slug)
    form = named.form(
        request.POST or None,
        files=request.FILES or None,
        farm=farm,
        today=farm.today(timezone.now()),
        initial=guesses.first_guess(named, farm, request),
    )
    return entered(request, farm, named, form)


@require_http_methods(GET_OR_POST)
@for_members()
def record_edit(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_named(noun)
    let(request, named.writers)
    row = one(farm, named, pk)
    if row.voided_at:
        return redirect("records:page", farm.slug, named.slug, row.pk)
    today = farm.today(timezone.now())
    form = guesses.form_for(
        named,
        row,
        request.POST or None,
        files=request.FILES or None,
        today=today,
        initial=guesses.now_done(row, request, today),
    )
    return entered(request, farm, named, form)


def entered(request: FarmRequest, farm: Farm, noun: Noun, form: Any) -> HttpResponse:
    """Write a sound form down and show its record; else show the form again."""
    sent = form.sent_before()
    if sent is not None:
        return redirect("records:page", farm.slug, noun.slug, sent.pk)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            row = form.record(by=request.user, now=timezone.now())
        messages.success(request, _("Written down."))
        for warning in tidings.warnings(row):
            messages.warning(request, warning)
        return redirect(links.page_of(row, noun, farm, request))
    page = {"farm": farm, "noun": noun, "form": form, "row": form.instance}
    return render(request, "records/form.html", page)


@require_GET
@for_members()
def record_page(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_for(request, noun)
    row: Record = one(farm, named, pk)
    stands, now = row.voided_at is None, timezone.now()
    may_undo = partial(undoing.may_undo, by=request.membership, now=now)
    page = {"farm": farm, "noun": named, **tidings.page(row, farm)}
    page |= {
        **standings(row, today=farm.today(now)),
        "back": links.way_back(named, farm, request),
        "may_write": may(request, named.writers) and stands,
        "may_attach": may(request, WRITERS) and stands,
        "may_undo": may(request, named.writers) and may_undo(row),
        "put_back": {str(kept.pk) for kept in page["attachments"] if may_undo(kept)},
    }
    return render(request, "records/page.html", page)


@require_http_methods(GET_OR_POST)
@for_members()
def record_void(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_named(noun)
    let(request, named.writers)
    row = one(farm, named, pk)
    form = VoidForm(request.POST or None, row=row)
    if request.method == "POST" and form.is_valid():
        reason = form.cleaned_data["reason"]
        void(row, by=request.user, now=timezone.now(), reason=reason)
        messages.success(request, _("Voided. The record stays, struck out."))
        return redirect("records:page", farm.slug, named.slug, row.pk)
    page = {"farm": farm, "noun": named, "row": row, "form": form}
    return render(request, "records/void.html", page)
