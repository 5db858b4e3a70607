"""Units by person, the day by the farm's own clock, seasons by the hemisphere."""

import datetime as dt
import io
import zipfile
import zoneinfo

import pytest
from django.test import Client
from django.urls import reverse

from farm.models import Farm, Role, User
from records.tables.archive import save_farm
from tests.factories import FarmFactory, MembershipFactory
from tests.records.typed import typed

FIXED = "\N{NO-BREAK SPACE}"
AUCKLAND, HONOLULU = "Pacific/Auckland", "Pacific/Honolulu"


@pytest.fixture
def metric_owner(world, as_person):
    User.objects.filter(pk=world.owner.pk).update(units="metric")
    return as_person(User.objects.get(pk=world.owner.pk))


@pytest.fixture
def clock(monkeypatch):
    """Set the moment every view reads."""

    def at(moment):
        monkeypatch.setattr("django.utils.timezone.now", lambda: moment)
        return moment

    return at


def test_a_person_reads_their_own_units_and_others_the_farms(
    metric_owner, world, as_person
):
    page = reverse("farm", args=[world.farm.slug])
    assert f"{FIXED}ha" in metric_owner.get(page).content.decode()
    assert f"{FIXED}ac" in as_person(world.crew).get(page).content.decode()


def test_a_person_types_in_their_own_units(metric_owner, world):
    url = reverse("records:new", args=[world.farm.slug, "fields"])
    metric_owner.post(url, {**typed("fields", world.ours), "name": "Far", "area": "2"})
    assert world.farm.fields.get(name="Far").area_m2 == pytest.approx(20_000)


def test_a_person_chooses_units_on_their_account(world, as_person):
    client = as_person(world.crew)
    answer = client.post(reverse("account"), {"name": "Crew", "units": "cubits"})
    assert answer.context["form"].errors["units"]
    client.post(reverse("account"), {"name": "C\u202erew", "units": "metric"})
    crew = User.objects.get(pk=world.crew.pk)
    assert (crew.name, crew.units) == ("Crew", "metric")


def test_whoever_reads_the_farm_keeps_its_own_units(metric_owner, world, tmp_path):
    edit = reverse("farm-edit", args=[world.farm.slug])
    form = metric_owner.get(edit).context["form"]
    assert form.initial["units"] == "us"
    farm = Farm.objects.get(pk=world.farm.pk).read_in("metric")
    farm.save()
    assert (farm.units, farm.own_units) == ("metric", "us")
    assert Farm.objects.get(pk=world.farm.pk).units == "us"


@pytest.mark.parametrize(
    ("zone", "moment", "today"),
    [
        # The International Date Line lies between them; data of the tz database.
        (AUCKLAND, dt.datetime(2026, 6, 30, 12, 30, tzinfo=dt.UTC), "2026-07-01"),
        (HONOLULU, dt.datetime(2026, 7, 1, 9, 30, tzinfo=dt.UTC), "2026-06-30"),
    ],
)
def test_today_is_the_farms_own_day(zone, moment, today, db, clock):
    clock(moment)
    farm = FarmFactory(time_zone=zone)
    owner = MembershipFactory(farm=farm).user
    client = Client()
    client.force_login(owner)
    form = client.get(reverse("records:new", args=[farm.slug, "fields"])).context
    assert str(form["form"].today) == today


@pytest.mark.parametrize("zone", [AUCKLAND, HONOLULU])
def test_a_founder_can_come_in_at_once_wherever_the_farm_lies(zone, db, clock):
    clock(dt.datetime(2026, 7, 1, 2, tzinfo=dt.UTC))
    client = Client()
    client.force_login(User.objects.create_user("grower@example.org", "x"))
    sent = {"name": "Far Off", "time_zone": zone, "units": "metric"}
    sent |= {"standard": "none", "season_first_month": "7"}
    answer = client.post(reverse("farm-new"), sent, follow=True)
    assert answer.redirect_chain == [("/farms/far-off/", 302)]
    assert answer.status_code == 200


@pytest.mark.parametrize(("hour", "comes_in"), [(9, True), (11, False)])
def test_access_ends_at_the_farms_midnight(hour, comes_in, db, clock):
    """Midnight in Honolulu is ten o'clock in the morning, universal time."""
    clock(dt.datetime(2026, 7, 1, hour, tzinfo=dt.UTC))
    member = MembershipFactory(
        farm__time_zone=HONOLULU, role=Role.CREW, until=dt.date(2026, 6, 30)
    )
    client = Client()
    client.force_login(member.user)
    farm = reverse("farm", args=[member.farm.slug])
    assert (client.get(farm).status_code == 200) == comes_in
    assert (member.farm.name in client.get("/").content.decode()) == comes_in


def test_hours_are_shown_by_the_farms_clock(owner_client, world, db):
    Farm.objects.filter(pk=world.farm.pk).update(time_zone=AUCKLAND)
    field = world.ours["fields"]
    there = field.written_at.astimezone(zoneinfo.ZoneInfo(AUCKLAND))
    url = reverse("records:page", args=[world.farm.slug, "fields", field.pk])
    assert f"{there:%H:%M}" in owner_client.get(url).content.decode()


def test_a_southern_season_begins_in_the_month_the_farm_says():
    farm = Farm(season_first_month=7, latitude=-43.5)
    assert farm.is_southern
    assert farm.season_year(dt.date(2026, 6, 30)) == 2025
    assert farm.season(2025) == (dt.date(2025, 7, 1), dt.date(2026, 6, 30))
    assert not Farm(latitude=0.0).is_southern
    assert not Farm(latitude=None).is_southern


def test_an_archive_holds_the_farms_own_units(metric_owner, world, tmp_path):
    answer = metric_owner.post(reverse("records:archive", args=[world.farm.slug]))
    mine = b"".join(answer.streaming_content)
    with (tmp_path / "farm.zip").open("w+b") as target:
        save_farm(world.farm, target, now=dt.datetime(2026, 7, 1, tzinfo=dt.UTC))
    told = [
        zipfile.ZipFile(one).read("farm.csv")
        for one in (io.BytesIO(mine), tmp_path / "farm.zip")
    ]
    assert told[0] == told[1]
