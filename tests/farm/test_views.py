"""The farm's own pages: founding, changing, and the front door."""

import pytest
from django.test import Client
from django.urls import reverse

from farm.models import Farm, Membership, Role, User

TYPED = {
    "name": "Cedar Bend",
    "operator": "A. Grower",
    "country": "United States",
    "latitude": "42.73",
    "longitude": "-76.65",
    "time_zone": "America/New_York",
    "units": "us",
    "standard": "us",
    "season_first_month": "1",
}


@pytest.fixture
def at(world):
    def address(name):
        return reverse(name, args=[world.farm.slug])

    return address


def test_a_farm_is_founded_in_the_browser_and_its_founder_owns_it(world, as_person):
    client = as_person(world.stranger)
    answer = client.post(reverse("farm-new"), TYPED, follow=True)
    assert answer.redirect_chain == [("/farms/cedar-bend/", 302)]
    membership = Membership.objects.get(farm__slug="cedar-bend")
    assert (membership.user, membership.role) == (world.stranger, Role.OWNER)
    assert "Cedar Bend" in client.get("/").content.decode()


@pytest.mark.parametrize(
    ("name", "slug"),
    [
        ("Alder Hill", "alder-hill-2"),
        ("new", "new-2"),
        ("农场", "farm"),
        ("Ñandú & Söhne", "nandu-sohne"),
        ("x" * 120, "x" * 50),
    ],
)
def test_every_farm_has_an_address_of_its_own(name, slug, world, as_person):
    as_person(world.stranger).post(reverse("farm-new"), {**TYPED, "name": name})
    assert Farm.objects.latest("pk").slug == slug


@pytest.mark.parametrize(
    ("box", "typed"),
    [
        ("name", ""),
        ("latitude", "91"),
        ("latitude", "north"),
        ("longitude", "-181"),
        ("time_zone", "Mars/Olympus"),
        ("units", "cubits"),
        ("season_first_month", "13"),
    ],
)
def test_a_farm_that_cannot_be_is_refused_beside_its_box(box, typed, world, as_person):
    client, before = as_person(world.stranger), Farm.objects.count()
    answer = client.post(reverse("farm-new"), {**TYPED, box: typed})
    assert answer.context["form"].errors[box]
    assert Farm.objects.count() == before
    if box != "name":
        assert "Cedar Bend" in answer.content.decode()


def test_the_farms_page_is_changed_and_its_address_stays(world, as_person, at):
    answer = as_person(world.manager).post(at("farm-edit"), TYPED, follow=True)
    assert answer.redirect_chain == [(at("farm"), 302)]
    farm = Farm.objects.get(pk=world.farm.pk)
    assert (farm.name, farm.slug) == ("Cedar Bend", "alder-hill")


def test_the_farms_page_tells_how_much_land_there_is(world, as_person, at):
    page = as_person(world.crew).get(at("farm")).content.decode()
    assert "1 field" in page
    assert "1\N{NO-BREAK SPACE}ac" in page
    assert at("farm-edit") not in page


def test_a_manager_is_not_shown_the_way_to_the_owners_pages(world, as_person, at):
    page = as_person(world.manager).get(at("farm")).content.decode()
    assert at("farm-edit") in page
    away = reverse("records:archive", args=[world.farm.slug])
    assert away not in page
    assert away in as_person(world.owner).get(at("farm")).content.decode()


def test_every_look_of_an_inspector_is_noted(owner_client, world, as_person, at):
    assert as_person(world.inspector).get(at("farm") + "?x=1").status_code == 200
    assert as_person(world.manager).get(at("farm")).status_code == 200
    look = world.farm.looks.get()
    assert (look.by, look.path) == (world.inspector, at("farm") + "?x=1")
    assert look.path in owner_client.get(at("looks")).content.decode()
    assert as_person(world.crew).get(at("looks")).status_code == 403


@pytest.fixture
def signed_up(db):
    return User.objects.create_user("grower@example.org", "a stony field in May")


def test_signing_in_leads_to_the_farms(signed_up):
    client = Client()
    typed = {"username": "Grower@Example.org", "password": "a stony field in May"}
    answer = client.post(reverse("sign-in"), typed, follow=True)
    assert answer.redirect_chain == [("/", 302)]
    assert "New farm" in answer.content.decode()


def test_signing_in_leads_back_to_the_page_that_was_asked_for(signed_up):
    client = Client()
    asked = client.get("/farms/new/")
    typed = {"username": signed_up.email, "password": "a stony field in May"}
    assert client.post(asked.url, typed).url == "/farms/new/"


def test_signing_in_never_leads_to_another_machine(signed_up):
    typed = {"username": signed_up.email, "password": "a stony field in May"}
    asked = reverse("sign-in") + "?next=https://example.org/"
    assert Client().post(asked, typed).url == "/"


def test_a_wrong_password_says_no_more_than_a_wrong_name(signed_up):
    told = []
    for name in (signed_up.email, "nobody@example.org"):
        typed = {"username": name, "password": "wrong"}
        form = Client().post(reverse("sign-in"), typed).context["form"]
        told.append(list(form.non_field_errors()))
    assert told[0]
    assert told[0] == told[1]


def test_signing_out_ends_the_visit(world, as_person):
    client = as_person(world.crew)
    assert client.get(reverse("sign-out")).status_code == 405
    assert client.post(reverse("sign-out")).url == reverse("sign-in")
    assert client.get("/").status_code == 302


def test_a_password_is_changed_and_the_visit_goes_on(signed_up, as_person):
    client = as_person(signed_up)
    typed = {
        "old_password": "a stony field in May",
        "new_password1": "buckwheat in the north field",
        "new_password2": "buckwheat in the north field",
    }
    page = client.post(reverse("password"), typed, follow=True).content.decode()
    assert "Your password is changed." in page
    signed_up.refresh_from_db()
    assert signed_up.check_password("buckwheat in the north field")


@pytest.mark.parametrize(
    ("old", "new", "again"),
    [
        ("wrong", "buckwheat in the north", "buckwheat in the north"),
        ("a stony field in May", "buckwheat in the north", "rye"),
        ("a stony field in May", "12345678", "12345678"),
        ("a stony field in May", "short", "short"),
    ],
)
def test_a_password_that_will_not_do_is_refused(old, new, again, signed_up, as_person):
    typed = {"old_password": old, "new_password1": new, "new_password2": again}
    answer = as_person(signed_up).post(reverse("password"), typed)
    assert answer.context["form"].errors
    signed_up.refresh_from_db()
    assert signed_up.check_password("a stony field in May")


def test_a_visit_cannot_be_taken_over_from_another_page(signed_up):
    """Frames by RFC 7034, cookies by RFC 6265 section 4.1.2.6 and SameSite."""
    client = Client()
    typed = {"username": signed_up.email, "password": "a stony field in May"}
    answer = client.post(reverse("sign-in"), typed)
    assert answer.headers["X-Frame-Options"] == "DENY"
    assert client.cookies["sessionid"]["httponly"]
    assert client.cookies["sessionid"]["samesite"] == "Lax"
