"""The work done without a mouse, and names that want to break a page."""

import pytest
from django.urls import reverse
from django.utils import timezone

from records.models import Irrigation
from tests.browser.judging import UNSEEN_FOCUS, WIDER
from tests.browser.window import outside
from tests.factories import FieldFactory, PlantingFactory

# Long, turned about, joined of many, without width: all of them are names.
HOSTILE = (
    "Unterkrautzeilenzwischenfruchtversuchsparzellenverzeichnis" * 2,
    "👩‍🌾🌱" * 12,
    "حقل القمح الشمالي الكبير " * 3,
    "north​‍‌field" * 6,
)


@pytest.fixture
def page(window, cast):
    window.wear(width=360, touch=True)
    window.sign_in(cast.crew, keeps=True)
    return window.page


def test_the_first_key_leads_past_the_menu_to_the_content(window, cast, page):
    window.go(reverse("farm", args=[cast.farm.slug]))
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "content"


def test_the_menu_opens_and_leads_on_by_keys(window, cast, page):
    window.go(reverse("farm", args=[cast.farm.slug]))
    press_until(page, "document.activeElement.matches('.menu > summary')")
    page.keyboard.press("Enter")
    assert page.evaluate("document.querySelector('.menu').open")
    write = reverse("records:write", args=[cast.farm.slug])
    press_until(page, f"document.activeElement.pathname === '{write}'")
    with page.expect_navigation():
        page.keyboard.press("Enter")
    assert write in page.url


def test_water_is_written_down_by_keys_alone(window, cast, page):
    with outside():
        before = Irrigation.objects.count()
    window.go(reverse("records:write-act", args=[cast.farm.slug, "water"]))
    press_until(page, "document.activeElement.name === 'place'")
    page.keyboard.press("Space")
    go_on(page)
    press_until(page, "/water_mm$/.test(document.activeElement.name)")
    page.keyboard.type("12 mm")
    go_on(page)
    with outside():
        assert Irrigation.objects.count() == before + 1
    assert page.locator(".messages").get_attribute("role") == "status"


def test_a_part_of_a_page_that_comes_later_leaves_the_focus(window, cast, page):
    with outside():
        here = {"farm": cast.farm, "field": cast.ours["fields"], "area_m2": 100}
        here |= {"line__kind": cast.ours.kind, "written_by": cast.crew}
        PlantingFactory(**here, sown_on=cast.farm.today(timezone.now()))
    window.go(reverse("records:write-act", args=[cast.farm.slug, "end"]))
    press_until(page, "document.activeElement.name === 'place'")
    page.keyboard.press("Space")
    go_on(page)
    press_until(page, "/method$/.test(document.activeElement.name)")
    name = page.evaluate("document.activeElement.name")
    with page.expect_response("**/cautions/**"):
        page.keyboard.press("ArrowDown")
    page.wait_for_timeout(300)
    assert page.evaluate("document.activeElement.name") == name
    assert page.locator("[hx-get][aria-live=polite]").count() == 1


@pytest.mark.parametrize("name", HOSTILE, ids=["long", "emoji", "turned", "no width"])
def test_a_hostile_name_does_not_widen_a_page(window, cast, page, name):
    with outside():
        field = FieldFactory(farm=cast.farm, name=name[:80])
    shown = [
        reverse("records:list", args=[cast.farm.slug, "fields"]),
        reverse("records:page", args=[cast.farm.slug, "fields", field.pk]),
        reverse("reports:field", args=[cast.farm.slug, field.pk]),
        reverse("records:write-act", args=[cast.farm.slug, "water"]),
        reverse("reports:map", args=[cast.farm.slug]),
    ]
    for path in shown:
        window.go(path)
        assert page.evaluate(WIDER) + page.evaluate(UNSEEN_FOCUS) == [], path


def press_until(page, reached, most=120):
    for _press in range(most):
        page.keyboard.press("Tab")
        if page.evaluate(reached):
            return
    raise AssertionError(f"Tab never led to {reached}")


def go_on(page):
    press_until(page, "document.activeElement.matches('main form.record button')")
    with page.expect_navigation():
        page.keyboard.press("Enter")
