"""Addresses of records, under a farm's short name."""

from django.urls import path

from records.views import (
    archive,
    attachments,
    calendars,
    changes,
    crew,
    kinds,
    outlines,
    pages,
    plans,
    reviews,
    tables,
    today,
    undo,
    weather,
    write,
)

app_name = "records"
urlpatterns = [
    path("changes/", changes.change_list, name="changes"),
    path("write/", write.choose_act, name="write"),
    path("write/<slug:act>/", write.write_act, name="write-act"),
    path("crew/<slug:act>/", crew.crew_act, name="crew-act"),
    path("calendar/", calendars.calendar_page, name="calendar"),
    path("calendar/revoke/", calendars.calendar_revoke, name="calendar-revoke"),
    path("plan/", plans.plan_one, name="plan-one"),
    path("plan/duty/", plans.duty_one, name="duty-one"),
    path("plan/<int:year>/", plans.plan_season, name="plan"),
    path("today/", today.standing_today, name="today"),
    path("archive/", archive.archive, name="archive"),
    path("kinds/", kinds.kind_list, name="kinds"),
    path("kinds/new/", kinds.kind_new, name="kind-new"),
    path("kinds/<slug:kind>/", kinds.kind_page, name="kind"),
    path("kinds/<slug:kind>/own/", kinds.own_figure, name="own-figure"),
    path("weather/", weather.weather_page, name="weather"),
    path("weather/load/", weather.choose_file, name="weather-load"),
    path("weather/columns/", weather.confirm_columns, name="weather-columns"),
    path("weather/save/", weather.save_file, name="weather-save"),
    path("stations/<int:pk>/days.csv", weather.station_days, name="station-days"),
    path(
        "stations/<int:pk>/days.xlsx", weather.station_workbook, name="station-workbook"
    ),
    path("fields/outlines.geojson", outlines.field_outlines, name="outlines"),
    path("attachments/<uuid:attachment>/", attachments.attachment, name="attachment"),
    path(
        "attachments/<uuid:attachment>/small/",
        attachments.attachment_small,
        name="attachment-small",
    ),
    path("attachments/<uuid:attachment>/void/", attachments.detach, name="detach"),
    path("attachments/<uuid:attachment>/undo/", undo.attachment_undo, name="reattach"),
    path("<slug:noun>/<int:pk>/attach/", attachments.attach, name="attach"),
    path("<slug:noun>/table.csv", tables.table_as_text, name="table-csv"),
    path("<slug:noun>/table.xlsx", tables.table_as_workbook, name="table-xlsx"),
    path("<slug:noun>/load/", tables.load_table, name="load"),
    path("<slug:noun>/load/save/", tables.save_table, name="load-save"),
    path("<slug:noun>/", pages.record_list, name="list"),
    path("<slug:noun>/new/", pages.record_new, name="new"),
    path("<slug:noun>/<int:pk>/", pages.record_page, name="page"),
    path("<slug:noun>/<int:pk>/edit/", pages.record_edit, name="edit"),
    path("<slug:noun>/<int:pk>/void/", pages.record_void, name="void"),
    path("<slug:noun>/<int:pk>/undo/", undo.record_undo, name="undo"),
    path("<slug:noun>/<int:pk>/review/", reviews.record_review, name="review"),
]
