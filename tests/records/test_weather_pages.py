"""Weather in the browser: a file chosen, its columns told, looked at, and saved."""

import gzip

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse
from django.utils.html import escape

from farm.models import Change
from records.forms import weather as weather_forms
from records.models import WeatherDay, WeatherStation
from records.reading.weather import unpack
from records.reading.weather.writing import HEADER
from tests.records.tables.papers import saved as book
from tests.records.tables.papers import workbook

# A day, two temperatures in whole degrees Fahrenheit and rain in inches.
TABLE = """Date,Low,High,Rain
2026-06-01,55,80,0.00
2026-06-02,58,84,0.25
2026-06-03,61,88,
"""
TOLD = {
    "date": "Date",
    "tmin": "Low",
    "tmax": "High",
    "rain": "Rain",
    "date_order": "iso",
    "temp_unit": "F",
    "rain_unit": "in",
}
# Three days of one station, as NOAA's by-station files write them.
BY_STATION = """USC00000001,20260601,TMAX,267,,,7,
USC00000001,20260601,TMIN,128,,,7,
USC00000001,20260602,TMAX,289,,,7,
"""


def at(world, name):
    return reverse(f"records:{name}", args=[world.farm.slug])


@pytest.fixture
def load(world, owner_client):
    """Send a file; hand back the page that answers."""

    def sent(data, name="barn.csv"):
        raw = data if isinstance(data, bytes) else data.encode()
        return owner_client.post(
            at(world, "weather-load"), {"file": SimpleUploadedFile(name, raw)}
        )

    return sent


@pytest.fixture
def told(world, owner_client, load):
    """Send a file and tell its columns; hand back the page that answers."""

    def answered(data, **over):
        held = load(data).context["taken"].held
        return owner_client.post(
            at(world, "weather-columns"), {"held": held, **TOLD, **over}
        )

    return answered


def saved(client, world, page, **over):
    form = page.context["form"]
    sent = {box.html_name: box.value() for box in form if box.value() is not None}
    if not over.get("is_main"):
        sent.pop("is_main", None)
    return client.post(at(world, "weather-save"), {**sent, **over})


@pytest.fixture
def nothing_saved():
    yield
    assert WeatherDay.objects.count() == 2
    assert WeatherStation.objects.count() == 2
    assert not Change.objects.exists()


def test_a_table_is_read_as_told_and_saved_in_degrees_celsius_and_millimetres(
    world, owner_client, told
):
    """80 °F is 26.67 °C and 0.25 in is 6.35 mm: exact by NIST SP 811, appendix B."""
    page = told(TABLE)
    assert "Nothing is saved yet" in page.content.decode()
    answer = saved(owner_client, world, page, known="", name="Orchard")
    assert answer.status_code == 302, answer.context["form"].errors
    days = WeatherDay.objects.filter(station__name="Orchard").order_by("day")
    assert [day.rain_mm for day in days] == pytest.approx([0, 6.35, None])
    assert days[0].tmax_c == pytest.approx(26.6667, abs=1e-4)
    assert days[0].tmin_c == pytest.approx(12.7778, abs=1e-4)
    change = Change.objects.get(verb="loaded")
    assert (change.by, change.after["days"]) == (world.owner, "3")
    assert "barn.csv" in change.after["file"]


def test_the_same_file_read_again_adds_no_day(world, owner_client, told):
    station = world.ours["stations"]
    for _ in range(2):
        saved(owner_client, world, told(TABLE), known=station.pk, name="")
    assert WeatherDay.objects.filter(station=station, day__year=2026).count() == 3
    weather = owner_client.get(at(world, "weather")).content.decode()
    assert "3 days read again" in weather


def test_a_file_of_the_daily_archive_needs_no_columns_told(world, owner_client, load):
    page = load(BY_STATION, "USC00000001.csv")
    assert page.context["taken"].file
    saved(owner_client, world, page, known="", name="Archive")
    days = WeatherDay.objects.filter(station__name="Archive").order_by("day")
    assert [day.tmax_c for day in days] == pytest.approx([26.7, 28.9])


