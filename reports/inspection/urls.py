"""Addresses of what an inspector asks for."""

from django.urls import path

from reports.inspection import trail_views, views

urlpatterns = [
    path("findings/", views.findings_now, name="findings-now"),
    path("findings/<season_year:year>/", views.findings, name="findings"),
    path("rules/", views.rules, name="rules"),
    path("trace/", trail_views.choose, name="trace-choose"),
    path("trace/<slug:of>/<int:pk>/", trail_views.trace, name="trace"),
    path("balances/<season_year:year>/", trail_views.balances, name="balances"),
]
