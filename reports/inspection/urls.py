"""Addresses of what an inspector asks for."""

from django.urls import path

from reports.inspection import packet_views, print_views, trail_views, views

urlpatterns = [
    path("findings/", views.findings_now, name="findings-now"),
    path("findings/<season_year:year>/", views.findings, name="findings"),
    path(
        "findings/<season_year:year>/keep/", views.findings_keep, name="findings-keep"
    ),
    path("changes/", views.changes_now, name="changes-now"),
    path("changes/<season_year:year>/", views.changes_since, name="changes-since"),
    path("rules/", views.rules, name="rules"),
    path("post/", views.post, name="post"),
    path("packet/<season_year:year>/", packet_views.packet, name="packet"),
    path("packet/<season_year:year>.pdf", packet_views.packet_pdf, name="packet-pdf"),
    path(
        "prints/<slug:paper>/<season_year:year>/",
        print_views.begin,
        name="print-begin",
    ),
    path("prints/", print_views.all_prints, name="prints"),
    path("prints/<uuid:key>/", print_views.one_print, name="print"),
    path("prints/<uuid:key>/stop/", print_views.stop, name="print-stop"),
    path("prints/<uuid:key>.pdf", print_views.fetch, name="print-file"),
    path("verify/", packet_views.verify, name="verify"),
    path("trace/", trail_views.choose, name="trace-choose"),
    path("trace/<slug:of>/<int:pk>/", trail_views.trace, name="trace"),
    path("balances/<season_year:year>/", trail_views.balances, name="balances"),
]