@pytest.mark.usefixtures("nothing_saved")
@pytest.mark.parametrize(
    ("data", "name", "words"),
    [
        (b"", "a.csv", "empty"),
        (b"  \n \n", "a.csv", "empty"),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "a.csv", "not a text file"),
        (gzip.compress(TABLE.encode() * 50)[:-20], "a.csv.gz", "cut short"),
        (TABLE.encode("utf-16"), "a.csv", ""),
        (BY_STATION[:-25].encode(), "a.csv", ""),
        (b"one line of prose about the weather", "a.txt", "not found"),
        (f"{TABLE}2026-06-04,60\n".encode(), "a.csv", "Line 5"),
        (f"{TABLE}2026-06-04,60,81,0,0,0\n".encode(), "a.csv", "Line 5"),
    ],
    ids=[
        "nothing",
        "blanks",
        "picture",
        "half a gzip",
        "utf-16",
        "half a day",
        "prose",
        "a short line",
        "a long line",
    ],
)
def test_a_file_that_cannot_be_read_is_refused_beside_its_box(data, name, words, load):
    page = load(data, name)
    said = page.context["form"].errors["file"]
    assert words in said[0]
    assert escape(said[0]) in page.content.decode()


@pytest.mark.usefixtures("nothing_saved")
def test_a_file_too_large_is_refused_before_it_is_read(load, monkeypatch):
    monkeypatch.setattr(weather_forms, "MOST_BYTES", 20)
    assert "larger than" in load(TABLE).context["form"].errors["file"][0]


@pytest.mark.usefixtures("nothing_saved")
def test_a_small_file_that_unpacks_to_a_large_one_is_refused(load, monkeypatch):
    monkeypatch.setattr(unpack, "MOST_BYTES", 10_000)
    page = load(gzip.compress(b"0" * 100_000), "a.csv.gz")
    assert "too large" in page.context["form"].errors["file"][0]


@pytest.mark.usefixtures("nothing_saved")
@pytest.mark.parametrize(
    ("data", "over", "words"),
    [
        (TABLE, {"temp_unit": "C"}, "Look at the units once more"),
        (TABLE.replace("06-03", "06-02"), {}, "this day stands twice"),
        (TABLE, {"tmin": "High", "tmax": "Low"}, "lowest temperature is above"),
        (TABLE, {"date_order": "mdy"}, "not a day written that way"),
        (TABLE.replace("84", "warm"), {}, "“warm” is not a number"),
    ],
    ids=["units", "twice", "upside down", "order", "word"],
)
def test_a_table_that_cannot_be_so_says_the_line(data, over, words, told):
    page = told(data, **over)
    (said,) = page.context["form"].non_field_errors()
    assert words in said
    assert "Line " in said
    assert escape(said) in page.content.decode()


@pytest.mark.usefixtures("nothing_saved")
def test_every_cell_that_cannot_be_so_is_told_at_once_by_row_and_column(told):
    data = TABLE.replace("55", "cold").replace("06-02", "31-02").replace("88", "999")
    page = told(data)
    assert page.context["faults"] == [
        (2, "Low", "“cold” is not a number."),
        (3, "Date", "“2026-31-02” is not a day written that way."),
        (4, "High", "2026-06-03 TMAX 537.222 cannot be. Look at the units once more."),
    ]
    text = page.content.decode()
    assert "3 things to put right" in text
    assert '<td class="figures" data-label="Row">3</td>' in text
    assert '<td data-label="Column">Date</td>' in text


@pytest.mark.usefixtures("nothing_saved")
def test_every_day_upside_down_is_told_by_row_and_column(told, load):
    page = told(TABLE.replace("58,84", "84,58").replace("61,88", "88,61"))
    assert [fault[:2] for fault in page.context["faults"]] == [(3, "Low"), (4, "Low")]
    assert "28.89 &gt; 14.44 °C" in page.content.decode()
    page = load(BY_STATION.replace("128", "300"), "USC.csv")
    ((line, heading, words),) = page.context["faults"]
    assert (line, heading) == (2, "TMIN")
    assert escape(words) in page.content.decode()


@pytest.mark.usefixtures("nothing_saved")
@pytest.mark.parametrize("left_out", ["date", "date_order", "temp_unit", "rain_unit"])
def test_no_unit_and_no_order_is_guessed(left_out, told):
    page = told(TABLE, **{left_out: ""})
    assert page.context["form"].errors[left_out]


