"""Addresses of the pages that look ahead."""

from django.urls import path

from reports import ahead_views as views

urlpatterns = [
    path("now/", views.now, name="now"),
    path("week.pdf", views.week, name="week"),
    path("gaps/", views.gaps, name="gaps"),
    path("sowing/<slug:kind>/", views.sowing, name="sowing"),
    path("foretold/", views.hindsight, name="foretold"),
    path("cautions/", views.acts, name="acts"),
    path("plan/check/", views.plan_check, name="plan-check"),
    path("plan/<season_year:year>/", views.turned, name="turned"),
    path("stands/<int:planting>/", views.stand, name="stand"),
    path("stands/<int:planting>/residue/", views.residue, name="residue"),
]
