"""Pages and papers that say what the records mean."""

from django.urls import include, path, register_converter

from reports import views


class Year:
    """A year that a farm of today can have kept records in."""

    regex = "(?:19|20)[0-9]{2}"

    def to_python(self, value: str) -> int:
        return int(value)

    def to_url(self, value: int) -> str:
        return f"{value:04d}"


register_converter(Year, "season_year")

app_name = "reports"
urlpatterns = [
    path("", include("reports.ahead_urls")),
    path("sources/", views.sources, name="sources"),
    path("assumptions/", views.assumptions, name="assumptions"),
    path("map/", views.land_map, name="map"),
    path("fields/<int:pk>/", views.field, name="field"),
    path("seed/", include("reports.seed_urls")),
    path("season/", views.seasons, name="seasons"),
    path("season/<season_year:year>/", views.season, name="season"),
    path("season/<season_year:year>.pdf", views.season_pdf, name="season-pdf"),
    path("", include("reports.inspection.urls")),
]