@pytest.mark.usefixtures("nothing_saved")
@pytest.mark.parametrize(
    ("over", "box", "words"),
    [
        ({"name": ""}, "name", "Give the new station a name"),
        ({"name": "Barn"}, "name", "Another station has this name"),
        ({"name": "Orchard", "is_main": "on"}, "is_main", "reckons with another"),
        ({"known": "their"}, "known", "valid choice"),
    ],
)
def test_a_station_that_cannot_be_is_refused(
    over, box, words, world, owner_client, told
):
    theirs = world.theirs["stations"].pk
    known = theirs if over.get("known") == "their" else ""
    answer = saved(owner_client, world, told(TABLE), **{**over, "known": known})
    assert words in answer.context["form"].errors[box][0]


@pytest.mark.usefixtures("nothing_saved")
def test_a_file_set_aside_by_another_farm_cannot_be_had(world, as_person, told):
    held = told(TABLE).context["form"]["held"].value()
    theirs = reverse("records:weather-columns", args=[world.theirs.farm.slug])
    answer = as_person(world.stranger).post(theirs, {"held": held, **TOLD})
    assert answer.url == reverse("records:weather-load", args=[world.theirs.farm.slug])


@pytest.mark.usefixtures("nothing_saved")
@pytest.mark.parametrize("held", ["", "nonsense", "../../secret-key"])
def test_a_word_that_fetches_no_file_leads_back_to_the_start(held, world, owner_client):
    answer = owner_client.post(at(world, "weather-save"), {"held": held, **TOLD})
    assert answer.url == at(world, "weather-load")


def test_readings_go_out_as_a_table_with_every_digit(world, owner_client):
    station = world.ours["stations"]
    station.days.create(day="2026-01-05", tmin_c=-15.6, tmax_c=0.1 + 0.2)
    station.days.create(day="2026-01-06", tmax_c=3.0, rain_mm=12.7)
    address = reverse("records:station-days", args=[world.farm.slug, station.pk])
    lines = owner_client.get(address).content.decode().split("\r\n")
    assert lines[0] == "date,tmin_c,tmax_c,rain_mm"
    assert "2026-01-05,-15.6,0.30000000000000004," in lines
    assert "2026-01-06,,3.0,12.7" in lines


@pytest.mark.parametrize("way", ["station-days", "station-workbook"])
def test_readings_that_went_out_load_again_without_losing_a_digit(
    way, world, owner_client, load
):
    station = world.ours["stations"]
    readings = [
        (-15.555555555555555, 0.1 + 0.2, 6.3499999999999996),
        (-40.0, None, 1e-05),
        (None, 1 / 3, 0.0),
        (-5e-324, 59.99999999999999, None),
        (-0.0, 0.0, 1999.9999999999998),
    ]
    for number, (low, high, rain) in enumerate(readings, 1):
        day = f"2026-01-{2 * number:02}"
        station.days.create(day=day, tmin_c=low, tmax_c=high, rain_mm=rain)
    address = reverse(f"records:{way}", args=[world.farm.slug, station.pk])
    page = load(owner_client.get(address).content, "days")
    form = page.context["form"]
    sent = {box.html_name: box.value() for box in form if box.value() is not None}
    page = owner_client.post(at(world, "weather-columns"), sent)
    answer = saved(owner_client, world, page, known="", name="Again")
    assert answer.status_code == 302, page.context["form"].errors
    again = WeatherStation.objects.get(name="Again")
    assert _days(again) == _days(station)


@pytest.mark.usefixtures("nothing_saved")
@pytest.mark.parametrize(
    ("data", "words"),
    [
        (
            workbook([["Date", "Low"], ["2026-06-01", "=1+1"]]),
            "Cell B2 holds a formula",
        ),
        (b"PK\x03\x04 and nothing more", "damaged or not one"),
    ],
    ids=["formula", "damaged"],
)
def test_a_workbook_that_cannot_be_read_is_refused_beside_its_box(data, words, load):
    page = load(data if isinstance(data, bytes) else book(data), "days.xlsx")
    assert words in page.context["form"].errors["file"][0]


def _days(station):
    values = station.days.order_by("day").values_list("day", *HEADER[1:])
    return [tuple(map(repr, row)) for row in values]
