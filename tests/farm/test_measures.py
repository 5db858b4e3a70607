"""Measures as templates write them, in both families of units."""

from dataclasses import dataclass

import pytest
from django.template import Context, Template
from django.utils.html import strip_tags

from farm.units import KG_M2_PER_LB_AC, KG_PER_LB, M2_PER_ACRE


@dataclass
class Reader:
    units: str = "us"


@dataclass
class Ends:
    low: float
    high: float


def shown(text, units="us", **values):
    template = Template("{% load measures %}" + text)
    page = template.render(Context({"farm": Reader(units), **values}))
    return strip_tags(page).replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("text", "value", "us", "metric"),
    [
        ("{{ x|area:farm }}", 1.5 * M2_PER_ACRE, "1.5 ac", "0.607 ha"),
        ("{{ x|mass:farm }}", 50 * KG_PER_LB, "50 lb", "22.7 kg"),
        ("{{ x|rate:farm }}", 70 * KG_M2_PER_LB_AC, "70 lb/ac", "78.5 kg/ha"),
        ("{{ x|density:farm }}", 0.5, "4,461 lb/ac", "5 t/ha"),
        ("{{ x|distance:farm }}", 9.144, "30 ft", "9.14 m"),
        ("{{ x|depth:farm }}", 0.0254, "1 in", "2.54 cm"),
        ("{{ x|temp:farm }}", -2.0, "28.4 °F", "-2 °C"),
        ("{{ x|rain:farm }}", 25.4, "1 in", "25.4 mm"),
        ("{{ x|percent }}", 0.254, "25 %", "25 %"),
        ("{{ x|percent }}", 0.015, "1.5 %", "1.5 %"),
        ("{{ x|day_count }}", 12.25, "12.2 days", "12.2 days"),
        ("{{ x|day_count }}", 1, "1 day", "1 day"),
    ],
)
def test_a_measure_is_written_in_the_units_of_the_farm(text, value, us, metric):
    assert shown(text, x=value) == us
    assert shown(text, "metric", x=value) == metric


def test_what_is_not_known_is_a_dash_to_the_eye_and_words_to_the_ear():
    page = Template("{% load measures %}{{ x|area:farm }}").render(
        Context({"farm": Reader(), "x": None})
    )
    assert '<span class="dash" aria-hidden="true">—</span>' in page
    assert '<span class="unseen">not known</span>' in page


def test_a_range_is_written_with_both_ends_in_one_unit():
    ends = Ends(2000 * KG_M2_PER_LB_AC, 3000 * KG_M2_PER_LB_AC)
    assert shown('{% between x "density" farm %}', x=ends) == "2,000–3,000 lb/ac"


def test_a_range_with_two_equal_ends_is_one_figure():
    ends = Ends(70 * KG_M2_PER_LB_AC, 70 * KG_M2_PER_LB_AC)
    assert shown('{% between x "rate" farm %}', x=ends) == "70 lb/ac"


def test_a_range_that_starts_below_zero_says_to():
    assert (
        shown('{% between x "temp" farm %}', "metric", x=Ends(-4, -2)) == "-4 to -2 °C"
    )


def test_a_range_that_changes_its_unit_names_both():
    ends = Ends(40, 2 * M2_PER_ACRE)
    assert shown('{% between x "area" farm %}', x=ends) == "431 sq ft–2 ac"


def test_a_likely_figure_carries_its_range_only_where_that_says_more():
    assert (
        shown('{% likely 26 x "days" farm %}', x=Ends(15, 34)) == "26 days (15–34 days)"
    )
    assert shown('{% likely 26 x "days" farm %}', x=Ends(26, 26)) == "26 days"


def test_nitrogen_is_written_in_whole_pounds():
    ends = Ends(0, 14.6 * KG_M2_PER_LB_AC)
    assert shown('{% between x "nitrogen" farm %}', x=ends) == "0–15 lb/ac"
