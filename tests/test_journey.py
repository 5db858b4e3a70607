"""A new farm from nothing to its printed season, by the pages alone."""

import io
import re

import pypdf
import pytest
from django.conf import settings
from django.urls import reverse

from farm.models import User
from records import catalogue
from records.models import WeatherDay

WEATHER = settings.BASE_DIR / "fixtures" / "weather" / "champion_nebraska.csv.gz"
PASSWORD = "a long enough word"


@pytest.fixture
def grower(client, db):
    catalogue.load(settings.BASE_DIR / "fixtures" / "crops.json")
    User.objects.create_user("grower@example.org", PASSWORD, name="A. Grower")
    typed = {"username": "grower@example.org", "password": PASSWORD}
    client.post(reverse("sign-in"), typed)
    return client


def written(client, noun, **typed):
    """Post a record's form and return the number of the record it made."""
    rows = {"lines": "plantings", "frames": "biomass-samples"}
    for prefix, owner in rows.items():
        if owner == noun:
            typed |= {f"{prefix}-TOTAL_FORMS": 4, f"{prefix}-INITIAL_FORMS": 0}
    url = reverse("records:new", args=["new-ground", noun])
    answer = client.post(url, typed)
    assert answer.status_code == 302, answer.context["form"].errors
    return int(answer.url.rstrip("/").rsplit("/", 1)[1])


def kind_number(client, name):
    page = client.get(reverse("records:new", args=["new-ground", "seed-lots"]))
    return re.search(rf'value="(\d+)">{name}<', page.content.decode())[1]


def load_weather(client):
    with WEATHER.open("rb") as file:
        url = reverse("records:weather-load", args=["new-ground"])
        asked = client.post(url, {"file": file})
    told = dict(asked.context["form"].initial)
    told = {name: value for name, value in told.items() if value is not None}
    told |= {"temp_unit": "C", "rain_unit": "mm", "date_order": "iso"}
    url = reverse("records:weather-columns", args=["new-ground"])
    preview = client.post(url, told)
    assert "13514 days read" in preview.content.decode()
    told |= {"name": "Champion", "is_main": "on", "which": "0"}
    client.post(reverse("records:weather-save", args=["new-ground"]), told)


def test_a_new_farm_goes_from_nothing_to_its_pdf(grower):
    told = {"name": "New Ground", "time_zone": "America/Denver", "units": "us"}
    told |= {"standard": "us", "season_first_month": 1, "certifier": "Some Certifier"}
    grower.post(reverse("farm-new"), told)
    load_weather(grower)
    assert WeatherDay.objects.count() == 13_514
    field = written(
        grower,
        "fields",
        name="Long Strip",
        kind="strip",
        area="120 x 30 ft",
        status="organic",
    )
    lot = written(
        grower,
        "seed-lots",
        kind=kind_number(grower, "Buckwheat"),
        lot_number="BW-1",
        received_on="2018-05-02",
        received_kg="50 lb",
        purity_share="99",
        germination_share="90",
        status="organic",
    )
    sown = {"lines-0-lot": lot, "lines-0-seed_kg": "7 lb 3 oz"}
    planting = written(
        grower,
        "plantings",
        field=field,
        purpose="cover",
        method="broadcast",
        sown_on="2018-07-02",
        **sown,
    )
    written(
        grower,
        "observations",
        planting=planting,
        seen="first_flower",
        seen_on="2018-07-30",
    )
    written(
        grower,
        "terminations",
        planting=planting,
        ended_on="2018-08-08",
        method="mown",
        outcome="ended",
        residue="on_top",
        reason="Keep the weeds down till fall",
    )
    paper = grower.get(reverse("reports:season-pdf", args=["new-ground", 2018]))
    assert paper["Content-Type"] == "application/pdf"
    pages = pypdf.PdfReader(io.BytesIO(paper.content)).pages
    text = " ".join(" ".join(page.extract_text() for page in pages).split())
    for words in (
        "New Ground",
        "Some Certifier",
        "Long Strip",
        "3,600 sq ft",
        "Buckwheat, BW-1",
        "2 July 2018, broadcast",
        "30 Jul 2018",
        "Keep the weeds down till fall",
        "Champion",
    ):
        assert words in text
