"""Pages that stand at no address of their own: refusals, faults, an empty farm."""

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from farm.models import Role
from tests.browser.window import outside
from tests.factories import FarmFactory, MembershipFactory, UserFactory

BLANK = {"lines-TOTAL_FORMS": "1", "lines-INITIAL_FORMS": "0", "area": "much"}


def test_a_form_answered_with_faults_is_sound(shown, cast):
    of_seed = [cast.owner, "records:new", cast.farm.slug, "plantings"]
    assert shown(*of_seed, sent=BLANK) == (200, [])
    of_crew = [cast.crew, "records:crew-act", cast.farm.slug, "sow"]
    assert shown(*of_crew, sent={"place": str(cast.ours["fields"].pk)}) == (200, [])


def test_a_table_seen_before_it_is_saved_is_sound_with_its_faults(shown, cast):
    lines = b"name,area_acres\nNorth,much\n,2\nSouth,-3\n"
    sent = {"fields": SimpleUploadedFile("fields.csv", lines, "text/csv")}
    load = [cast.owner, "records:load", cast.farm.slug, "fields"]
    assert shown(*load, sent=sent) == (200, [])


def test_refusals_are_sound(shown, cast):
    of_nothing = [cast.owner, "records:page", cast.farm.slug, "fields", 999_999]
    assert shown(*of_nothing) == (404, [])
    assert shown(cast.crew, "farm-edit", cast.farm.slug) == (403, [])


def test_the_crews_own_pages_are_sound(shown, cast):
    assert shown(cast.crew, "crew:today", cast.farm.slug) == (200, [])
    assert shown(cast.crew, "records:crew-act", cast.farm.slug, "see") == (200, [])


@pytest.mark.parametrize(
    ("name", "noun"),
    [
        ("farm", ""),
        ("crew:today", ""),
        ("records:list", "fields"),
        ("records:list", "plantings"),
        ("records:write", ""),
        ("records:changes", ""),
        ("records:weather", ""),
        ("reports:map", ""),
        ("reports:now", ""),
        ("reports:seasons", ""),
    ],
)
def test_a_farm_with_nothing_written_down_has_sound_pages(shown, empty, name, noun):
    farm, owner = empty
    assert shown(owner, name, *filter(None, [farm.slug, noun])) == (200, [])


@pytest.fixture(scope="module")
def empty(cast):
    with outside():
        farm = FarmFactory(name="New Ground", slug="new-ground")
        return farm, MembershipFactory(farm=farm, role=Role.OWNER).user


@pytest.fixture(scope="module")
def reader(cast):
    with outside():
        found = UserFactory(name="Rosa", language="es")
        MembershipFactory(farm=cast.farm, user=found, role=Role.MANAGER)
    return found


@pytest.mark.parametrize(
    ("name", "noun"),
    [("farm", ""), ("records:new", "plantings"), ("records:list", "seed-lots")],
)
def test_pages_in_spanish_are_sound(shown, cast, reader, name, noun):
    assert shown(reader, name, *filter(None, [cast.farm.slug, noun])) == (200, [])


PAPER = "getComputedStyle(document.body).backgroundColor"
DAY, NIGHT = "rgb(251, 250, 245)", "rgb(21, 24, 20)"


@pytest.mark.parametrize(
    ("chosen", "of_the_screen", "seen"),
    [
        ("", "day", DAY),
        ("", "night", NIGHT),
        ("day", "night", DAY),
        ("night", "day", NIGHT),
    ],
)
def test_a_person_chooses_day_or_night_for_any_screen(
    window, cast, reader, chosen, of_the_screen, seen
):
    reader.look = chosen
    with outside():
        reader.save()
    window.sign_in(reader)
    window.wear(width=360, touch=True, night=of_the_screen == "night")
    window.go(reverse("farm", args=[cast.farm.slug]))
    assert window.page.evaluate(PAPER) == seen
    if chosen:
        scheme = "getComputedStyle(document.documentElement).colorScheme"
        plain = {"day": "light", "night": "dark"}[chosen]
        assert window.page.evaluate(scheme) == plain
