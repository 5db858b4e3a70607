"""Each act that can hurt someone is warned of as it is chosen in a form."""

import pytest
from django.urls import reverse
from django.utils import timezone

from tests.browser.window import outside
from tests.factories import InputProductFactory, ObservationFactory, PlantingFactory

# What is chosen on the form of an end, and what its caution says.
CHOICES = (
    ("method", "grazed", "before the gate opens"),
    ("method", "sprayed", "licensed for it"),
    ("method", "burned", "fire department"),
    ("method", "tilled_in", "guards on"),
    ("residue", "removed", "carried off as feed"),
)


@pytest.fixture
def page(window, cast):
    window.wear(width=360, touch=True)
    window.sign_in(cast.crew)
    return window.page


def warned(page, name, value, words):
    """Choose something, and wait until the page warns of it."""
    page.locator(f"[name={name}]").first.select_option(value)
    page.locator("[aria-live] .caution", has_text=words).wait_for(timeout=5000)


def test_each_way_to_end_a_stand_is_warned_of_as_it_is_chosen(window, cast, page):
    with outside():
        today = cast.farm.today(timezone.now())
        here = {"farm": cast.farm, "written_by": cast.crew}
        ripe = PlantingFactory(**here, field=cast.ours["fields"], sown_on=today)
        ObservationFactory(**here, planting=ripe, seen="seed_set", seen_on=today)
    form = reverse("records:new", args=[cast.farm.slug, "terminations"])
    window.go(form)
    page.locator("[name=ended_on]").fill(str(today))
    for name, value, words in CHOICES:
        warned(page, name, value, words)
    warned(page, "planting", str(ripe.pk), "Seed has set")


def test_manure_is_warned_of_as_it_is_chosen(window, cast, page):
    with outside():
        manure = InputProductFactory(farm=cast.farm, type="manure", name="Dung")
    window.go(reverse("records:new", args=[cast.farm.slug, "applications"]))
    warned(page, "product", str(manure.pk), "raw manure and food do not mix")
