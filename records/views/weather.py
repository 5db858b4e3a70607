"""Weather in: choose a file, confirm what it says, see it, then save it."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.db.models import Count, Max, Min
from django.http import HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.utils.translation import ngettext
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import MANAGERS, FarmRequest, for_members, may
from farm.models import Farm
from records.forms import WeatherFileForm
from records.models import WeatherStation
from records.reading import intake
from records.reading.loading import Loaded
from records.reading.weather.writing import HEADER, days_as_text
from records.tables import workbooks
from records.views.tables import WORKBOOK, as_file

GET_OR_POST = ["GET", "HEAD", "POST"]


@require_GET
@for_members()
def weather_page(request: FarmRequest, farm: Farm) -> HttpResponse:
    stations = WeatherStation.objects.on(farm).live().order_by("-is_main", "name")
    counted = stations.annotate(
        first=Min("days__day"), last=Max("days__day"), count=Count("days")
    )
    page = {"farm": farm, "stations": counted, "may_write": may(request, MANAGERS)}
    return render(request, "records/weather.html", page)


@require_GET
@for_members()
def station_days(request: FarmRequest, farm: Farm, pk: int) -> HttpResponse:
    """Every reading of a station as a table that can be loaded again."""
    name = f"{farm.slug}-station-{pk}-days.csv"
    text = days_as_text(days_of(farm, pk).iterator())
    return as_file(text, name, "text/csv; charset=utf-8")


@require_GET
@for_members()
def station_workbook(request: FarmRequest, farm: Farm, pk: int) -> HttpResponse:
    """The same as a workbook, which can be loaded again as well."""
    grid = [HEADER, *days_of(farm, pk)]
    data = workbooks.write_grids([("days", grid)])
    return as_file(data, f"{farm.slug}-station-{pk}-days.xlsx", WORKBOOK)


def days_of(farm: Farm, pk: int) -> Any:
    station = get_object_or_404(WeatherStation.objects.on(farm), pk=pk)
    return station.days.order_by("day").values_list("day", *HEADER[1:])


@require_http_methods(GET_OR_POST)
@for_members(*MANAGERS)
def choose_file(request: FarmRequest, farm: Farm) -> HttpResponse:
    form = WeatherFileForm(request.POST or None, request.FILES or None)
    page: dict[str, Any] = {"farm": farm, "form": form}
    if request.method == "POST" and form.is_valid():
        taken = intake.take(form.cleaned_data["file"], farm)
        if taken.trouble is None:
            return shown(request, farm, taken)
        form.add_error("file", taken.trouble)
        page["faults"] = taken.faults
    return render(request, "records/weather_file.html", page)


@require_http_methods(["POST"])
@for_members(*MANAGERS)
def confirm_columns(request: FarmRequest, farm: Farm) -> HttpResponse:
    taken = intake.again(request.POST, farm)
    if taken is None:
        messages.error(request, _("The file was kept for a day only. Choose it again."))
        return redirect("records:weather-load", farm.slug)
    return shown(request, farm, taken)


@require_http_methods(["POST"])
@for_members(*MANAGERS)
def save_file(request: FarmRequest, farm: Farm) -> HttpResponse:
    taken = intake.again(request.POST, farm)
    if taken is None or taken.file is None:
        messages.error(request, _("The file was kept for a day only. Choose it again."))
        return redirect("records:weather-load", farm.slug)
    form = taken.station_form(request.POST)
    if not form.is_valid():
        return shown(request, farm, taken, form)
    loaded = intake.save(taken, form, by=request.user, now=timezone.now())
    messages.success(request, told(loaded))
    return redirect("records:weather", farm.slug)


def shown(
    request: FarmRequest, farm: Farm, taken: intake.Taken, form: Any = None
) -> HttpResponse:
    """Ask for the columns while they are open; show the preview once they are not."""
    page = {"farm": farm, "taken": taken, "form": form or taken.next_form()}
    page["faults"] = taken.faults
    name = "weather_preview" if taken.file else "weather_columns"
    return render(request, f"records/{name}.html", page)


def told(loaded: Loaded) -> str:
    new = ngettext("%(n)s new day", "%(n)s new days", loaded.added) % {
        "n": loaded.added
    }
    again = ngettext("%(n)s day read again", "%(n)s days read again", loaded.again) % {
        "n": loaded.again
    }
    return f"{new}, {again}."
