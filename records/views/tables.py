"""Tables out of a list, and tables in: seen first, then saved whole or not at all."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.core.exceptions import ValidationError
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import MANAGERS, FarmRequest, for_members
from farm.models import Farm
from records.forms.tables import TablesForm
from records.nouns import Noun
from records.tables import tables_of, texts, trial, workbooks
from records.tables.intake import MOST_ROWS
from records.tables.layout import Table, rows_of
from records.views.pages import noun_for, noun_named

GET_OR_POST = ["GET", "HEAD", "POST"]
WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@require_GET
@for_members()
def table_as_text(request: FarmRequest, farm: Farm, noun: str) -> HttpResponse:
    named, part = noun_for(request, noun), request.GET.get("of", "")
    tables = tables_for(farm, named)
    table = next((one for one in tables if one.related == part), None)
    if table is None:
        raise Http404
    rows = table.tell(rows_of(table, listed(request, farm, named)))
    text = "".join(texts.lines(table, rows))
    return as_file(text, f"{farm.slug}-{table.name}.csv", "text/csv; charset=utf-8")


@require_GET
@for_members()
def table_as_workbook(request: FarmRequest, farm: Farm, noun: str) -> HttpResponse:
    named = noun_for(request, noun)
    found = listed(request, farm, named)
    sheets = [(one, one.tell(rows_of(one, found))) for one in tables_for(farm, named)]
    data = workbooks.write(sheets)
    return as_file(data, f"{farm.slug}-{named.slug}.xlsx", WORKBOOK)


@require_http_methods(GET_OR_POST)
@for_members(*MANAGERS)
def load_table(request: FarmRequest, farm: Farm, noun: str) -> HttpResponse:
    named = noun_named(noun)
    form = TablesForm(
        request.POST or None, request.FILES or None, titles=trial.titles(named)
    )
    if request.method == "POST" and form.is_valid():
        try:
            return tried(request, farm, named, form.files_given(), keep=False)
        except ValidationError as error:
            form.add_error(None, error)
    page = {"farm": farm, "noun": named, "form": form, "tables": tables_of(named)}
    page["most"] = f"{MOST_ROWS:,}"
    return render(request, "records/table_file.html", page)


@require_http_methods(["POST"])
@for_members(*MANAGERS)
def save_table(request: FarmRequest, farm: Farm, noun: str) -> HttpResponse:
    named = noun_named(noun)
    files = trial.again(named, request.POST, farm)
    if files is None:
        messages.error(request, _("The file was kept for a day only. Choose it again."))
        return redirect("records:load", farm.slug, named.slug)
    return tried(request, farm, named, files, keep=True)


def tried(
    request: FarmRequest, farm: Farm, noun: Noun, files: trial.Files, *, keep: bool
) -> HttpResponse:
    """Show what files would do or what is wrong with them; or that they are saved."""
    by, now = request.user, timezone.now()
    seen = trial.try_out(noun, files, farm=farm, by=by, now=now, keep=keep)
    if keep and not seen.outcome.faults:
        words = _("%(new)s new, %(changed)s changed, %(same)s already so.")
        messages.success(request, words % seen.counts)
        return redirect("records:list", farm.slug, noun.slug)
    page = {"farm": farm, "noun": noun, "trial": seen}
    return render(request, "records/table_preview.html", page)


def listed(request: FarmRequest, farm: Farm, noun: Noun) -> Any:
    """The rows of the list as it is narrowed, and the voided ones among them."""
    asked = request.GET.copy()
    asked["struck"] = "on"
    rows = noun.model._default_manager.seen_on(farm)
    asked.pop("sort", None)
    return noun.in_order(noun.narrowed(asked, farm, rows))


def tables_for(farm: Farm, noun: Noun) -> tuple[Table, ...]:
    """The tables of a noun, without what its reader is not told."""
    tables = tables_of(noun)
    if farm.is_read_by_crew:
        return tuple(one.without(noun.model.PRIVATE) for one in tables)
    if farm.period is None:
        return tables
    return tuple(one.without_people() for one in tables)


def as_file(data: str | bytes, name: str, content_type: str) -> HttpResponse:
    response = HttpResponse(data, content_type=content_type)
    response["Content-Disposition"] = f'attachment; filename="{name}"'
    return response
