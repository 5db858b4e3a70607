"""A season from a gap to the end of its stand, run from the Now page."""

import datetime as dt

import pytest
from django.urls import reverse

from records.models import Duty, Planting
from tests.browser.window import outside
from tests.factories import FieldFactory, KindFigureFactory
from tests.reports.ahead.places import FIGURES, years

BEGINS, OVER = dt.date(2025, 5, 20), dt.date(2025, 12, 10)
# Every date that is written bare where a date should open at a press.
UNEXPLAINED = """[...document.querySelectorAll('main td')].filter(
  cell => !cell.querySelector('details.why') && / 20[0-9]{2}\\b/.test(cell.innerText)
).map(cell => cell.innerText)"""
SILENT = """[...document.querySelectorAll('main details.why')].filter(why => {
  why.querySelector('summary').click()
  return !why.open || why.innerText.length < 40
}).map(why => why.innerText)"""


@pytest.fixture(scope="module")
def field(window, cast):
    with outside():
        kind = cast.ours.kind
        for attribute, low, high, unit, source in FIGURES:
            figures = {"attribute": attribute, "unit": unit, "source": source}
            KindFigureFactory(kind=kind, low=low, high=high, **figures)
        years(cast.ours["stations"], until=OVER)
        return FieldFactory(farm=cast.farm, name="Creek")


@pytest.fixture
def page(window, cast):
    window.wear(width=1280)
    window.sign_in(cast.owner, keeps=True)
    return window.page


def now(window, cast, day):
    """The Now page of a day, each of its dates pressed and answering."""
    window.go(f"{reverse('reports:now', args=[cast.farm.slug])}?on={day}")
    assert window.page.evaluate(UNEXPLAINED) == []
    assert window.page.evaluate(SILENT) == []
    return window.page.locator("main tr", has_text="Creek")


def saved(page):
    with page.expect_navigation():
        page.locator("form.record button", has_text="Write it down").click()
    assert page.get_by_role("link", name="Now, as of the day you came from").count()
    refused = page.locator(".summary-of-errors, .errors").all_inner_texts()
    assert refused == [] and page.locator(".messages").count() == 1


def followed(page, row, words):
    with page.expect_navigation():
        row.get_by_role("link", name=words).first.click()


def test_a_season_is_run_from_the_now_page_to_its_end(window, cast, field, page):
    rows = now(window, cast, BEGINS)
    with page.expect_navigation():
        page.get_by_role("link", name="Gaps to fill").click()
    gap = page.locator("section.gap", has_text="Creek").first
    gap.locator("summary").first.evaluate("one => one.parentElement.open = true")
    with page.expect_navigation():
        gap.get_by_role("button", name="Plan it").first.click()
    with outside():
        plan = Planting.objects.get(field=field)
        due = {row.what: row.latest_on for row in Duty.objects.filter(field=field)}
    assert sorted(due) == ["end", "look", "sow"] and plan.sown_on is None

    rows = now(window, cast, plan.planned_on)
    followed(page, rows, "Write down the sowing")
    assert page.locator("[name=sown_on]").input_value() == str(plan.planned_on)
    saved(page)

    for day, seen in ((6, "emerged"), (31, "first_flower")):
        rows = now(window, cast, plan.planned_on + dt.timedelta(days=day))
        if seen == "emerged":
            followed(page, rows, "Write down what you see")
        else:
            followed(page, rows, "Buckwheat")
            followed(page, page.locator("main"), "Write down what you see")
        page.locator("[name=seen]").select_option(seen)
        saved(page)

    window.wear(width=360, touch=True)
    rows = now(window, cast, plan.planned_on + dt.timedelta(days=40))
    followed(page, rows, "Weigh the residue and end it")
    page.get_by_role("radio", name="worked in").check()
    page.locator("#reason").fill("Garlic wants its nitrogen")
    with page.expect_navigation():
        page.get_by_role("button", name="Go on to write down the end").click()
    with page.expect_response("**/cautions/**"):
        page.locator("[name=method]").select_option("tilled_in")
    page.locator("[aria-live] .caution", has_text="guards on").wait_for()
    saved(page)
    with outside():
        end = plan.terminations.get()
        left = Duty.objects.filter(field=field).open().count()
    assert (end.residue, end.reason) == ("worked_in", "Garlic wants its nitrogen")
    assert left == 0
    assert now(window, cast, OVER).count() == 0
